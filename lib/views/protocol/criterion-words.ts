import type { Criterion } from "@/lib/protocol/criterion";
import { lookedAt } from "@/lib/protocol/looked-at";
import { listOf } from "@/lib/protocol/vocabulary";
import { setShare } from "../quantity";
import { unrecordedWords } from "../unrecorded-words";
import type { About } from "./about";
import { ownReasonWords, stepWords, unitWords } from "./code-words";
import { conditionWords, fieldAbout, isWhatever } from "./condition-words";
import { fieldWords, joined } from "./field-sentence";
import { listName } from "./list-words";
import type { OwnWords } from "./own-words";

/** All that a criterion states, in words. */
export type CriterionWords = {
  /** What its figure counts: "canals". */
  readonly counts: string;
  readonly population: string;
  /** Left out first, in this order, each with what it counts under. */
  readonly leftOut: readonly { readonly reason: string; readonly words: string }[];
  readonly met: string;
  /** Null where it foresees none; empty where any coded reason excepts. */
  readonly exceptions: readonly string[] | null;
  /** Without these a unit is not recorded. */
  readonly evidence: readonly string[];
  readonly target: string;
  readonly floor: string;
  /** What becomes of a unit of which too little is recorded. */
  readonly unrecorded: string;
  /** Whom its figures are shown by. */
  readonly shown: string;
  /** All of it in one paragraph. */
  readonly whole: string;
};

/** @param own the practice's own terms in words */
export function criterionWords(criterion: Criterion, own: OwnWords): CriterionWords {
  const about: About = { unit: criterion.unit, own };
  const several = unitWords[criterion.unit].several;
  const population = populationOf(criterion, several, about);
  const met = `${conditionWords(criterion.met, about)}.`;
  const exceptions = exceptionsOf(criterion, own);
  return {
    counts: several,
    population,
    leftOut: leftOutOf(criterion, about),
    met,
    exceptions,
    evidence: evidenceOf(criterion, about),
    target: `${setShare(criterion.target)}${criterion.target < 1 ? " or more" : ""}`,
    floor:
      criterion.completenessFloor === null
        ? "None: it is about recording itself."
        : `Under ${setShare(criterion.completenessFloor)} recorded the figure is not assessable.`,
    unrecorded: unrecordedWords(criterion),
    shown: shownOf(criterion),
    whole: [
      population,
      ownLeftOut(criterion, about),
      `Met if ${met}`,
      exceptions === null
        ? ""
        : exceptions.length === 0
          ? "Excepted for any coded reason."
          : `Excepted for: ${exceptions.join("; ")}.`,
      `Target: ${setShare(criterion.target)}.`,
    ]
      .filter(Boolean)
      .join(" "),
  };
}

function populationOf(criterion: Criterion, several: string, about: About): string {
  const which = isWhatever(criterion.population)
    ? `All ${several}`
    : `${capital(several)} where ${conditionWords(criterion.population, about)}`;
  if (!criterion.treatmentPopulation) return `${which}.`;
  const only = criterion.unit === "canal" ? "Only canals" : "Only in canals";
  return `${which}. ${only} that were prepared, at visits for first treatment or retreatment that were not abandoned.`;
}

function leftOutOf({ treatmentPopulation, exclusions }: Criterion, about: About) {
  const outside = [
    { reason: "abandoned", words: "canals of abandoned visits" },
    { reason: "the treatment", words: "canals of emergency visits, dressings and other treatment" },
    { reason: "not prepared", words: "canals that were not prepared" },
  ];
  const own = exclusions.map(({ reason, inWords, when }) => ({
    reason: ownReasonWords(reason, about.own),
    words: `${inWords}: ${conditionWords(when, about)}`,
  }));
  return treatmentPopulation ? [...outside, ...own] : own;
}

function ownLeftOut({ exclusions }: Criterion, about: About): string {
  const left = exclusions.map(
    ({ inWords, when }) => `${inWords || "…"} (${conditionWords(when, about)})`,
  );
  return left.length > 0 ? `Left out: ${left.join("; ")}.` : "";
}

function exceptionsOf({ exceptions }: Criterion, own: OwnWords): string[] | null {
  if (exceptions === null) return null;
  return [
    ...exceptions.steps.map((step) => `the step “${stepWords(step, own)}” was excepted`),
    ...exceptions.reasons.map((reason) => ownReasonWords(reason, own)),
  ];
}

function evidenceOf(criterion: Criterion, about: About): string[] {
  const looked = lookedAt(criterion.met);
  const lists = [...new Set(looked.map(({ list }) => list))];
  return lists.map((name) => {
    const list = name === null ? undefined : listOf(criterion.unit, name);
    const within = list ? { ...about, list } : about;
    const fields = looked
      .filter((one) => one.list === name)
      .map(({ field }) => fieldWords(fieldAbout(within, field), about.own));
    const words = joined(fields, "and");
    return list ? `of all ${listName(list, about.own)}: ${words}` : words;
  });
}

function shownOf({ unit, byClinician, wholeCourse }: Criterion): string {
  if (unit === "chair-day") return "By chair and practice.";
  if (!byClinician)
    return "By chair and practice, not by clinician: staff and equipment do it together.";
  return wholeCourse
    ? "By practice and clinician; it counts for everyone who worked on the canal in its course."
    : "By practice, chair and clinician.";
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
