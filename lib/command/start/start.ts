import { join } from "node:path";
import { holdHome, refuseHeldHome } from "@/lib/store/home/hold-home";
import { homeFolder, makeHomeFolder } from "@/lib/store/home/home-folder";
import { HomeTrouble } from "@/lib/store/home/home-trouble";
import { withLock } from "@/lib/store/home/lock";
import { type Home, openHome } from "@/lib/store/home/open-home";
import { readyDatabase, refuseOtherKey } from "@/lib/store/home/ready-database";
import { generateClient } from "@/prisma/generate";
import { buildPages } from "./build-pages";
import { endWithNpm } from "./end-with-npm";
import { fillDemo } from "./fill-demo";
import { type ListenPlace, listenPlace } from "./listen-place";
import { pageEnvironment } from "./page-environment";
import { begun, say, step } from "./progress";
import { servePages } from "./serve-pages";
import { whoCanSignIn } from "./who-can-sign-in";

/** What `npm start` runs: from a fresh checkout to served pages, and down again in order. */
async function start(): Promise<number> {
  const stop = new AbortController();
  for (const name of ["SIGINT", "SIGTERM", "SIGHUP"] as const) {
    process.on(name, () => stop.abort());
  }
  endWithNpm(() => stop.abort());
  // Several may be started on one database that is elsewhere, and share a home.
  const shares = Boolean(process.env.DATABASE_URL?.trim());
  if (!shares) await refuseHeldHome(homeFolder());
  const place = await listenPlace();
  const folder = await makeHomeFolder();
  const held = await holdHome(folder, place.address, shares ? place.port : undefined);
  const home: { opened?: Home } = {};
  try {
    return await readyAndServe(place, home, stop);
  } finally {
    // Whatever still runs ends before the database does.
    stop.abort();
    await home.opened?.close();
    await held.release();
  }
}

async function readyAndServe(
  place: ListenPlace,
  home: { opened?: Home },
  stop: AbortController,
): Promise<number> {
  const from = performance.now();
  say("Canal Audit is getting ready.");
  await step("Database client", async () => ((await generateClient()) ? "made" : "up to date"));
  // The two halves need different things of the machine, so they run side by side.
  const halves = [
    step("Pages", () => buildPages(stop.signal)),
    readyRecords(place, home, stop.signal),
  ] as const;
  const [, env] = await Promise.all(halves).catch(async (error) => {
    stop.abort();
    await Promise.allSettled(halves);
    throw error;
  });
  if (stop.signal.aborted) return stopped();
  const child = await step("Server", () => servePages(place, env, stop.signal));
  if (!stop.signal.aborted) {
    say(`Ready after ${((performance.now() - from) / 1000).toFixed(1)} s.\n`);
    say(`Open ${place.address}\n`);
    for (const line of await whoCanSignIn(env.CANAL_AUDIT_HOME ?? "")) say(line);
    say("\nCtrl-C stops it.");
  }
  const end = await child.over;
  if (stop.signal.aborted) return stopped();
  throw new Error(`The server of the pages ended by itself:\n${end.said}`);
}

async function readyRecords(
  place: ListenPlace,
  home: { opened?: Home },
  stop: AbortSignal,
): Promise<Record<string, string>> {
  const opened = await step("Database", async () => {
    home.opened = await openHome({ onProgress: begun });
    return home.opened;
  });
  await step("Migrations", async () => {
    const applied = await readyDatabase(opened);
    await refuseOtherKey(opened);
    return applied.length === 0 ? "up to date" : `${applied.length} applied`;
  });
  const env = await pageEnvironment(opened, place);
  if (!stop.aborted) await step("Records", () => fillDemoOnce(opened, env, stop));
  return env;
}

/** Of several that are started at once, one fills the home. */
function fillDemoOnce(home: Home, env: Record<string, string>, stop: AbortSignal) {
  return withLock(join(home.folder, "demo.lock"), () => fillDemo(home, env, stop), 1_200_000);
}

function stopped(): number {
  say("Stopped.");
  return 0;
}

try {
  process.exitCode = await start();
} catch (error) {
  const plain = error instanceof HomeTrouble;
  process.stderr.write(`${plain ? error.message : error instanceof Error ? error.stack : error}\n`);
  process.exitCode = 1;
}
