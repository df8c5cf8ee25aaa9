import type { Flag } from "@/lib/statistics/flags";
import { seededRandom } from "@/lib/statistics/seeded-random";
import { betaBinomialPatients } from "./beta-binomial-patients";
import { flagPage, volumes } from "./flag-pages";
import { progress } from "./progress";
import { shareWords } from "./share-words";

// Any seed would do; a fixed one gives the same table each time.
const SEED = 20_261_125;
const RATES = [0.01, 0.03, 0.9];
const LIKENESSES = [0, 0.2];

/** How often a page shows a flag where nobody differs, and how often the one who does differ is flagged. */
export async function flagPromise(runs = "5000"): Promise<void> {
  const times = Number(runs);
  const cells = LIKENESSES.flatMap((likeness) => RATES.map((rate) => ({ likeness, rate })));
  console.log(
    `\nPages of ${volumes.length} clinicians with ${volumes[0]} to ${volumes.at(-1)} patients of 2–4 canals, ${times} a row; shares in per cent (exact 95 %)`,
  );
  console.log("Nobody differs: pages with any flag");
  console.table(cells.map(({ likeness, rate }) => nobodyDiffers(times, rate, likeness)));
  console.log(
    "One differs, each clinician in turn: three times the rate (of 90 %: three times as many not met)",
  );
  console.table(cells.map(({ likeness, rate }) => oneDiffers(times, rate, likeness)));
}

function nobodyDiffers(times: number, rate: number, likeness: number) {
  const draw = betaBinomialPatients(rate, likeness, seededRandom(SEED));
  const tell = progress(`nobody differs, ${rate}, ${likeness}`, times);
  let look = 0;
  let first = 0;
  for (let run = 0; run < times; run += 1) {
    const found = flagPage(draw);
    if (found.some(isFlag)) look += 1;
    if (found.some(isFirst)) first += 1;
    tell(run);
  }
  return {
    "rate %": 100 * rate,
    correlation: likeness,
    "any look %": shareWords(look, times, 2),
    "promised at most": 5,
    "any look first %": shareWords(first, times, 2),
    "at most": 0.2,
  };
}

function oneDiffers(times: number, rate: number, likeness: number) {
  const random = seededRandom(SEED);
  const other = rate > 0.5 ? 1 - 3 * (1 - rate) : 3 * rate;
  const usual = betaBinomialPatients(rate, likeness, random);
  const unusual = betaBinomialPatients(other, likeness, random);
  const tell = progress(`one differs, ${rate}, ${likeness}`, times);
  const direction = other > rate ? "higher" : "lower";
  const hits = { look: 0, first: 0, quiet: 0, busy: 0, others: 0 };
  const half = volumes.length / 2;
  for (let run = 0; run < times; run += 1) {
    const one = run % volumes.length;
    const found = flagPage((place) => (place === one ? unusual() : usual()));
    const flag = found[one] as Flag;
    const seen = isFlag(flag) && flag.direction === direction;
    if (seen) hits.look += 1;
    if (seen && isFirst(flag)) hits.first += 1;
    if (seen && one < half) hits.quiet += 1;
    if (seen && one >= half) hits.busy += 1;
    if (found.some((each, place) => place !== one && isFlag(each))) hits.others += 1;
    tell(run);
  }
  return {
    "rate %": 100 * rate,
    "of the one %": Math.round(100 * other),
    correlation: likeness,
    "found, look %": shareWords(hits.look, times),
    "look first %": shareWords(hits.first, times),
    "quieter half %": ((200 * hits.quiet) / times).toFixed(1),
    "busier half %": ((200 * hits.busy) / times).toFixed(1),
    "any other flagged %": shareWords(hits.others, times),
  };
}

function isFlag(flag: Flag): boolean {
  return flag.tier !== null;
}

function isFirst(flag: Flag): boolean {
  return flag.tier === "look-first";
}
