import { moment } from "./day";
import { changeWords } from "./mend-words";
import { count } from "./quantity";

/** An act on the bench as it is kept. */
export type MendLineInput = {
  readonly id: number;
  readonly table: string;
  readonly changes: unknown;
  readonly rows: number;
  readonly accepted: number;
  readonly heldNow: number;
  readonly reason: string | null;
  readonly mapping: string | null;
  readonly by: string;
  readonly at: Date;
  readonly undoneBy: string | null;
  readonly undoneAt: Date | null;
};

export type MendLine = {
  readonly id: number;
  readonly what: string;
  readonly rows: string;
  /** What became of the rows then, and how many are held now. */
  readonly became: string;
  readonly who: string;
  readonly reason: string;
  readonly mapping: string;
  /** Who took it back and when; null while it stands. */
  readonly takenBack: string | null;
  readonly address: string;
};

/** An act on the bench in words; times in the zone of the reader's practice. */
export function mendLine(of: MendLineInput, zone: string): MendLine {
  return {
    id: of.id,
    what: `${of.table}, ${changeWords(of.changes)}`,
    rows: count(of.rows),
    became: `${count(of.accepted)} of ${count(of.rows)} accepted at once; ${count(of.heldNow)} held now`,
    who: `${moment(new Date(of.at), zone)}, by ${of.by}`,
    reason: of.reason ?? "",
    mapping: of.mapping ? `Joined the mapping ${of.mapping}` : "",
    takenBack:
      of.undoneAt === null
        ? null
        : `Taken back ${moment(new Date(of.undoneAt), zone)} by ${of.undoneBy}`,
    address: `/records/held?state=any&mend=${of.id}`,
  };
}
