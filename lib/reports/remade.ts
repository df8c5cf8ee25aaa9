import type { RecordsReach } from "@/lib/access/reach";
import { mappingSchema } from "@/lib/intake/mapping/mapping";
import type { Changes } from "@/lib/intake/mend/change";
import { mendedRow } from "@/lib/intake/mend/mended-row";
import type { Trouble } from "@/lib/intake/raw-row";
import type { Context, GoodRow, HeldRow } from "@/lib/intake/sheet";
import { patientKey } from "@/lib/store/home/patient-key";
import { mappingNamed } from "@/lib/store/mappings";
import type { BenchRow } from "@/lib/store/mend/bench-rows";
import type { HeldAsked } from "@/lib/store/mend/held-asked";
import { mappingsOfHeld } from "@/lib/store/mend/mappings-of-held";
import type { Remake } from "@/lib/store/mend/mending";
import { practicesWithin } from "@/lib/store/records/practices";
import { heldCells } from "./held-cells";
import { intakeContext } from "./import-records";

/**
 * How held rows are made anew: in the time zone of the mapping that read them, or of their practice, and of practices within the reach
 * alone.
 *
 * @param whole somebody had every cell of the row before them
 */
export async function remadeBy(
  reach: RecordsReach,
  asked: HeldAsked,
  changes: Changes,
  whole = false,
): Promise<{ readonly remake: Remake; readonly zone: string }> {
  const zone = (await practicesWithin(reach))[0]?.zone ?? "UTC";
  const context = await intakeContext(reach, { zone, key: await patientKey() });
  const zoneOf = await zonesOfMappings(reach, asked);
  const against = notYours(reach.practices);
  const remake: Remake = (row) => {
    const here: Context = contextOf(context, zoneOf.get(`${row.mapping}/${row.version}`));
    const before = heldCells(row);
    const made = mendedRow(
      {
        table: row.table,
        place: row,
        cells: before,
        reasons: row.reasons,
        byChecks: row.kind === "check",
      },
      changes,
      here,
      { whole, against },
    );
    return made && { before, cells: made.cells, row: withNotation(made.row, row, changes) };
  };
  return { remake, zone };
}

function contextOf(context: Context, zone: string | undefined): Context {
  return zone === undefined ? context : { ...context, zoneOf: () => zone };
}

async function zonesOfMappings(reach: RecordsReach, asked: HeldAsked) {
  const zones = new Map<string, string>();
  for (const { name, version } of await mappingsOfHeld(reach, asked)) {
    const kept = await mappingNamed(reach, name, version ?? undefined);
    const read = kept && mappingSchema.safeParse(kept.definition);
    if (read?.success && read.data.zone) zones.set(`${name}/${version}`, read.data.zone);
  }
  return zones;
}

function notYours(practices: readonly string[] | null) {
  return ({ practice }: Readonly<Record<string, string>>): Trouble[] =>
    practices === null || !practice || practices.includes(practice)
      ? []
      : [
          {
            column: "practice",
            found: practice,
            remedy: "you may change rows of your own practice only; ask the group's record keeper",
          },
        ];
}

/** A tooth that nobody changed keeps the notation in which it was written, though it is read as ISO 3950 here. */
function withNotation(made: GoodRow | HeldRow, { values }: BenchRow, changes: Changes) {
  const notation = values?.tooth_notation;
  if (made.verdict === "held" || typeof notation !== "string") return made;
  if ("tooth" in changes || "tooth_notation" in changes) return made;
  return { ...made, values: { ...made.values, tooth_notation: notation } };
}
