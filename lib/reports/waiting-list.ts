import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { fits } from "@/lib/intake/mapping/fits";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import type { Recognised } from "@/lib/intake/recognise/recognised";
import { type KeptMapping, keptMappings } from "@/lib/store/mappings";
import { practicesWithin } from "@/lib/store/records/practices";
import { type WaitingFile, waitingFiles } from "@/lib/store/waiting";
import { moment } from "@/lib/views/day";
import { fileWords } from "@/lib/views/mapping/file-words";
import type { Choice } from "@/lib/views/mapping/terms";
import { type WaitingLine, waitingLine } from "@/lib/views/mapping/waiting-line";
import { lookThrough } from "./look-through";
import { readDraft } from "./mapping-draft";
import { readiness } from "./ready-to-bring";

export type WaitingList = {
  readonly files: readonly WaitingLine[];
  /** Some are still being looked through. */
  readonly looking: boolean;
};

/** The files that wait, each with what is known of it and what is to be done. @throws Refused */
export async function waitingList(viewer: Viewer): Promise<WaitingList> {
  const reach = recordsReach(viewer);
  const [before, kept, practices] = await Promise.all([
    waitingFiles(reach),
    keptMappings(reach),
    practicesWithin(reach),
  ]);
  const looked = await Promise.all(before.map((file) => lookThrough(reach, file)));
  const files = await waitingFiles(reach);
  const zone = practices[0]?.zone ?? "UTC";
  return {
    files: files.map((file) => lineOf(file, kept, zone)),
    looking: looked.includes("looking"),
  };
}

function lineOf(file: WaitingFile, kept: readonly KeptMapping[], zone: string): WaitingLine {
  const recognised = file.recognised as Recognised | null;
  const read = readDraft(file.draft);
  const ready = readiness(file, kept);
  return waitingLine({
    id: file.id,
    name: file.name,
    bytes: Number(file.bytes),
    at: moment(file.at, zone),
    by: file.by,
    trouble: file.trouble,
    understood: recognised
      ? fileWords(
          recognised.layout,
          recognised.rows,
          recognised.readings.map(({ sure }) => sure),
        )
      : null,
    mapping: "draft" in read ? read.draft.name : null,
    todo: "todo" in ready ? ready.todo : null,
    keptAs: "mapping" in ready ? ready.keptAs : null,
    fitting: recognised ? fittingOf(recognised, kept) : [],
  });
}

/** The kept mappings that could read a file, those of its very shape first. */
function fittingOf({ columns, layout }: Recognised, kept: readonly KeptMapping[]): Choice[] {
  const header = columns.map(({ name }) => name);
  const found = kept
    .filter(({ retired }) => !retired)
    .map((one) => ({ one, mapping: mappingSchema.parse(one.definition) }))
    .filter(({ mapping }) => mapping.file.kind === layout.kind)
    .map(({ one, mapping }) => ({ one, fit: fits(mapping, header) }));
  const order = (fit: ReturnType<typeof fits>) => (fit === "same" ? 0 : 1);
  return found
    .filter(({ fit }) => fit !== undefined)
    .sort((one, other) => order(one.fit) - order(other.fit))
    .map(({ one, fit }) => ({
      value: one.name,
      words: `${one.name}, version ${one.version}${fit === "same" ? "" : " (the file has more columns)"}`,
    }));
}

/** A mapping that a file may be brought in by. */
export type ReadyFile = { readonly file: WaitingFile; readonly mapping: Mapping };

/** Those of the files that may be brought in, or why one may not, in a sentence. */
export async function readyFiles(
  reach: RecordsReach,
  ids: readonly number[],
): Promise<{ ready: readonly ReadyFile[] } | { todo: string }> {
  const files = (await waitingFiles(reach)).filter(({ id }) => ids.includes(id));
  if (files.length === 0) return { todo: "Choose a file that still waits." };
  const kept = await keptMappings(reach);
  const ready: ReadyFile[] = [];
  for (const file of files) {
    const found = readiness(file, kept);
    if ("todo" in found) return { todo: `${file.name}: ${found.todo}` };
    ready.push({ file, mapping: found.mapping });
  }
  const twice = ready.find(({ mapping }, place) =>
    ready.some(
      (other, at) =>
        at < place &&
        other.mapping.name === mapping.name &&
        JSON.stringify(other.mapping) !== JSON.stringify(mapping),
    ),
  );
  if (twice)
    return { todo: `Two different mappings are called “${twice.mapping.name}”; rename one.` };
  return { ready };
}
