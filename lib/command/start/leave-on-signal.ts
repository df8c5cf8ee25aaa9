import { closeHomes } from "@/lib/store/home/opened-homes";

/**
 * On Ctrl-C and its like the home is left in order, so that no database server stays behind, and the process ends with
 * exit code 1 and one sentence. A transaction that was under way is rolled back.
 * @returns tells whether that has begun; what fails from then on fails because of it.
 */
export function leaveOnSignal(): () => boolean {
  let leaving = false;
  for (const name of ["SIGINT", "SIGTERM", "SIGHUP"] as const) {
    process.on(name, async () => {
      if (leaving) return;
      leaving = true;
      process.stderr.write("Stopped before it was done.\n");
      await closeHomes();
      process.exit(1);
    });
  }
  return () => leaving;
}
