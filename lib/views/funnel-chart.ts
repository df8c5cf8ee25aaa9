import type { Flagged, PageFlags } from "@/lib/audit/flagged";
import type { Funnel, FunnelLimits } from "@/lib/audit/funnel";
import type { Pooled } from "@/lib/audit/pooled";
import type { AllShrunken } from "@/lib/audit/shrunken";
import type { Measured } from "@/lib/measures/measured";
import { axisOf } from "./axis";
import { estimateWords } from "./figure-line";
import { couldHaveBeenSeen, flagMark, tierWords } from "./flag-words";
import type { FunnelChart, FunnelLimit, FunnelPoint } from "./funnel-rows";
import { rowLabel } from "./interval-chart";
import { titleOf, unitName } from "./measure-words";
import { count, decimal, percent } from "./quantity";
import { subjectId } from "./subject-id";
import { toldApart } from "./told-apart";

export type FunnelChartOf = {
  readonly measure: Measured;
  readonly page: PageFlags;
  readonly funnel: Funnel;
  readonly pooled: Pooled;
  readonly shrunken: AllShrunken | undefined;
  readonly hrefOf: (flagged: Flagged) => string | undefined;
};

/** Every clinician's rate on its funnel; in the table what could have been seen and the shrunken rate. */
export function funnelChart(of: FunnelChartOf): FunnelChart {
  const { measure, page, funnel, pooled } = of;
  const nameOf = toldApart(
    page.flagged.map(({ figure }) => figure),
    (figure) => rowLabel(figure.about),
  );
  const points = page.flagged.map((one) => pointOf(one, nameOf(one.figure), of.hrefOf(one)));
  const limits = funnel.limits.map(clipped);
  const last = limits.at(-1);
  const highest = Math.max(pooled.rate, ...points.map((point) => point.estimate));
  const lowest = Math.min(pooled.rate, ...points.map((point) => point.estimate));
  // The limits of few units leave every axis: it holds the points and the limits of the largest number.
  const reach = [lowest, highest, last?.lower998 ?? lowest, last?.upper998 ?? highest];
  return {
    title: `${titleOf(measure)}: ${findingWords(page)}`,
    across: axisOf([0, ...points.map((point) => point.units)], "", unitName(measure, 2), true),
    up: axisOf(reach, "share", `share of ${unitName(measure, 2)}`, pooled.rate < 0.5),
    centre: { value: pooled.rate, words: `all shown ${percent(pooled.rate)}` },
    limits,
    points,
    notes: notesOn(of),
    table: {
      head: [
        "Clinician",
        "Rate",
        "Flag",
        "What could have been seen",
        "Shrunken rate",
        "Reliability",
      ],
      rows: page.flagged.map((one) => ({
        id: subjectId(one.figure.about),
        cells: [nameOf(one.figure), ...cellsOf(one, of.shrunken)],
      })),
    },
  };
}

function findingWords(page: PageFlags): string {
  const looked = page.flagged.filter(({ flag }) => flag.tier !== null).length;
  if (looked === 0)
    return `no clinician's rate differs from that of all shown by more than chance easily gives`;
  return `${looked === 1 ? "one clinician's rate differs" : `${count(looked)} clinicians' rates differ`} from that of all shown by more than chance easily gives`;
}

function pointOf(one: Flagged, label: string, href: string | undefined): FunnelPoint {
  const { figure, flag } = one;
  const mark = flagMark(flag.tier);
  return {
    id: subjectId(figure.about),
    label,
    units: figure.denominator,
    estimate: figure.numerator / figure.denominator,
    flag: mark,
    words: `${label}: ${count(figure.numerator)} of ${count(figure.denominator)}, ${estimateWords(figure)}. ${tierWords(flag.tier)}${mark ? "" : `; ${couldHaveBeenSeen(one)}`}.`,
    ...(href ? { href } : {}),
  };
}

function clipped(limits: FunnelLimits): FunnelLimit {
  const clip = (value: number) => Math.min(1, Math.max(0, value));
  return {
    units: limits.units,
    lower95: clip(limits.lower95),
    upper95: clip(limits.upper95),
    lower998: clip(limits.lower998),
    upper998: clip(limits.upper998),
  };
}

function notesOn({ funnel, pooled, shrunken }: FunnelChartOf): string[] {
  const { overdispersion } = funnel;
  return [
    "A point outside a line is not a flag: the lines are drawn for one clinician looked at alone, and of rare events they flag too many. The marks are what holds for the whole page.",
    ...(pooled.designEffect > 1
      ? [
          `Units of one patient resemble each other (design effect ${decimal(pooled.designEffect, 2)}): lines and flags count that many times fewer units.`,
        ]
      : []),
    ...(overdispersion
      ? [
          `The rates vary ${decimal(overdispersion.phi, 2)} times as much as chance alone has it (φ; about 1 where nobody differs${overdispersion.tau2 > 0 ? `; τ between clinicians ${percent(Math.sqrt(overdispersion.tau2))}` : ""}). The limits are not widened by it.`,
        ]
      : []),
    ...(shrunken
      ? [
          shrunken.extra
            ? "The shrunken rate draws each rate towards that of all shown, by as much as so few units leave to chance; its reliability is the share that is not chance. It stands beside the plain rate and never for it."
            : "No extra variation: the clinicians' rates do not vary by more than chance, and shrunken they are all the same.",
        ]
      : []),
  ];
}

function cellsOf(one: Flagged, shrunken: AllShrunken | undefined): string[] {
  const found = shrunken?.rates.find(({ figure }) => figure === one.figure);
  return [
    estimateWords(one.figure),
    tierWords(one.flag.tier),
    couldHaveBeenSeen(one),
    found ? percent(found.rate) : "none",
    found ? percent(found.reliability) : "none",
  ];
}
