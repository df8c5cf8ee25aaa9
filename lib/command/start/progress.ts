/** Runs one step of the start and says what it was, how it ended and how long it took. */
export async function step<T>(name: string, work: () => Promise<T>, told = say): Promise<T> {
  const from = performance.now();
  const result = await work();
  const seconds = ((performance.now() - from) / 1000).toFixed(1);
  told(`  ${name.padEnd(18)} ${outcome(result).padEnd(26)} ${seconds.padStart(5)} s`);
  return result;
}

/** Says that a longer step has begun. */
export function begun(doing: string): void {
  say(`  ${doing} …`);
}

/** Prints one line. */
export function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

/** A step may answer in a few words; anything else is just done. */
function outcome(result: unknown): string {
  return typeof result === "string" ? result : "ready";
}
