import { z } from "zod";
import type { Change, Changes } from "@/lib/intake/mend/change";
import { columnTypeHoldsNumber } from "@/lib/records/column";
import { type TableName, tableNames } from "@/lib/records/tables";
import type { HeldAsked } from "@/lib/store/mend/held-asked";
import type { Address } from "./asked-period";
import { mendableAlike } from "./mendable";

/** What is to be done to many held rows alike. */
export type AskedMend = {
  readonly asked: HeldAsked & { readonly table: TableName };
  readonly column: string;
  /** As it is done, and as it is kept: with what the rows were chosen by. */
  readonly changes: Changes;
  readonly kept: Changes;
  readonly reason: string | undefined;
};

const text = z.string().max(200).optional();
const typed = z.object({
  table: z.enum(tableNames),
  kind: text,
  column: text,
  found: text,
  import: z.coerce
    .number()
    .int()
    .positive()
    .max(2 ** 31 - 1)
    .optional()
    .catch(undefined),
  row: z
    .union([z.string().transform((one) => [one]), z.array(z.string())])
    .transform((rows) => rows.filter((row) => /^\d{1,18}$/.test(row)))
    .optional(),
  some: z.literal("yes").optional().catch(undefined),
  change: z.string().max(80),
  how: z.enum(["to", "none", "point"]),
  to: z.string().trim().max(200).default(""),
  choice: z.string().trim().max(200).default(""),
  from: z.string().trim().max(200).default(""),
  reason: z.string().trim().max(300).optional(),
});

/** Reads a mend as an address or a form names it; else what is wrong, by field. */
export function askedMend(
  address: Address,
): { mend: AskedMend } | { wrong: Readonly<Record<string, string>> } {
  const given = Object.fromEntries(Object.entries(address).filter(([, value]) => value !== ""));
  const read = typed.safeParse({ ...given, ...(address.found === "" ? { found: "" } : {}) });
  if (!read.success) return { wrong: { form: "Choose what is to be done, and in which column." } };
  const { table, kind, column, found, import: importId, row, some, ...what } = read.data;
  if (some && !row?.length) return { wrong: { form: "Choose at least one row." } };
  const field = mendableAlike(table).find(({ name }) => name === what.change);
  if (!field) return { wrong: { change: "This column cannot be changed in many rows alike." } };
  const to = what.to || what.choice;
  if (what.how === "to" && to === "") return { wrong: { to: "Say what it is to be." } };
  if (what.how === "none" && field.required)
    return { wrong: { how: "A row without it would be held again; it is required." } };
  if (what.how === "point" && !columnTypeHoldsNumber(field.type))
    return { wrong: { how: "This column holds no numbers." } };
  // The rows are chosen by what was found; a cell that was shortened in the telling is still the one that is meant.
  const chosenBy = column === field.name && found !== undefined ? found : undefined;
  const from = what.from === "" ? undefined : what.from;
  const done = changeOf(what.how, to, from);
  return {
    mend: {
      asked: { table, kind, column, found, importId, ids: some ? row : undefined },
      column: field.name,
      changes: { [field.name]: done },
      kept: { [field.name]: changeOf(what.how, to, from ?? chosenBy) },
      reason: what.reason || undefined,
    },
  };
}

function changeOf(how: "to" | "none" | "point", to: string, from: string | undefined): Change {
  if (how === "point") return { point: true };
  const only = from === undefined ? {} : { from };
  return how === "none" ? { none: true, ...only } : { to, ...only };
}
