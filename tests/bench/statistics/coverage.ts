import { clusteredMedianInterval } from "@/lib/statistics/clustered-median";
import { clusteredProportion } from "@/lib/statistics/clustered-proportion";
import type { Ends } from "@/lib/statistics/interval";
import { clopperPearson, jeffreys, midP, wilson } from "@/lib/statistics/proportion-interval";
import { medianInterval } from "@/lib/statistics/quantile";
import { seededRandom } from "@/lib/statistics/seeded-random";
import { betaBinomialPatients, type Patient } from "./beta-binomial-patients";
import { CoverageTally } from "./coverage-tally";
import { lognormalPatients, trueMedian } from "./lognormal-patients";

const PATIENTS = 60;
const LEVEL = 0.95;
const RATE = 0.03;
// Any seed would do; a fixed one gives the same table each time.
const SEED = 20_261_125;

type Counts = { x: number; n: number; patients: readonly Patient[] };

const proportions: Record<string, (of: Counts) => Ends | undefined> = {
  "plain: Wilson": ({ x, n }) => wilson(x, n, LEVEL),
  "plain: Clopper–Pearson": ({ x, n }) => clopperPearson(x, n, LEVEL),
  "plain: mid-P": ({ x, n }) => midP(x, n, LEVEL),
  "plain: Jeffreys": ({ x, n }) => jeffreys(x, n, LEVEL),
  "clustered: Wilson at the effective number": ({ patients }) =>
    clusteredProportion(patients, LEVEL)?.interval,
};

const medians: Record<string, (of: readonly (readonly number[])[]) => Ends | undefined> = {
  "plain: order statistics": (patients) => medianInterval(patients.flat(), LEVEL),
  "clustered: Woodruff": (patients) => clusteredMedianInterval(patients, LEVEL),
};

/** How often 95 % intervals hold the truth where canals of one patient resemble each other, and where they do not. */
export async function coverage(runs = "2000"): Promise<void> {
  const times = Number(runs);
  for (const likeness of [0.2, 0]) {
    console.log(
      `\nProportion: ${times} simulations of ${PATIENTS} patients with 2–4 canals, rate 3 %, intra-cluster correlation ${likeness}; widths in per cent points`,
    );
    const draw = betaBinomialPatients(RATE, likeness, seededRandom(SEED));
    tabulate(times, proportions, RATE, 100, () => counted(patients(draw)));
  }
  for (const likeness of [0.4, 0]) {
    console.log(
      `\nMedian: ${times} simulations of ${PATIENTS} patients with 2–4 canals, lognormal around ${trueMedian} s, intra-cluster correlation ${likeness} of logarithms; widths in seconds`,
    );
    const draw = lognormalPatients(likeness, seededRandom(SEED));
    tabulate(times, medians, trueMedian, 1, () => patients(draw));
  }
}

function tabulate<Sample>(
  times: number,
  methods: Record<string, (of: Sample) => Ends | undefined>,
  truth: number,
  scale: number,
  sample: () => Sample,
): void {
  const kinds = Object.entries(methods).map(([name, method]) => ({
    method,
    tally: new CoverageTally(name, truth),
  }));
  for (let run = 0; run < times; run += 1) {
    const drawn = sample();
    for (const { method, tally } of kinds) tally.add(method(drawn));
  }
  console.table(kinds.map(({ tally }) => tally.row(scale)));
}

function patients<One>(draw: () => One): One[] {
  return Array.from({ length: PATIENTS }, draw);
}

function counted(of: readonly Patient[]): Counts {
  const sum = (part: keyof Patient) => of.reduce((all, one) => all + one[part], 0);
  return { x: sum("events"), n: sum("units"), patients: of };
}
