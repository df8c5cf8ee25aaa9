import { connect } from "node:net";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { projectFolder } from "@/lib/store/home/project-folder";
import type { ListenPlace } from "./listen-place";
import { type Child, runChild } from "./run-child";

/**
 * Starts the server of the built pages and answers once it listens.
 * @throws Error with what it said where it ends before that.
 */
export async function servePages(
  place: ListenPlace,
  env: Record<string, string>,
  stop: AbortSignal,
): Promise<Child> {
  const next = join(projectFolder, "node_modules", "next", "dist", "bin", "next");
  // Figures are counted from long lists that live for a moment: a larger nursery spares collecting them over and over.
  const words = [
    "--max-semi-space-size=64",
    next,
    "start",
    "-H",
    place.host,
    "-p",
    String(place.port),
  ];
  let listens = false;
  const child = runChild(words, { ...env, NODE_ENV: "production" }, stop, (text) => {
    if (listens) process.stderr.write(text);
  });
  const ended = child.over.then((end) => end);
  while (!(await accepts(place))) {
    const end = await Promise.race([ended, sleep(50)]);
    if (!end) continue;
    if (stop.aborted) return child;
    throw new Error(`The server of the pages did not start:\n${end.said}`);
  }
  listens = true;
  return child;
}

function accepts(place: ListenPlace): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(place.port, new URL(place.address).hostname.replace(/^\[|\]$/g, ""));
    socket.once("connect", () => {
      socket.destroy();
      resolve(true);
    });
    socket.once("error", () => resolve(false));
  });
}
