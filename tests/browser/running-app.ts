import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { createWriteStream } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { freePort } from "@/lib/store/home/free-port";
import { projectFolder } from "@/lib/store/home/project-folder";

/** What the running application says of trouble, kept in its home: quiet-log.spec.ts reads it. */
export const logName = "log-of-the-tests.txt";
const READY = "Ctrl-C stops it.";

/**
 * Starts the whole application as `npm start` does, in a home of its own with the demo, on a free port.
 * Sets CANAL_AUDIT_URL and CANAL_AUDIT_HOME for the specs; answers how to take it down again. Where both are set
 * already, the application that answers there with its demo is used and left alone.
 * The export is a default one because Playwright asks for that.
 */
export default async function runApp(): Promise<() => Promise<void>> {
  if (process.env.CANAL_AUDIT_URL && process.env.CANAL_AUDIT_HOME) return async () => {};
  const home = await mkdtemp(join(tmpdir(), "canal-audit-browser-"));
  const takeDown = await runAppIn(home);
  return async () => {
    await takeDown();
    await rm(home, { recursive: true, force: true });
  };
}

/** The same in a home that is there or is to be made; it stays when the application is taken down. */
export async function runAppIn(home: string): Promise<() => Promise<void>> {
  const port = await freePort();
  const { DATABASE_URL: _, npm_lifecycle_event: __, ...env } = process.env;
  const app = spawn(process.execPath, ["--import", "tsx", "lib/command/start/start.ts"], {
    cwd: projectFolder,
    env: {
      ...env,
      CANAL_AUDIT_HOME: home,
      PORT: String(port),
      HOST: "127.0.0.1",
      TSX_TSCONFIG_PATH: join(projectFolder, "lib", "command", "tsconfig.json"),
    },
    stdio: ["ignore", "pipe", "pipe"],
  });
  app.stderr?.pipe(process.stderr, { end: false });
  app.stderr?.pipe(createWriteStream(join(home, logName), { mode: 0o600 }));
  const takeDown = async () => {
    const over = app.exitCode === null && app.signalCode === null ? once(app, "exit") : null;
    app.kill("SIGTERM");
    await over;
  };
  await untilReady(app).catch(async (error) => {
    await takeDown();
    throw error;
  });
  process.env.CANAL_AUDIT_URL = `http://127.0.0.1:${port}`;
  process.env.CANAL_AUDIT_HOME = home;
  return takeDown;
}

function untilReady(app: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    let said = "";
    app.stdout?.setEncoding("utf8").on("data", (text: string) => {
      said += text;
      if (said.includes(READY)) resolve();
    });
    app.once("error", reject);
    app.once("exit", (code) => reject(new Error(`start ended with ${code}:\n${said}`)));
  });
}
