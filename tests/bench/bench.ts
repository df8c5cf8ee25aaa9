import { criteria } from "./criteria";
import { importSpeed } from "./import-speed";
import { killedImports } from "./killed-imports";
import { pages } from "./pages";
import { reader } from "./reader";
import { scale } from "./scale/scale";
import { coverage } from "./statistics/coverage";
import { elevated } from "./statistics/elevated";
import { flagPromise } from "./statistics/flag-promise";

/**
 * Measures what is promised and prints it as tables. Speed and memory are of one run; simulations are seeded and
 * give the same table each time.
 *   npm run bench [-- scale FOLDER]     every number of speed and scale beside what is promised, and as JSON: records of 100 thousand
 *                                       and 1 million canals are made, brought in and asked, 4 million asked; an hour or less.
 *                                       FOLDER keeps records and homes for a next time
 *   npm run bench -- import             memory and speed of an import
 *   npm run bench -- reader [TIMES]     a million irrigation rows through reader and checks alone, ten times
 *   npm run bench -- pages              answers of the pages on the demo
 *   npm run bench -- pages FOLDER       the same on the records of a folder
 *   npm run bench -- criteria FOLDER [PERIOD]
 *                                       every criterion, by everyone, in one quarter, and the plan of the slowest
 *   npm run bench -- killed FOLDER [TIMES] [SEED]
 *                                       kills imports at random moments, goes on, and compares counts and figures
 *   npm run bench -- coverage [TIMES]   how often plain and clustered intervals hold the truth
 *   npm run bench -- flags [TIMES]      how often pages are flagged where nobody differs, and where one does
 *   npm run bench -- elevated FOLDER [CODE]
 *                                       separations in a folder of records: who is flagged in which quarter, after how
 *                                       many canals the running sum signals; CODE is the clinician who truly differs
 */
const benches: Record<string, (...words: string[]) => Promise<void>> = {
  scale,
  import: importSpeed,
  reader,
  pages,
  criteria,
  killed: killedImports,
  coverage,
  flags: flagPromise,
  elevated,
};

const [name, ...words] = process.argv.slice(2);
const bench = benches[name ?? "scale"];
if (!bench) throw new Error(`no bench ${name}; there are ${Object.keys(benches).join(", ")}`);
await bench(...words);
