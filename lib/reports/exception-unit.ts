import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Criterion } from "@/lib/protocol/criterion";
import { exceptionsAt, type ListedException } from "@/lib/store/exceptions/exception-list";
import { queriesOf } from "@/lib/store/exceptions/queries";
import { ownWork } from "@/lib/store/exceptions/whose-work";
import { withdrawnExceptions } from "@/lib/store/exceptions/withdrawn-exceptions";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { type VisitHead, visitHead } from "@/lib/store/visit/visit-head";
import { day, moment } from "@/lib/views/day";
import { type ExceptionWords, exceptionWords } from "@/lib/views/exception-line-words";
import { type QueryLine, queryLine } from "@/lib/views/exception-queries";
import { reasonsOffered } from "@/lib/views/exception-reason";
import { visitAddress } from "@/lib/views/visit-address";
import { criterionOnDay, criterionTitles, exceptedSteps } from "./criterion-on-day";
import { unitsOffered } from "./exception-units-offered";
import { leadOrOwnAt } from "./lead-or-own";
import { ownReasons } from "./own-reasons";

type Option = { readonly value: string; readonly words: string };

/** An exception that is there or was, what was asked about it, and what the viewer may do. */
export type ExceptionThere = ExceptionWords & {
  readonly canal: string;
  /** Free text, for the clinician and the lead. */
  readonly note: string | null;
  /** By whom and when it was withdrawn; null where it stands. */
  readonly withdrawn: string | null;
  readonly queries: readonly QueryLine[];
  readonly mayWithdraw: boolean;
  readonly mayAsk: boolean;
  readonly mayAnswer: boolean;
  readonly mayClose: boolean;
};

export type ExceptionUnit = {
  readonly title: string;
  readonly where: string;
  readonly visit: { readonly href: string; readonly words: string };
  /** What the criterion demands and foresees, in words. */
  readonly demand: readonly { readonly term: string; readonly words: string }[];
  readonly there: readonly ExceptionThere[];
  /** What can be chosen; null where the viewer may enter none, and `why` says so. */
  readonly form: {
    readonly units: readonly Option[];
    readonly unit: string;
    readonly reasons: readonly Option[];
  } | null;
  readonly why: string;
  /** Values that name the criterion at the visit. */
  readonly key: { readonly practice: string; readonly session: string; readonly criterion: string };
};

/**
 * Exceptions of a criterion at one visit; null where there is no such visit or criterion. For the practice's lead,
 * and for a clinician of that visit, who sees and enters those of their own work.
 *
 * @param canal the unit that is asked for; empty is the visit
 * @throws Refused
 */
export async function exceptionUnit(
  viewer: Viewer,
  at: { readonly practice: string; readonly session: string; readonly criterion: string },
  canal: string,
): Promise<ExceptionUnit | null> {
  const { lead, own } = leadOrOwnAt(viewer, at.practice);
  const reach = lead ?? own;
  const head = await visitHead(reach, at.practice, at.session);
  if (!head) return null;
  const [protocol, reasons] = await Promise.all([protocolWithin(reach), ownReasons(reach)]);
  const title = criterionTitles(protocol)(at.criterion);
  const inForce = criterionOnDay(protocol, at.criterion, head.practice, head.day);
  if (!inForce && title === at.criterion) return null;
  const [found, before] = await Promise.all([
    exceptionsAt(reach, exceptedSteps(protocol), head, at.criterion),
    withdrawnExceptions(reach, head, at.criterion),
  ]);
  const work = own ? await ownWork(own, head) : null;
  const mine = (of: string) => (of === "" ? work?.visit : work?.canals.includes(of)) === true;
  const about = { inForce, title, own: reasons, zone: head.zone };
  const there = found.map(async (one): Promise<ExceptionThere> => {
    return {
      ...exceptionWords(one, about),
      canal: one.canal,
      note: one.note,
      withdrawn: null,
      ...(await asked(one, head, { lead, mine: mine(one.canal) })),
    };
  });
  const gone = before.map(async (one, place): Promise<ExceptionThere> => {
    const words = exceptionWords(one, about);
    const who = [one.withdrawnBy ?? "somebody", moment(one.withdrawnAt, head.zone)].join(", ");
    const withdrawn = { canal: one.canal, note: one.note, withdrawn: who, remark: "" };
    // What was asked is of the unit: it stands beside the exception that stands, else beside the last that did.
    const [last] = before.filter(({ canal }) => canal === one.canal);
    if (one !== last || found.some(({ canal }) => canal === one.canal))
      return { ...words, ...withdrawn, id: `${words.id}/${place}`, ...nothingAsked };
    const questions = await asked(one, head, { lead, mine: mine(one.canal) });
    return { ...words, ...withdrawn, ...questions, mayWithdraw: false, mayAsk: false };
  });
  const units = work ? unitOptions(inForce, unitsOffered(inForce, work)) : [];
  const choices = inForce ? reasonsOffered(inForce, head.practice, reasons) : [];
  return {
    title,
    where: `${head.practiceName}, ${day(head.day)}, visit ${head.sessionId}`,
    visit: { href: visitAddress(head.practice, head.sessionId), words: `Visit ${head.sessionId}` },
    demand: demandOf(inForce, choices),
    there: await Promise.all([...there, ...gone]),
    form:
      units.length > 0 && choices.length > 0
        ? { units, unit: unitAsked(units, canal), reasons: choices }
        : null,
    why: whyNone(inForce, own, units, choices),
    key: at,
  };
}

const nothingAsked = {
  queries: [],
  mayWithdraw: false,
  mayAsk: false,
  mayAnswer: false,
  mayClose: false,
};

async function asked(
  one: ListedException,
  head: VisitHead,
  viewer: { lead: FiguresReach | null; mine: boolean },
) {
  const queries = (await queriesOf(one)).map((query) => queryLine(query, head.zone));
  const open = queries.find(({ state }) => state !== "closed");
  return {
    queries,
    mayWithdraw: viewer.mine && one.source === "page",
    mayAsk: viewer.lead !== null && !open,
    mayAnswer: viewer.mine && open?.state === "asked",
    mayClose: viewer.lead !== null && open !== undefined,
  };
}

function unitOptions(criterion: Criterion | undefined, canals: readonly string[]): Option[] {
  const whole = criterion?.unit === "visit" ? "the visit" : "every canal of the visit";
  return canals.map((canal) => ({ value: canal, words: canal ? `canal ${canal}` : whole }));
}

/** Nobody means every canal by naming none: then it is the first of them. */
function unitAsked(units: readonly Option[], canal: string): string {
  const named = units.find(({ value }) => value === canal && canal !== "");
  return (named ?? units[0])?.value ?? "";
}

function demandOf(criterion: Criterion | undefined, reasons: readonly Option[]) {
  if (!criterion) return [];
  const left = criterion.exclusions.map(({ inWords }) => inWords);
  return [
    { term: "Demands", words: criterion.statement },
    { term: "Why", words: criterion.rationale },
    ...(left.length > 0
      ? [{ term: "Left out", words: `${left.join("; ")}: no exception is needed.` }]
      : []),
    ...(criterion.exceptions
      ? [
          {
            term: "Excepted",
            words: `a unit that is not met, for one of these reasons: ${reasons.map(({ words }) => words).join("; ") || "none is on the list"}. A unit that is met stays met.`,
          },
        ]
      : []),
  ];
}

function whyNone(
  inForce: Criterion | undefined,
  own: OwnReach | null,
  units: readonly Option[],
  reasons: readonly Option[],
): string {
  if (!inForce) return "The criterion was not in force there on that day: no exception is needed.";
  if (inForce.exceptions === null) return "The criterion foresees no exception.";
  if (!own) return "An exception is entered by whoever did the work.";
  if (units.length === 0)
    return "None of the units of this criterion at this visit is your own work.";
  return reasons.length === 0
    ? "No reason is on the list of this criterion; the clinical lead can add one to the protocol."
    : "";
}
