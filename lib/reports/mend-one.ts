import type { RecordsReach } from "@/lib/access/reach";
import type { Change, Changes } from "@/lib/intake/mend/change";
import { tables } from "@/lib/records/tables";
import { patientKey } from "@/lib/store/home/patient-key";
import type { BenchRow } from "@/lib/store/mend/bench-rows";
import type { MendResult } from "@/lib/store/mend/mend-result";
import { mendRows } from "@/lib/store/mend/mend-rows";
import { heldKinds } from "@/lib/views/held-kinds";
import { heldCells } from "./held-cells";
import { cellName, heldRowWithin } from "./held-row";
import type { Settled } from "./held-rows";
import { patientPseudonym } from "./patient-pseudonym";
import { remadeBy } from "./remade";

type Typed = Readonly<Record<string, string>>;

/**
 * Mends one row as it was typed: every cell that differs is changed, and so is one that is said to be right as it stands (`right-…`). A
 * patient's reference is hashed at once. A row that the checks would hold still is left as it was, with what is wrong beside each cell.
 *
 * @throws Refused
 */
export async function mendOne(reach: RecordsReach, id: string, typed: Typed): Promise<Settled> {
  const row = await heldRowWithin(reach, id);
  if (row?.state !== "held") return { wrong: { form: "This row is held no longer." } };
  const read = await changesOf(row, typed);
  if ("wrong" in read) return read;
  const { changes, reason } = read;
  const asked = { ids: [row.id], table: row.table };
  const { remake, zone } = await remadeBy(reach, asked, changes, true);
  const how = { table: row.table, changes, reason, zone, examples: 1 };
  const tried = await mendRows(reach, asked, remake, { ...how, tryOnly: true });
  const wrong = wrongIn(tried);
  if (wrong) return { wrong };
  const done = await mendRows(reach, asked, remake, how);
  if (done.rows === 0) return { wrong: { form: "This row is held no longer." } };
  return { done: doneWords(done) };
}

async function changesOf(
  row: BenchRow,
  typed: Typed,
): Promise<{ changes: Changes; reason: string | undefined } | { wrong: Typed }> {
  const cells = heldCells(row);
  const changes: Record<string, Change> = {};
  for (const { name, type } of tables[row.table].columns) {
    const text = typed[cellName(name)]?.trim().slice(0, 500);
    if (type === "patient" || text === undefined) continue;
    if (text !== (cells[name] ?? "")) changes[name] = text === "" ? { none: true } : { to: text };
    else if (typed[`right-${name}`] && text !== "") changes[name] = { to: text };
  }
  const reason = typed.reason?.trim().slice(0, 300) || undefined;
  const reference = typed[cellName("patient")]?.trim();
  const patient = tables[row.table].columns.find(({ type }) => type === "patient")?.name;
  if (!patient || !reference) {
    // A pseudonym is over practice and reference: that of another practice would be another person's.
    if (patient && cells[patient] && changes.practice)
      return {
        wrong: {
          [cellName(patient)]:
            "Write the patient's reference again: the pseudonym that is kept belongs to the practice.",
        },
      };
    return nothingOr(changes, reason);
  }
  const practice = typed[cellName("practice")]?.trim() ?? "";
  const hash = patientPseudonym(await patientKey(), practice, reference);
  const hidden = (text: string) =>
    reference.length >= 4 ? text.replaceAll(reference, hash) : text;
  for (const [name, change] of Object.entries(changes))
    if ("to" in change) changes[name] = { to: hidden(change.to) };
  return nothingOr({ ...changes, [patient]: { to: hash } }, reason && hidden(reason));
}

function nothingOr(changes: Changes, reason: string | undefined) {
  return Object.keys(changes).length === 0
    ? { wrong: { form: "Nothing is changed yet." } }
    : { changes, reason };
}

/** What the checks would hold the row for still, by field; undefined where they let it pass. */
function wrongIn({ examples }: MendResult): Typed | undefined {
  const [example] = examples;
  const byChecks = example?.outcome === "held" && example.kind === "check";
  if (!byChecks) return undefined;
  const wrong: Record<string, string> = {
    form: "The row would be held still; see beside the fields.",
  };
  for (const { column, remedy, sentence } of example.reasons) {
    if (column) wrong[cellName(column)] = remedy;
    else wrong.form = sentence;
  }
  return wrong;
}

function doneWords({ accepted, repeated, examples, joined }: MendResult): string {
  const others = joined > 0 ? ` ${joined} more that waited for it joined.` : "";
  if (accepted > 0) return `Accepted.${others} It can be taken back under “What was mended”.`;
  if (repeated > 0) return "An accepted row says the same: it counts as repeated.";
  const [example] = examples;
  const [reason] = example?.reasons ?? [];
  return `Changed, and held still: ${example ? (heldKinds[example.kind] ?? example.kind) : ""}${reason ? `. ${reason.sentence}` : "."}`;
}
