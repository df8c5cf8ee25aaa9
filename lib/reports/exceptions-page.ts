import { z } from "zod";
import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Protocol } from "@/lib/protocol/protocol";
import type { Period } from "@/lib/records/period";
import {
  type ExceptionChoice,
  exceptionChoices,
  exceptionList,
} from "@/lib/store/exceptions/exception-list";
import { openQueries } from "@/lib/store/exceptions/queries";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { askedWords, type ExceptionWords, exceptionWords } from "@/lib/views/exception-line-words";
import { type OpenQuestion, openQuestion } from "@/lib/views/exception-open-question";
import type { ExceptionRates } from "@/lib/views/exception-rates";
import { exceptionReasonWords, type OwnReason } from "@/lib/views/exception-reason";
import { listAddress } from "@/lib/views/list-address";
import { listWords } from "@/lib/views/list-words";
import type { PeriodChoices } from "@/lib/views/period-choices";
import { periodWords } from "@/lib/views/period-words";
import { type Address, askedFigures } from "./asked-period";
import { criterionOnDay, criterionTitles, exceptedSteps } from "./criterion-on-day";
import { exceptionRatesOf } from "./exception-rates";
import { leadOrOwn } from "./lead-or-own";
import { ownPeriod } from "./own-period";
import { ownReasons } from "./own-reasons";

type Choice = { readonly name: string; readonly words: string };

export type ExceptionsPage = {
  /** The lead sees every clinician of their practices; a clinician sees themself. */
  readonly as: "lead" | "own";
  readonly period: { readonly name: string; readonly words: string };
  readonly periods: PeriodChoices;
  readonly practices: readonly { readonly code: string; readonly name: string }[];
  readonly practice: string | undefined;
  /** Whatever the period: what waits for an answer, or to be closed. */
  readonly open: readonly OpenQuestion[];
  /** Null for a clinician. */
  readonly rates: ExceptionRates | null;
  readonly lines: readonly ExceptionWords[];
  readonly words: string;
  /** What the list can be narrowed to, by the name of the address's parameter, and what is chosen. */
  readonly filters: readonly {
    readonly name: string;
    readonly label: string;
    readonly all: string;
    readonly chosen: string;
    readonly choices: readonly Choice[];
  }[];
  /** What of the address stays when the list is narrowed. */
  readonly keep: Readonly<Record<string, string | undefined>>;
  readonly previous: string | null;
  readonly next: string | null;
};

const size = 25;
const path = "/exceptions";
// No database takes a NUL in a text.
const plain = z
  .string()
  .max(200)
  .regex(/^[^\0]+$/)
  .optional()
  .catch(undefined);
const asked = z.object({
  criterion: plain,
  reason: plain,
  clinician: plain,
  asked: z.enum(["asked", "answered", "closed", "never"]).optional().catch(undefined),
  view: z.literal("own").optional().catch(undefined),
  page: z.coerce.number().int().min(1).max(100_000).catch(1),
});

/** Exceptions of a period: a lead's with the share of each clinician, a clinician's own. @throws Refused, AskedWrongly */
export async function exceptionsPage(viewer: Viewer, address: Address): Promise<ExceptionsPage> {
  const read = asked.parse({ ...address, page: address.page ?? 1 });
  const whole = leadOrOwn(viewer, read.view === "own");
  const at = await placeOf(whole, address);
  const [protocol, own] = await Promise.all([protocolWithin(whole), ownReasons(whole)]);
  const steps = exceptedSteps(protocol);
  const { page, view, clinician, ...narrow } = read;
  const worker = "clinicianKey" in whole ? undefined : clinician;
  const [choices, found, open] = await Promise.all([
    exceptionChoices(at.reach, steps, at.period),
    exceptionList(at.reach, steps, {
      ...{ period: at.period, ...narrow, worker, limit: size, offset: (page - 1) * size },
    }),
    openQueries(at.reach),
  ]);
  const title = criterionTitles(protocol);
  const zoneOf = (code: string) => at.practices.find((one) => one.code === code)?.zone ?? "UTC";
  const lines = found.exceptions.map((one) => {
    const inForce = criterionOnDay(protocol, one.criterion, one.practice, one.day);
    const about = { inForce, title: title(one.criterion), own, zone: zoneOf(one.practice) };
    return exceptionWords(one, about);
  });
  const keep = { period: at.period.name, practice: at.practice, view };
  const to = (other: number) =>
    listAddress(
      path,
      { ...keep, ...narrow, clinician: worker, page: other === 1 ? undefined : String(other) },
      "#list",
    );
  return {
    as: "clinicianKey" in whole ? "own" : "lead",
    period: { name: at.period.name, words: periodWords(at.period) },
    periods: at.periods,
    practices: at.practices,
    practice: at.practice,
    open: open.map((one) => openQuestion(one, title(one.criterion), zoneOf(one.practice))),
    rates: await ratesOf(at.reach, protocol, at.period, choices),
    lines,
    words: listWords(page, size, found.all, "No exception is like this."),
    filters: filtersOf({ ...narrow, clinician: worker }, choices, { title, own, at: whole }),
    keep,
    previous: page > 1 ? to(page - 1) : null,
    next: page * size < found.all ? to(page + 1) : null,
  };
}

async function placeOf(reach: FiguresReach | OwnReach, address: Address) {
  if ("clinicianKey" in reach) {
    const { period, periods } = await ownPeriod(reach, address);
    return { reach, period, periods, practices: [], practice: undefined };
  }
  return askedFigures(reach, address);
}

async function ratesOf(
  reach: FiguresReach | OwnReach,
  protocol: Protocol,
  period: Period,
  choices: readonly ExceptionChoice[],
): Promise<ExceptionRates | null> {
  if ("clinicianKey" in reach) return null;
  return exceptionRatesOf(reach, protocol, period, choices);
}

function filtersOf(
  chosen: Readonly<
    Partial<Record<"criterion" | "reason" | "clinician" | "asked", string | undefined>>
  >,
  choices: readonly ExceptionChoice[],
  about: {
    title: (id: string) => string;
    own: readonly OwnReason[];
    at: FiguresReach | OwnReach;
  },
): ExceptionsPage["filters"] {
  const several = (namesOf: (one: ExceptionChoice) => Choice) =>
    [...new Map(choices.map((one) => [namesOf(one).name, namesOf(one)])).values()].sort((a, b) =>
      a.words.localeCompare(b.words),
    );
  const clinicians = {
    ...{
      name: "clinician",
      label: "Clinician",
      all: "All clinicians",
      chosen: chosen.clinician ?? "",
    },
    choices: several(({ worker, clinician, practice }) => ({
      name: worker,
      words: `${clinician} of ${practice}`,
    })),
  };
  return [
    {
      ...{
        name: "criterion",
        label: "Criterion",
        all: "All criteria",
        chosen: chosen.criterion ?? "",
      },
      choices: several(({ criterion }) => ({ name: criterion, words: about.title(criterion) })),
    },
    {
      ...{ name: "reason", label: "Reason", all: "All reasons", chosen: chosen.reason ?? "" },
      choices: several(({ reason, practice }) => ({
        name: reason,
        words: exceptionReasonWords(reason, practice, about.own),
      })),
    },
    ...("clinicianKey" in about.at ? [] : [clinicians]),
    {
      ...{
        name: "asked",
        label: "Questions",
        all: "Asked about or not",
        chosen: chosen.asked ?? "",
      },
      choices: Object.entries(askedWords).map(([name, words]) => ({ name, words })),
    },
  ];
}
