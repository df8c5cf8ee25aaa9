import { z } from "zod";
import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { tableNames } from "@/lib/records/tables";
import { letGo, takeBackLetGo } from "@/lib/store/import/let-go";
import { benchRows } from "@/lib/store/mend/bench-rows";
import type { HeldAsked } from "@/lib/store/mend/held-asked";
import { heldGroupsNow } from "@/lib/store/mend/held-groups";
import { type BenchGroup, benchGroups, foundWords } from "@/lib/views/bench-groups";
import { type HeldLine, heldLine } from "@/lib/views/held-lines";
import { count } from "@/lib/views/quantity";
import type { Address } from "./asked-period";
import { type MendForm, mendForm } from "./mend-form";

type Shown = "held" | "let-go" | "mended" | "any";

export type HeldRows = {
  readonly state: Shown;
  readonly groups: readonly BenchGroup[];
  readonly groupsFound: string;
  readonly rows: readonly HeldLine[];
  readonly rowsFound: string;
  /** What narrows the list, in words; empty where nothing does. */
  readonly narrowed: string;
  /** How the rows shown can be mended alike; null where they are not of one table and held. */
  readonly mend: MendForm | null;
  /** Only the rows that are chosen are to be mended. */
  readonly some: boolean;
  /** This page with all rows to be mended, or only chosen ones. */
  readonly other: string;
  readonly page: number;
  readonly pages: number;
  /** Addresses of the neighbouring pages. */
  readonly previous: string | null;
  readonly next: string | null;
  readonly previousGroups: string | null;
  readonly nextGroups: string | null;
};

/** Rows on one page, and groups of them. */
const rowsShown = 50;
const groupsShown = 40;

const text = z.string().max(200).optional().catch(undefined);
const whole = z.coerce.number().int().positive();
const id = whole
  .max(2 ** 31 - 1)
  .optional()
  .catch(undefined);
const asked = z.object({
  table: z.enum(tableNames).optional().catch(undefined),
  kind: text,
  column: text,
  found: text,
  import: id,
  mend: id,
  some: z.literal("yes").optional().catch(undefined),
  state: z.enum(["held", "let-go", "mended", "any"]).default("held").catch("held"),
  page: whole.max(1_000_000).default(1).catch(1),
  groups: whole.max(1_000_000).default(1).catch(1),
});

/** The rows of the bench as the address narrows them; what it says wrongly is left aside. @throws Refused */
export async function heldRows(viewer: Viewer, address: Address): Promise<HeldRows> {
  const reach = recordsReach(viewer);
  const { page, groups: groupPage, some, ...read } = asked.parse(address);
  const { import: importId, state, ...rest } = read;
  const filters: HeldAsked = { ...rest, importId, state: state === "any" ? undefined : state };
  const [found, grouped] = await Promise.all([
    benchRows(reach, { ...filters, limit: rowsShown, offset: (page - 1) * rowsShown }),
    heldGroupsNow(reach, {
      state: filters.state,
      importId,
      limit: groupsShown,
      offset: (groupPage - 1) * groupsShown,
    }),
  ]);
  const pages = Math.max(1, Math.ceil(found.count / rowsShown));
  const to = (change: Record<string, number | string>) =>
    addressOf({ ...read, some, page, groups: groupPage, ...change });
  const paged = (other: number, all: number, name: "page" | "groups") =>
    other < 1 || other > all ? null : to({ [name]: other });
  const groupPages = Math.ceil(grouped.count / groupsShown);
  return {
    state,
    groups: state === "held" ? benchGroups(grouped.groups, importId) : [],
    groupsFound:
      grouped.count > groupsShown
        ? `${count(grouped.count)} reasons in all; page ${groupPage} of ${groupPages}.`
        : "",
    rows: found.rows.map(heldLine),
    rowsFound: count(found.count),
    narrowed: narrowedWords(filters),
    mend:
      rest.table && state === "held" && found.count > 0
        ? await mendForm(reach, { ...filters, table: rest.table }, found)
        : null,
    some: some === "yes",
    other: to({ some: some ? "" : "yes", page: 1 }),
    page,
    pages,
    previous: paged(page - 1, pages, "page"),
    next: paged(page + 1, pages, "page"),
    previousGroups: paged(groupPage - 1, groupPages, "groups"),
    nextGroups: paged(groupPage + 1, groupPages, "groups"),
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

function narrowedWords({ table, kind, column, found, importId, mend }: HeldAsked): string {
  return [
    table ? `table ${table}` : "",
    column === undefined ? "" : column === "" ? "the row as a whole" : `column ${column}`,
    found === undefined ? "" : foundWords(kind ?? "check", found),
    importId ? `import ${importId}` : "",
    mend ? `changed by act ${mend}` : "",
  ]
    .filter(Boolean)
    .join(", ");
}

function addressOf(filters: Readonly<Record<string, string | number | undefined>>): string {
  const named = Object.entries(filters)
    .filter(
      ([name, value]) =>
        value !== undefined && (value !== "" || name === "found" || name === "column"),
    )
    .map(([name, value]) => [name, String(value)]);
  return `/records/held?${new URLSearchParams(named)}`;
}
