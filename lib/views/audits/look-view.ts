import type { AuditContent } from "@/lib/audit/cycle/audit-content";
import { type ToLookAt, toLookAt } from "@/lib/audit/cycle/to-look-at";
import { type AuditWork, type LookStep, lookSteps } from "@/lib/records/audit-work";
import { day } from "../day";
import { flagWords } from "../flag-words";
import { measureAddress } from "../lead-address";
import { criterionLines } from "../lead-look-criteria";
import { titleOf } from "../measure-words";
import { subjectName } from "../subject-name";
import { clinicianNames } from "./clinician-names";
import { type TextField, textField } from "./text-field";
import { lookTextKey } from "./text-keys";

/** What each step asks, the person last. */
export const stepQuestions: Readonly<Record<LookStep, { title: string; question: string }>> = {
  data: {
    title: "Records",
    question:
      "Are the records right and complete? Open some behind the figure; read what is held and what was disputed.",
  },
  cases: {
    title: "Cases",
    question:
      "Were the cases harder, or others? Read the figure by tooth, curvature and retreatment.",
  },
  equipment: {
    title: "Equipment",
    question:
      "Did a chair, pump, timer or handpiece work as it should? Read the figure by chair, and the upkeep.",
  },
  process: {
    title: "Way of working",
    question: "Does the protocol fit the day: time, stock, handing over, who writes what down?",
  },
  person: {
    title: "Person",
    question:
      "Only now: what could help, such as time, training or a second pair of eyes? Ask, before anything is written here.",
  },
};

/** A flag with its closer look. */
export type LookItem = {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  /** Where its records are. */
  readonly href: string;
  readonly steps: readonly LookItemStep[];
  /** "Ended at the records, by N. N. on 3 Jul 2026."; null while it goes on. */
  readonly ended: string | null;
  /** The last step that has a finding, and all before it have one; null where none has. */
  readonly upTo: LookStep | null;
};

export type LookItemStep = {
  readonly step: LookStep;
  readonly title: string;
  readonly question: string;
  readonly field: TextField;
  /** A step opens when a finding is written at the one before. */
  readonly open: boolean;
};

export function lookItems({ form, computed, work }: AuditContent): LookItem[] {
  const names = clinicianNames(computed);
  const filters = { period: form.period, practice: form.practice ?? undefined };
  return toLookAt(computed).map((one) => {
    const ended = work.looks.find(({ flag }) => flag === one.id);
    const steps = stepsOf(work, one.id);
    const first = steps.findIndex(({ field }) => field.text === "");
    const upTo = steps[(first === -1 ? steps.length : first) - 1]?.step ?? null;
    return {
      id: one.id,
      title: `${titleOf(one.figure)}, ${whose(one, names)}`,
      words: lookWords(one, names),
      href: measureAddress(
        one.figure.measure,
        {
          ...filters,
          ...(one.figure.period === form.period ? { span: "quarter" } : {}),
          ...practiceOf(one),
        },
        one.flagged ? "#chance" : "#records",
      ),
      steps,
      ended: ended ? `Ended at: ${stepTitle(ended.step)}; ${ended.by}, ${day(ended.at)}.` : null,
      upTo,
    };
  });
}

/** What was flagged, in a sentence that is no verdict. */
export function lookWords(one: ToLookAt, names: ReadonlyMap<string, string>): string {
  if (one.flagged) return flagWords(one.flagged, whose(one, names).replace("clinician ", ""));
  return criterionLines([one.figure], {})[0]?.words ?? "";
}

export function stepTitle(step: string): string {
  const known = lookSteps.find((one) => one === step);
  return known ? stepQuestions[known].title.toLowerCase() : step;
}

function stepsOf(work: AuditWork, flag: string): LookItemStep[] {
  return lookSteps.map((step, place) => {
    const before = lookSteps[place - 1];
    const written = (of: LookStep) => work.texts.some(({ key }) => key === lookTextKey(flag, of));
    const { title, question } = stepQuestions[step];
    return {
      ...{ step, title, question },
      field: textField(work, { key: lookTextKey(flag, step), label: title, hint: question }),
      open: before === undefined || written(before) || written(step),
    };
  });
}

function whose({ figure }: ToLookAt, names: ReadonlyMap<string, string>): string {
  if (figure.about.kind !== "clinician") return subjectName(figure.about);
  return `clinician ${names.get(figure.about.key) ?? figure.about.code}`;
}

function practiceOf({ figure }: ToLookAt): { practice?: string } {
  return figure.about.kind === "practice" ? { practice: figure.about.code } : {};
}
