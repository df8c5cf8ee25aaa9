import { stringify } from "csv-stringify/sync";
import type { Measured } from "@/lib/measures/measured";
import type { Period } from "@/lib/records/period";
import { csvField } from "./csv-field";
import type { UnitBehind } from "./unit-lines";

/** The columns of the file, in order; clinician is empty where the viewer's reach does not tell clinicians apart. */
export const unitColumns = [
  "measure",
  "period",
  "day",
  "practice",
  "chair",
  "clinician",
  "session_id",
  "tooth",
  "canal",
  "seq",
  "outcome",
  "reason",
  "value",
] as const;

/** Units as CSV by RFC 4180: UTF-8 with a byte order mark, CRLF. No free text and no patient is among them. */
export function unitsCsv(
  { measure }: Measured,
  period: Period,
  units: readonly UnitBehind[],
): string {
  const rows = units.map((unit) =>
    [
      measure,
      period.name,
      unit.day,
      unit.practice,
      unit.chair,
      unit.clinician,
      unit.sessionId,
      unit.tooth,
      unit.canal,
      unit.seq,
      unit.state,
      unit.reason,
      unit.value,
    ].map(csvField),
  );
  return stringify(rows, {
    columns: [...unitColumns],
    header: true,
    bom: true,
    record_delimiter: "\r\n",
  });
}
