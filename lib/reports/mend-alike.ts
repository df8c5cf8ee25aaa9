import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { mendRows } from "@/lib/store/mend/mend-rows";
import { noteMapping } from "@/lib/store/mend/mends";
import { type MendPreview, mendPreview } from "@/lib/views/mend-preview";
import { count } from "@/lib/views/quantity";
import { type AskedMend, askedMend } from "./asked-mend";
import type { Address } from "./asked-period";
import { addToMapping, mappingsToJoin } from "./mend-joins-mapping";
import { remadeBy } from "./remade";

export type MendPreviewPage = {
  readonly preview: MendPreview;
  /** Fields that the form sends on. */
  readonly hidden: Readonly<Record<string, string>>;
  readonly rows: readonly string[];
  /** Mappings that the rule can join, by name. */
  readonly mappings: readonly string[];
  /** Where the rows are. */
  readonly back: string;
};

/** How many rows a preview shows before and after. */
const examples = 10;

/** What a mend would do, exactly: it is done and taken back. @throws Refused */
export async function previewMend(
  viewer: Viewer,
  address: Address,
): Promise<
  MendPreviewPage | { readonly wrong: Readonly<Record<string, string>>; readonly back: string }
> {
  const reach = recordsReach(viewer);
  const read = askedMend(address);
  const back = backTo(address);
  if ("wrong" in read) return { wrong: read.wrong, back };
  const result = await run(reach, read.mend, true);
  const hidden = Object.entries(address).flatMap(([name, value]) =>
    typeof value === "string" && name !== "row" ? [[name, value]] : [],
  );
  return {
    preview: mendPreview(read.mend.asked.table, read.mend.kept, result),
    hidden: Object.fromEntries(hidden),
    rows: [address.row ?? []].flat(),
    mappings: (await mappingsToJoin(reach, read.mend)).map(({ name }) => name),
    back,
  };
}

export type Mended =
  | { readonly done: string; readonly mendId: number }
  | { readonly wrong: Readonly<Record<string, string>> };

/** Does what a form names, under the viewer's name; with `join` the rule joins that mapping too. @throws Refused */
export async function mendAlike(
  reach: RecordsReach,
  form: Address,
  join: string | undefined,
): Promise<Mended> {
  const read = askedMend(form);
  if ("wrong" in read) return read;
  const mapping = join
    ? (await mappingsToJoin(reach, read.mend)).find(({ name }) => name === join)
    : undefined;
  const result = await run(reach, read.mend, false);
  if (result.mendId === 0)
    return { wrong: { form: "No row was left to mend; they were settled meanwhile." } };
  if (mapping)
    await noteMapping(reach, result.mendId, await addToMapping(reach, mapping, read.mend));
  return { done: `${count(result.rows)} rows mended.`, mendId: result.mendId };
}

async function run(reach: RecordsReach, mend: AskedMend, tryOnly: boolean) {
  const { remake, zone } = await remadeBy(reach, mend.asked, mend.changes);
  return mendRows(reach, mend.asked, remake, {
    table: mend.asked.table,
    changes: mend.kept,
    reason: mend.reason,
    zone,
    tryOnly,
    examples,
  });
}

function backTo(address: Address): string {
  const named = ["table", "kind", "column", "found", "import", "some"].flatMap((name) => {
    const value = address[name];
    return typeof value === "string" ? [[name, value]] : [];
  });
  return `/records/held?${new URLSearchParams(named)}`;
}
