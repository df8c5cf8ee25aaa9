import { readdir, stat } from "node:fs/promises";
import { basename, extname, join, relative, resolve } from "node:path";
import { holderReach } from "@/lib/access/reach";
import { type ImportResult, importRecords, type Source } from "@/lib/reports/import-records";
import { keepFigures } from "@/lib/reports/keep-figures";
import { byCommand } from "@/lib/reports/log/by-command";
import { mappingsNamed, NoSuchMapping } from "@/lib/reports/mappings-named";
import { recordFileEndings } from "@/lib/reports/record-files";
import { isTimeZone } from "@/lib/reports/time-zone";
import { readOptions } from "./read-options";
import { keepProgress } from "./rebuild";
import { CannotDo, type Done } from "./verb";

/** `import <files or folders…> [--zone Europe/London] [--mapping NAME|mapping.json]…`; paths are the caller's. */
export async function importFiles(args: string[], quiet: boolean): Promise<Done> {
  const { values, positionals, many } = readOptions(args, ["zone"], {
    words: true,
    many: ["mapping"],
  });
  const zone = values.zone ?? "UTC";
  if (positionals.length === 0) throw new CannotDo("Name the files or folders to bring in.");
  if (!isTimeZone(zone))
    throw new CannotDo(`"${zone}" is no time zone; write one as Europe/London.`);
  const sources = (await Promise.all(positionals.map(sourcesAt))).flat();
  const tell = quiet ? undefined : progressTo(process.stderr);
  const { records, figures } = holderReach();
  const named = many.mapping ?? [];
  const result = await byCommand("canal-audit import", {}, async (home) => {
    const done = await importRecords(records, sources, {
      zone,
      key: home.key,
      onProgress: tell,
      ...(named.length > 0 ? { mappings: await mappingsAsked(named) } : {}),
    });
    await keepFigures(figures, quiet ? undefined : keepProgress(process.stderr));
    return done;
  });
  return { text: inWords(result), json: asDocument(result) };
}

export async function mappingsAsked(names: readonly string[]) {
  try {
    return await mappingsNamed(holderReach().records, names, callersPath);
  } catch (trouble) {
    throw trouble instanceof NoSuchMapping ? new CannotDo(trouble.message) : trouble;
  }
}

/** A path as the caller wrote it; npm runs the command in the project's folder. */
export function callersPath(path: string): string {
  return resolve(process.env.INIT_CWD ?? process.cwd(), path);
}

/** The files at a path: itself, or the record files of a folder by name. */
async function sourcesAt(path: string): Promise<Source[]> {
  const whole = callersPath(path);
  const found = await stat(whole).catch(() => null);
  if (!found) throw new CannotDo(`There is no file or folder ${path}.`);
  if (!found.isDirectory()) return [{ path: whole, name: basename(whole) }];
  const inside = await readdir(whole, { recursive: true, withFileTypes: true });
  const sources = inside
    .filter((entry) => !entry.isDirectory())
    .map((entry) => relative(whole, join(entry.parentPath, entry.name)))
    .sort()
    .filter((name) => recordFileEndings.includes(extname(name).toLowerCase()))
    .map((name) => ({ path: join(whole, name), name, found: true }));
  if (sources.length === 0)
    throw new CannotDo(
      `The folder ${path} holds no record files (${recordFileEndings.join(", ")}).`,
    );
  return sources;
}

function asDocument({ importId, files, held, passedOver }: ImportResult) {
  return {
    import: importId,
    passedOver,
    files: files.map(
      ({ name, table, mapping, version, read, accepted, repeated, held, letGo }) => ({
        name,
        table,
        ...(mapping === null ? {} : { mapping, version }),
        read,
        accepted,
        repeated,
        held,
        letGo,
      }),
    ),
    held: held.map((row) => ({
      file: row.file,
      line: row.line,
      table: row.table,
      key: row.sessionId ?? row.key,
      row: row.key,
      column: row.reasons[0]?.column ?? null,
      found: row.reasons[0]?.found ?? null,
      reason: row.reasons.map((reason) => reason.sentence).join(" "),
    })),
  };
}

function inWords({ importId, files, held, passedOver }: ImportResult): string {
  const lines = files.map(
    (file) =>
      `${file.name} (${file.table}${file.mapping === null ? "" : `, by ${file.mapping}`}): ${file.read} read, ${file.accepted} accepted, ${file.repeated} repeated, ${file.held} held, ${file.letGo} let go` +
      (file.ignored.length > 0
        ? `; not kept, no field takes them: ${file.ignored.join(", ")}`
        : ""),
  );
  const others = passedOver.map((why) => `passed over: ${why}`);
  const reasons = held
    .slice(0, 20)
    .map((row) => `  ${row.reasons.map((reason) => reason.sentence).join(" ")}`);
  const more = held.length > 20 ? [`  … and ${held.length - 20} more; --json lists them all.`] : [];
  return [
    `Import ${importId}`,
    ...lines,
    ...others,
    ...(held.length > 0 ? ["Held, and in no figure until mended:", ...reasons, ...more] : []),
  ].join("\n");
}

function progressTo(
  stream: NodeJS.WriteStream,
): (progress: { file?: string; rowsRead: number; state: string }) => void {
  let last = 0;
  return ({ file, rowsRead, state }) => {
    if (state === "reading" && Date.now() - last < 1000) return;
    last = Date.now();
    stream.write(
      state === "reading"
        ? `reading ${file ?? ""}: ${rowsRead} rows\n`
        : `${rowsRead} rows read; checking them together\n`,
    );
  };
}
