import { importMemory } from "./import-memory";

/** Memory and speed of importing 100,000 and 1,000,000 rows. */
export async function importSpeed(): Promise<void> {
  const [small, large] = await importMemory([100_000, 1_000_000]);
  if (!small || !large) throw new Error("a run is missing");
  console.table(
    [small, large].map((run) => ({
      rows: run.rows,
      seconds: run.seconds.toFixed(1),
      "rows a second": Math.round(run.rows / run.seconds),
      "peak MB": Math.round(run.peakMb),
    })),
  );
  const ratio = (large.peakMb / small.peakMb).toFixed(2);
  console.log(
    `Peak memory of 1,000,000 rows against 100,000: ${ratio} times (promised: at most 1.3)`,
  );
}
