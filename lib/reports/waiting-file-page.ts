import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { propose } from "@/lib/intake/propose/propose";
import type { Recognised } from "@/lib/intake/recognise/recognised";
import { saveDraft, type WaitingFile, waitingFile } from "@/lib/store/waiting";
import type { EditorView, Reasoned } from "@/lib/views/mapping/editor-view";
import { fileWords } from "@/lib/views/mapping/file-words";
import { type WrittenView, writtenView } from "@/lib/views/mapping/written-view";
import { count } from "@/lib/views/quantity";
import { columnFacts } from "./column-facts";
import { lookThrough } from "./look-through";
import { readDraft } from "./mapping-draft";
import { editorParts } from "./mapping-page-parts";
import { previewMapping } from "./mapping-preview";
import { testOf } from "./mapping-test";

/** A file that waits, as its page shows it. */
export type WaitingFilePage = { readonly id: number; readonly name: string } & (
  | { readonly state: "looking" }
  | { readonly state: "trouble"; readonly says: string }
  | {
      readonly state: "open";
      readonly says: string;
      readonly written: WrittenView;
      readonly editor: EditorView;
      /** Changes with the way in which the file is read. */
      readonly reading: string;
    }
);

/** A file that waits: how it is written, and its mapping as far as it is made. Null where there is none. @throws Refused */
export async function waitingFilePage(viewer: Viewer, id: number): Promise<WaitingFilePage | null> {
  const reach = recordsReach(viewer);
  const file = await waitingNumbered(reach, id);
  if (!file) return null;
  const named = { id, name: file.name };
  const looked = await lookThrough(reach, file);
  if (looked === "looking") return { ...named, state: "looking" };
  if ("trouble" in looked) return { ...named, state: "trouble", says: looked.trouble };
  const { recognised } = looked;
  const editor = await editorOf(reach, file, recognised);
  return {
    ...named,
    state: "open",
    says: fileWords(
      recognised.layout,
      recognised.rows,
      recognised.readings.map(({ sure }) => sure),
    ),
    written: writtenView(recognised),
    editor,
    reading: JSON.stringify([recognised.layout, recognised.decimalUnsettled]),
  };
}

/** A waiting file by what an address has for its number. */
export async function waitingNumbered(
  reach: RecordsReach,
  id: number,
): Promise<WaitingFile | null> {
  return Number.isSafeInteger(id) && id > 0 && id < 2 ** 31 ? waitingFile(reach, id) : null;
}

async function editorOf(
  reach: RecordsReach,
  file: WaitingFile,
  recognised: Recognised,
): Promise<EditorView> {
  const proposal = propose(recognised, file.name);
  const read = readDraft(file.draft);
  const draft = "draft" in read ? read.draft : proposal.mapping;
  if (!("draft" in read)) await saveDraft(reach, file.id, draft);
  return {
    ...(await editorParts(reach, draft)),
    file: { id: file.id, name: file.name, rows: count(recognised.rows) },
    columns: recognised.columns.map(columnFacts),
    reasons: reasonsOf(proposal),
    decimalUnsettled: recognised.decimalUnsettled,
    preview: await previewMapping(reach, file, draft),
    test: testOf(file, draft),
  };
}

function reasonsOf({ mapping, reasons }: ReturnType<typeof propose>): Reasoned[] {
  return mapping.tables.flatMap(({ table, fields }) =>
    Object.entries(fields).flatMap(([field, feed]) => {
      const why = reasons[`${table} ${field}`];
      return why === undefined ? [] : [{ table, field, feed, why }];
    }),
  );
}
