import { disconnect } from "@/lib/store/database";
import { act } from "./acts";

/**
 * A process that does one act when it is told to and says "done" once it has its answer. Its first line from outside is an order: the
 * act, the database, and by how much and when the clock jumps.
 */
process.stdout.write("ready\n");
process.stdin.once("data", async (bytes) => {
  const { name, stage, url, jump } = JSON.parse(bytes.toString());
  process.env.DATABASE_URL = url;
  if (jump) setTimeout(() => jumpBack(jump.back), jump.after);
  try {
    await act(name, stage);
    process.stdout.write("done\n");
  } catch (trouble) {
    process.stdout.write(`failed: ${trouble instanceof Error ? trouble.message : trouble}\n`);
  }
  await disconnect().catch(() => undefined);
  process.exit();
});

/** From now on every clock of this process is back by so many milliseconds. */
function jumpBack(back: number): void {
  const now = Date.now.bind(Date);
  const Real = Date;
  globalThis.Date = new Proxy(Real, {
    construct: (_, words) => Reflect.construct(Real, words.length > 0 ? words : [now() - back]),
    get: (real, name) => (name === "now" ? () => now() - back : Reflect.get(real, name)),
  });
}
