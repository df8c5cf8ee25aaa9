import { z } from "zod";
import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { tableNames } from "@/lib/records/tables";
import { type HeldAsked, heldNow } from "@/lib/store/import/imports";
import { letGo, takeBackLetGo } from "@/lib/store/import/let-go";
import { type HeldGroup, type HeldLine, heldGroups, heldLine } from "@/lib/views/held-lines";
import { count } from "@/lib/views/quantity";
import type { Address } from "./asked-period";

export type HeldRows = {
  readonly state: "held" | "let-go";
  readonly groups: readonly HeldGroup[];
  readonly rows: readonly HeldLine[];
  readonly rowsFound: string;
  /** What narrows the list, in words; empty where nothing does. */
  readonly narrowed: string;
  readonly page: number;
  readonly pages: number;
  /** Addresses of the neighbouring pages. */
  readonly previous: string | null;
  readonly next: string | null;
};

/** Rows on one page. */
const rowsShown = 50;

const text = z.string().max(80).optional().catch(undefined);
const asked = z.object({
  table: z.enum(tableNames).optional().catch(undefined),
  kind: text,
  column: text,
  import: z.coerce
    .number()
    .int()
    .positive()
    .max(2 ** 31 - 1)
    .optional()
    .catch(undefined),
  state: z.enum(["held", "let-go"]).default("held").catch("held"),
  page: z.coerce.number().int().positive().max(1_000_000).default(1).catch(1),
});

/** The held rows, or those let go, as the address narrows them; what it says wrongly is left aside. @throws Refused */
export async function heldRows(viewer: Viewer, address: Address): Promise<HeldRows> {
  const reach = recordsReach(viewer);
  const { page, import: importId, ...rest } = asked.parse(address);
  const filters: HeldAsked = { ...rest, importId };
  const found = await heldNow(reach, {
    ...filters,
    limit: rowsShown,
    offset: (page - 1) * rowsShown,
  });
  const pages = Math.max(1, Math.ceil(found.count / rowsShown));
  const to = (other: number) => (other < 1 || other > pages ? null : addressOf(filters, other));
  return {
    state: rest.state,
    groups: heldGroups(found.byReason, rest.state),
    rows: found.rows.map(heldLine),
    rowsFound: count(found.count),
    narrowed: narrowedWords(filters),
    page,
    pages,
    previous: to(page - 1),
    next: to(page + 1),
  };
}

export type Settled =
  | { readonly done: string }
  | { readonly wrong: Readonly<Record<string, string>> };

const reasonGiven = z
  .string()
  .trim()
  .min(3, "Say why, in a few words.")
  .max(300, "Say it in no more than 300 characters.");

/** Lets the chosen rows go, under the viewer's name and with the reason. @throws Refused */
export async function letRowsGo(
  reach: RecordsReach,
  ids: readonly string[],
  reason: unknown,
): Promise<Settled> {
  const read = reasonGiven.safeParse(reason);
  if (!read.success) return { wrong: { reason: read.error.issues[0]?.message ?? "Say why." } };
  const chosen = ids.filter(isId);
  if (chosen.length === 0) return { wrong: { form: "Choose at least one row." } };
  const settled = await letGo(reach, chosen, read.data);
  return { done: `${rows(settled)} let go. They can be taken back.` };
}

/** Takes back rows that were let go. @throws Refused */
export async function takeRowsBack(reach: RecordsReach, ids: readonly string[]): Promise<Settled> {
  const chosen = ids.filter(isId);
  if (chosen.length === 0) return { wrong: { form: "Choose at least one row." } };
  return { done: `${rows(await takeBackLetGo(reach, chosen))} taken back.` };
}

function isId(text: string): boolean {
  return /^\d{1,18}$/.test(text);
}

function rows(units: number): string {
  return `${count(units)} ${units === 1 ? "row" : "rows"}`;
}

function narrowedWords({ table, column, importId }: HeldAsked): string {
  return [
    table ? `table ${table}` : "",
    column === undefined ? "" : column === "" ? "the row as a whole" : `column ${column}`,
    importId ? `import ${importId}` : "",
  ]
    .filter(Boolean)
    .join(", ");
}

function addressOf({ importId, ...filters }: HeldAsked, page: number): string {
  const named = Object.entries({ ...filters, import: importId, page })
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => [name, String(value)]);
  return `/records/held?${new URLSearchParams(named)}`;
}
