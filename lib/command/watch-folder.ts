import { stat } from "node:fs/promises";
import { setTimeout as pause } from "node:timers/promises";
import { holderReach } from "@/lib/access/reach";
import { noteCommand } from "@/lib/reports/log/by-command";
import { newWatch, type Taken, takeFinished } from "@/lib/reports/take-finished";
import { isTimeZone } from "@/lib/reports/time-zone";
import { withHome } from "@/lib/reports/with-home";
import { callersPath, mappingsAsked } from "./import-files";
import { readOptions } from "./read-options";
import { CannotDo, type Done } from "./verb";

/**
 * `watch <folder> [--zone …] [--mapping …]… [--every 5] [--once]`: looks every so many seconds and takes files that are
 * finished writing, until it is stopped; with --once it looks twice, so that what is still written to is known, and ends.
 */
export async function watchFolder(args: string[], quiet: boolean): Promise<Done> {
  const { values, positionals, many, flags } = readOptions(args, ["zone", "every"], {
    words: true,
    flags: ["once"],
    many: ["mapping"],
  });
  const [path, more] = positionals;
  if (path === undefined || more !== undefined) throw new CannotDo("Name one folder to watch.");
  const zone = values.zone ?? "UTC";
  if (!isTimeZone(zone))
    throw new CannotDo(`"${zone}" is no time zone; write one as Europe/London.`);
  const every = Number(values.every ?? 5);
  if (!(every >= 1 && every <= 3600)) throw new CannotDo("--every takes seconds, from 1 to 3600.");
  const folder = callersPath(path);
  if (!(await stat(folder).catch(() => null))?.isDirectory())
    throw new CannotDo(`There is no folder ${path}.`);
  const named = many.mapping ?? [];
  const all: Taken[] = [];
  await withHome(async (home) => {
    const { records } = holderReach();
    const mappings = named.length > 0 ? await mappingsAsked(named) : undefined;
    const watch = newWatch(folder, every * 1000);
    if (!quiet) process.stderr.write(`watching ${path}, every ${every} s; Ctrl-C ends it\n`);
    for (let look = 1; ; look += 1) {
      for await (const taken of takeFinished(records, watch, { zone, key: home.key, mappings })) {
        if ("importId" in taken)
          await noteCommand("canal-audit watch", { import: String(taken.importId) });
        if (!quiet) process.stdout.write(`${inWords(taken)}\n`);
        if (flags.has("once")) all.push(taken);
      }
      if (flags.has("once") && look === 2) return;
      await pause(every * 1000);
    }
  });
  return { text: `${all.length} files dealt with`, json: all };
}

function inWords(taken: Taken): string {
  if ("trouble" in taken) return taken.trouble;
  if ("again" in taken) return `${taken.file}: taken already, by import ${taken.again}`;
  const sum = (key: "read" | "accepted" | "repeated" | "held") =>
    taken.files.reduce((total, one) => total + one[key], 0);
  return `${taken.file}: import ${taken.importId}, ${sum("read")} read, ${sum("accepted")} accepted, ${sum("repeated")} repeated, ${sum("held")} held`;
}
