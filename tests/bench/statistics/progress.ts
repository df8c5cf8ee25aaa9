const EVERY_MS = 5_000;

/** Says on the error stream how far a long simulation is, every five seconds, so that the tables stay clean. */
export function progress(what: string, all: number): (done: number) => void {
  let said = performance.now();
  return (done) => {
    if (performance.now() - said < EVERY_MS) return;
    said = performance.now();
    process.stderr.write(`${what}: ${done} of ${all}\n`);
  };
}
