import type { Criterion } from "@/lib/protocol/criterion";
import { day, moment } from "./day";
import { exceptionAddress } from "./exception-address";
import { exceptionReasonWords, exceptionRemark, type OwnReason } from "./exception-reason";
import { reasonWords } from "./reason-words";

/** An exception as the store lists it. */
export type ExceptionInput = {
  readonly practice: string;
  readonly sessionId: string;
  /** Empty: the visit. */
  readonly canal: string;
  readonly criterion: string;
  readonly tooth: string;
  readonly day: string;
  readonly clinician: string;
  readonly reason: string;
  readonly source: "records" | "step" | "page";
  readonly step: string | null;
  readonly by: string | null;
  readonly at: Date | null;
  readonly asked: "asked" | "answered" | "closed" | null;
};

/** An exception in words. */
export type ExceptionWords = {
  readonly id: string;
  readonly href: string;
  readonly day: string;
  readonly unit: string;
  readonly clinician: string;
  readonly criterion: string;
  readonly reason: string;
  /** Where it was written down, by whom and when. */
  readonly source: string;
  /** Why it does not count, or that its reason is on no list; empty where neither is so. */
  readonly remark: string;
  /** How the latest question about it stands; empty where nothing was asked. */
  readonly asked: string;
};

export const askedWords = {
  asked: "asked, not answered",
  answered: "answered",
  closed: "closed",
  never: "nothing asked",
} as const;

/**
 * @param inForce the criterion as it was in force there that day
 * @param title of the criterion, where it is known
 * @param zone in which moments are told
 */
export function exceptionWords(
  of: ExceptionInput,
  about: {
    readonly inForce: Criterion | undefined;
    readonly title: string;
    readonly own: readonly OwnReason[];
    readonly zone: string;
  },
): ExceptionWords {
  return {
    id: [of.practice, of.sessionId, of.canal, of.criterion, of.source, of.step].join("/"),
    href: exceptionAddress(of),
    day: day(of.day),
    unit: unitWords(of),
    clinician: of.clinician,
    criterion: about.title,
    reason: exceptionReasonWords(of.reason, of.practice, about.own),
    source: sourceWords(of, about.zone),
    remark: exceptionRemark(of.reason, of.practice, about.inForce, about.own),
    asked: of.asked ? askedWords[of.asked] : "",
  };
}

/** "Tooth 26, canal MB1", or the whole visit. */
export function unitWords({ tooth, canal }: { tooth: string; canal: string }): string {
  return `tooth ${tooth}, ${canal ? `canal ${canal}` : "the visit"}`;
}

function sourceWords({ source, step, by, at }: ExceptionInput, zone: string): string {
  if (source === "step") return `step ${reasonWords(step ?? "")} excepted, in the records`;
  const who = [by ? `by ${by}` : "", at ? moment(at, zone) : ""].filter(Boolean).join(", ");
  const where = source === "page" ? "entered here" : "in the records";
  return who ? `${where} ${who}` : where;
}
