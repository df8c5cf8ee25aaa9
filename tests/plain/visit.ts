import type { Values } from "@/lib/records/column";
import type { TableName } from "@/lib/records/tables";
import { grouped } from "./grouped";
import { localDay } from "./local-day";
import type { HeldRow, Records } from "./records";

/** A visit with everything that hangs on it. */
export type Visit = {
  readonly session: Values;
  readonly practice: string;
  /** The local day on which it started; what hangs on it belongs to that day too. */
  readonly day: string;
  readonly canals: readonly Canal[];
  /** Deliveries of the whole tooth and of every canal. */
  readonly deliveries: readonly Values[];
  readonly uses: readonly Values[];
  /** What became of separations later. */
  readonly followups: readonly Values[];
  readonly steps: readonly Values[];
  readonly exceptions: readonly Values[];
  readonly held: readonly HeldRow[];
};

/** A canal at one visit with what belongs to it alone. */
export type Canal = {
  readonly row: Values;
  readonly deliveries: readonly Values[];
  readonly uses: readonly Values[];
  /** Held rows that name this canal. */
  readonly held: readonly HeldRow[];
};

/** Every accepted visit. */
export function visitsOf(records: Records): Visit[] {
  const tables = [
    "canals",
    "irrigation",
    "instruments",
    "followups",
    "steps",
    "exceptions",
    "held",
  ] as const;
  const bySession = new Map(
    tables.map((table) => [table, grouped(rowsOf(records, table), (row) => row.session_id)]),
  );
  return records.sessions.map((session) => {
    const practice = String(session.practice);
    const zone = records.zones[practice];
    if (!zone) throw new Error(`no time zone is known for practice ${practice}`);
    // A row without a practice belongs to the visit of that number, whichever practice's it is.
    const own = <Row extends { practice?: unknown }>(table: (typeof tables)[number]) =>
      (bySession.get(table)?.get(String(session.session_id)) ?? []).filter(
        (row) => row.practice === undefined || row.practice === practice,
      ) as unknown as Row[];
    const deliveries = own<Values>("irrigation").toSorted(bySeq);
    const uses = own<Values>("instruments").toSorted(bySeq);
    const held = own<HeldRow>("held");
    const of = (name: unknown) => (row: { canal?: unknown }) => row.canal === name;
    const canals = own<Values>("canals").map((row) => ({
      row,
      deliveries: deliveries.filter(of(row.canal)),
      uses: uses.filter(of(row.canal)),
      held: held.filter(of(row.canal)),
    }));
    const [followups, steps, exceptions] = [
      own<Values>("followups"),
      own<Values>("steps"),
      own<Values>("exceptions"),
    ];
    const day = localDay(String(session.started_at), zone);
    const rows = { deliveries, uses, followups, steps, exceptions, held };
    return { session, practice, day, canals, ...rows };
  });
}

/** Is any of the held rows of that table. */
export function anyHeld(held: readonly HeldRow[], table: TableName): boolean {
  return held.some((row) => row.table === table);
}

function rowsOf(records: Records, table: TableName | "held"): (Values | HeldRow)[] {
  return records[table];
}

function bySeq(a: Values, b: Values): number {
  return Number(a.seq) - Number(b.seq);
}
