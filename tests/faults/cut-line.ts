import { connect, createServer, type Socket } from "node:net";
import { setTimeout as sleep } from "node:timers/promises";
import { actNames } from "./acts";
import { type Ground, type Outcome, tried } from "./ground";

/** The connection to the database cut at random moments of every act in turn, by a line in between that is cut. */
export async function cutLines(on: Ground, points: number): Promise<Outcome> {
  const came: string[] = [];
  const troubles: string[] = [];
  for (const point of on.here(points)) {
    const name = actNames[point % actNames.length] ?? "import";
    const at = on.random();
    const one = await tried(on, name, async (process, { url, took }) => {
      const line = await lineTo(url);
      process.go({ name, stage: on.base.stage, url: line.url });
      await sleep(at * took);
      line.cut();
      return process.ended;
    });
    came.push(one.came);
    troubles.push(...one.troubles);
  }
  return { what: "connection lost in the middle", points: came.length, came, troubles };
}

/** A line to the server of an address; once cut, nothing comes through it any more. */
async function lineTo(url: string): Promise<{ url: string; cut(): void }> {
  const to = new URL(url);
  const ends = new Set<Socket>();
  const server = createServer((near) => {
    const far = connect(Number(to.port), to.hostname);
    for (const [one, other] of [
      [near, far],
      [far, near],
    ] as const) {
      ends.add(one);
      one.on("error", () => other.destroy());
      one.on("close", () => other.destroy());
      one.pipe(other);
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  const through = new URL(url);
  through.port = String(address && typeof address === "object" ? address.port : 0);
  return {
    url: through.href,
    cut() {
      server.close();
      for (const end of ends) end.resetAndDestroy();
    },
  };
}
