import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Figure } from "@/lib/audit/figure";
import { monthlyLine } from "@/lib/audit/monthly-line";
import type { TimeLine } from "@/lib/audit/over-time";
import { rareBelow, rareLine } from "@/lib/audit/rare-line";
import type { Period } from "@/lib/records/period";
import { type Rebase, rebasesOf } from "@/lib/store/comparing/rebases";
import { separationsInOrder, type Whose } from "@/lib/store/comparing/separations-in-order";
import { figures } from "./figures";

/** A measure over time for one subject, with the rebases in force on it. */
export type LineOverTime = { readonly line: TimeLine; readonly rebases: readonly Rebase[] };

/**
 * The chart that fits the measure's kind and how rare its events are: months as medians or shares; where separations
 * are rarer than two a month, what lies between them. An instrument passes through months and hands: no line, null.
 * @param months oldest first
 */
export async function lineOverTime(
  reach: FiguresReach | OwnReach,
  measure: string,
  whose: Whose,
  months: readonly Period[],
): Promise<LineOverTime | null> {
  const [first, last] = [months[0], months.at(-1)];
  if (!first || !last || measure === "separation-per-instrument") return null;
  const line = { measure, kind: whose.kind, subject: whose.subject };
  const [rebases, ofMonths] = await Promise.all([
    rebasesOf(reach, line),
    figures(reach, { measures: [measure], periods: months, by: [whose.kind] }),
  ]);
  const own = ofMonths.filter((figure) => isOf(figure, whose));
  const begins = rebases.map(({ month }) => month);
  if (measure.startsWith("separation-") && isRare(own)) {
    const unit = measure === "separation-per-visit" ? "visit" : "canal";
    const span = { name: "", from: first.from, until: last.until };
    const found = await separationsInOrder(reach, unit, whose, span);
    // Uses have no order within a canal, and visits none within a day: days lie between their events.
    const chart = measure === "separation-per-canal" ? "g" : "t";
    return { rebases, line: rareLine(chart, found, begins) };
  }
  const byMonth = monthlyLine(
    months.map(({ name }) => ({
      month: name,
      figure: own.find((figure) => figure.period === name),
    })),
    begins,
  );
  return { rebases, line: byMonth };
}

function isRare(figures: readonly Figure[]): boolean {
  const counted = figures.filter((figure) => figure.kind === "rate" && figure.denominator > 0);
  const events = counted.reduce(
    (sum, figure) => sum + (figure.kind === "rate" ? figure.numerator : 0),
    0,
  );
  return events < rareBelow * counted.length;
}

/** Is it a figure of that line. */
export function isOf({ about }: Figure, { kind, subject }: Whose): boolean {
  if (about.kind !== kind) return false;
  if (about.kind === "practice") return about.code === subject;
  return about.kind === "clinician" ? about.key === subject : true;
}
