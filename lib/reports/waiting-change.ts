import { z } from "zod";
import type { RecordsReach } from "@/lib/access/reach";
import type { FileLayout } from "@/lib/intake/mapping/file-layout";
import { columnsRead } from "@/lib/intake/mapping/fits";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { alike } from "@/lib/intake/mapping/words";
import { propose } from "@/lib/intake/propose/propose";
import type { Recognised } from "@/lib/intake/recognise/recognised";
import { keepMapping, mappingNamed } from "@/lib/store/mappings";
import { saveDraft, saveRecognised, type WaitingFile } from "@/lib/store/waiting";
import { bringInWaiting, letWaitingGo } from "./bring-in-waiting";
import { lookThrough } from "./look-through";
import { readDraft } from "./mapping-draft";
import { waitingNumbered } from "./waiting-file-page";
import { readyFiles } from "./waiting-list";

type Refusal = { readonly wrong: { readonly form: string } };
type Done = { readonly done: string };

const gone: Refusal = { wrong: { form: "This file waits no longer." } };

/** Brings files in by their mappings, all in one import, and keeps the mappings. */
export async function bringWaitingIn(
  reach: RecordsReach,
  ids: readonly number[],
): Promise<{ importId: number } | Refusal> {
  const found = await readyFiles(reach, ids);
  if ("todo" in found) return { wrong: { form: found.todo } };
  for (const { file, mapping } of found.ready) await saveDraft(reach, file.id, mapping);
  return {
    importId: await bringInWaiting(
      reach,
      found.ready.map(({ file }) => file.id),
    ),
  };
}

/** Keeps the mapping of a file that goes on waiting. */
export async function keepWaitingMapping(reach: RecordsReach, id: number): Promise<Done | Refusal> {
  const found = await readyFiles(reach, [id]);
  if ("todo" in found) return { wrong: { form: found.todo } };
  const [only] = found.ready;
  if (!only) return gone;
  await saveDraft(reach, id, only.mapping);
  const { name, version } = await keepMapping(reach, only.mapping.name, only.mapping);
  return { done: `Kept as “${name}”, version ${version}. The file waits on.` };
}

/** Deletes a file that waits. */
export async function dropWaitingFile(reach: RecordsReach, id: number): Promise<Done> {
  await letWaitingGo(reach, id);
  return { done: "The file is deleted; nothing of it was brought in." };
}

/** Reads a file that waits by a kept mapping, as long as it has the columns that the mapping reads. */
export async function readByKept(
  reach: RecordsReach,
  id: number,
  name: string,
): Promise<Done | Refusal> {
  const file = await waitingNumbered(reach, id);
  const kept = file && (await mappingNamed(reach, name));
  if (!file || !kept) return gone;
  const mapping = mappingSchema.parse(kept.definition);
  const before = file.recognised;
  const looked = await lookThrough(reach, file, mapping.file);
  if (looked === "looking") return { wrong: { form: "It is still being looked through." } };
  if ("trouble" in looked) return { wrong: { form: looked.trouble } };
  const missing = missingIn(looked.recognised, mapping);
  if (missing.length > 0) {
    if (before) await saveRecognised(reach, id, { recognised: before });
    const names = missing.map((one) => `“${one}”`).join(", ");
    return {
      wrong: { form: `The mapping “${name}” reads ${names}, which the file does not have.` },
    };
  }
  await saveDraft(reach, id, mapping);
  return { done: `It is read by “${name}”, version ${kept.version}; it may be brought in.` };
}

const asked = z
  .object({
    encoding: z.enum(["utf-8", "utf-16le", "utf-16be", "windows-1252"]),
    separator: z.string().length(1),
    quote: z.enum(['"', "'", ""]),
    headerLine: z.coerce
      .number("Write the number of a line, as 1.")
      .int("Write the number of a line, as 1.")
      .min(1, "Lines are counted from 1.")
      .max(1000, "The column names have to stand within the first 1000 lines."),
    sheet: z.string().max(200),
    decimal: z.enum([".", ","]),
    thousands: z.enum(["", ".", ",", " ", "'"]),
  })
  .partial()
  .refine(({ decimal, thousands }) => decimal === undefined || decimal !== thousands, {
    path: ["thousands"],
    message: "Decimal mark and thousands cannot be the same.",
  });

/** Looks through a file anew under what somebody settled by hand. The draft stays where its columns do. */
export async function lookAnew(
  reach: RecordsReach,
  id: number,
  fields: Readonly<Record<string, string>>,
): Promise<Done | { readonly wrong: Readonly<Record<string, string>> }> {
  const file = await waitingNumbered(reach, id);
  if (!file) return { wrong: { form: "This file waits no longer." } };
  const read = asked.safeParse(fields.question === "decimal" ? marksOf(fields.mark) : fields);
  if (!read.success) {
    const [first] = read.error.issues;
    return { wrong: { [String(first?.path[0] ?? "form")]: first?.message ?? "" } };
  }
  const settled =
    fields.question === "decimal"
      ? underBefore(file, read.data)
      : settledBy(read.data, file.recognised);
  const looked = await lookThrough(reach, file, settled);
  if (looked === "looking") return { wrong: { form: "It is still being looked through." } };
  if ("trouble" in looked) return { wrong: { form: looked.trouble } };
  await saveDraft(reach, id, draftUnder(looked.recognised, file.draft, file.name));
  return { done: "Looked at anew." };
}

/** What was settled before stays settled. */
function underBefore(
  { recognised }: WaitingFile,
  read: z.output<typeof asked>,
): Partial<FileLayout> {
  const { kind: _, ...layout } = (recognised as Recognised | null)?.layout ?? {};
  return { ...layout, ...read };
}

/** The answer to what the only mark in numbers is, as "decimal ." or "thousands .". */
function marksOf(answer = ""): Record<string, string> {
  const [what, mark = ""] = answer.split(" ");
  if (what === "decimal") return { decimal: mark, thousands: "" };
  return { decimal: mark === "." ? "," : ".", thousands: mark };
}

/** A decimal mark that is still in question is not settled by another part's being changed. */
function settledBy(read: z.output<typeof asked>, before: unknown): Partial<FileLayout> {
  const known = before as Recognised | null;
  const untouched = read.decimal === known?.layout.decimal;
  if (!known || known.decimalUnsettled === null || !untouched) return read;
  const { decimal: _, thousands: __, ...others } = read;
  return others;
}

function draftUnder(recognised: Recognised, before: unknown, name: string): Mapping {
  const proposed = propose(recognised, name).mapping;
  const read = readDraft(before);
  if (!("draft" in read)) return proposed;
  const { draft } = read;
  return missingIn(recognised, draft).length === 0
    ? { ...draft, file: recognised.layout, columns: proposed.columns }
    : { ...proposed, name: draft.name, says: draft.says };
}

function missingIn({ columns }: Recognised, mapping: Mapping): string[] {
  const has = new Set(columns.map(({ name }) => alike(name)));
  const read = [...new Set(mapping.tables.flatMap(columnsRead))];
  return read.filter((name) => !has.has(alike(name)));
}
