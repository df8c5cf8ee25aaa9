import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import {
  type Comparison,
  comparisonWithOthers,
  comparisonWithOwn,
  noComparison,
} from "@/lib/audit/comparison";
import type { Figure } from "@/lib/audit/figure";
import { level } from "@/lib/audit/level";
import { medianEnds } from "@/lib/audit/median-ends";
import { type Period, period, yearUntil } from "@/lib/records/period";
import { others } from "@/lib/store/figures/others";
import { comparing } from "@/lib/store/wall/as-whom";
import { figures } from "./figures";
import { keptWithin } from "./kept-within";

type OfClinician = Figure & { readonly about: { readonly kind: "clinician" } };

/** The figure of a clinician with what it is compared with. */
export type Compared<F extends Figure = Figure> = F & { readonly reference: Comparison };

/**
 * The figures with a `reference` on those of clinicians: the practice's units without the clinician's own; where too
 * few others stand behind that, the same of the group's clinicians of the same peer group; else the clinician's own four
 * quarters before; else none, and why. A clinician of several practices is compared with all of these together.
 */
export async function withReferences(
  reach: FiguresReach | OwnReach,
  of: readonly Figure[],
): Promise<Figure[]> {
  const compared = await comparisons(reach, of.filter(comparable));
  return of.map((figure) => {
    if (figure.about.kind !== "clinician") return figure;
    const reference = compared.get(figure) ?? noComparison(handsWords);
    return { ...figure, reference };
  });
}

async function comparisons(
  reach: FiguresReach | OwnReach,
  of: readonly OfClinician[],
): Promise<Map<Figure, Comparison>> {
  const found = new Map<Figure, Comparison>();
  const left = () => of.filter((figure) => !found.has(figure));
  for (const kind of ["practice", "peers"] as const) {
    for (const [figure, counts] of await othersOf(reach, left(), kind)) {
      const what = kind === "peers" ? peersWords : practiceWords(figure.about.practice);
      found.set(figure, comparisonWithOthers(kind, what, counts));
    }
  }
  const before = await ownBefore(reach, left());
  for (const figure of left())
    found.set(figure, comparisonWithOwn(before.get(figure)) ?? noComparison(noneWords));
  return found;
}

async function othersOf(
  reach: FiguresReach | OwnReach,
  of: readonly OfClinician[],
  comparison: "practice" | "peers",
) {
  if (of.length === 0) return new Map<OfClinician, never>();
  const names = [...new Set(of.map((figure) => figure.period))];
  const targets = new Map(
    of.map((figure) => [
      `${figure.about.key}\n${figure.period}`,
      { worker: figure.about.key, period: names.indexOf(figure.period) },
    ]),
  );
  const asked = {
    measures: [...new Set(of.map((figure) => figure.measure))],
    periods: names.map(periodOf),
    targets: [...targets.values()],
    comparison,
  };
  const answers = await keptWithin(reach, ["others", asked], () =>
    comparing(() => others(reach, { ...asked, ends: medianEnds(level) })),
  );
  const answer = new Map(
    answers.map((one) => [[one.worker, names[one.period], one.measure].join("\n"), one]),
  );
  return new Map(
    of.flatMap((figure) => {
      const one = answer.get([figure.about.key, figure.period, figure.measure].join("\n"));
      return one ? [[figure, one] as const] : [];
    }),
  );
}

/** Each figure's own year before its period, of a quarter the four before it. */
async function ownBefore(
  reach: FiguresReach | OwnReach,
  of: readonly OfClinician[],
): Promise<Map<Figure, Figure>> {
  if (of.length === 0) return new Map();
  const earlier = new Map(
    of.map((figure) => [figure.period, yearUntil(periodOf(figure.period).from)]),
  );
  const history = await figures(reach, {
    measures: [...new Set(of.map((figure) => figure.measure))],
    periods: [...earlier.values()],
    by: ["clinician"],
  });
  const keyOf = (figure: Figure, name: string | undefined) =>
    [figure.measure, name, "key" in figure.about ? figure.about.key : ""].join("\n");
  const known = new Map(history.map((figure) => [keyOf(figure, figure.period), figure]));
  return new Map(
    of.flatMap((figure) => {
      const before = known.get(keyOf(figure, earlier.get(figure.period)?.name));
      return before ? [[figure, before] as const] : [];
    }),
  );
}

function periodOf(name: string): Period {
  const found = period(name);
  if (!found) throw new RangeError(`not a period: ${name}`);
  return found;
}

function comparable(figure: Figure): figure is OfClinician {
  return figure.about.kind === "clinician" && figure.measure !== "separation-per-instrument";
}

function practiceWords(practice: string | undefined): string {
  return practice
    ? `practice ${practice} without this clinician`
    : "the clinician's practices without this clinician";
}

const peersWords = "the group's other clinicians of the same peer group";
const noneWords =
  "Fewer than 5 other clinicians have 10 units each, or one has over half of them, in the practice and among peers; there are no earlier quarters of the clinician's own either.";
const handsWords =
  "An instrument can pass through several hands, so it is not compared by clinician.";
