import type pg from "pg";
import type { FiguresReach } from "@/lib/access/reach";
import type { Criterion } from "@/lib/protocol/criterion";
import { mayBegin, spansIn } from "@/lib/protocol/may-begin";
import type { Protocol } from "@/lib/protocol/protocol";
import { storedVersions } from "./versions";
import { writeProtocol } from "./write-protocol";

type When = {
  readonly practices: readonly string[];
  /** First day, YYYY-MM-DD. */
  readonly from: string;
  /** The local day; of several practices in different zones the latest. */
  readonly today: string;
  readonly reason: string;
};

/** The practices in which it cannot be done; empty where it was done in all of them, else it was done in none. */
export type Prevented = readonly string[];

/**
 * Puts a version of a criterion in force in the practices, a row each. It is prevented where it would alter a past
 * figure (lib/protocol/may-begin). @throws Refused
 */
export async function putInForce(
  reach: FiguresReach,
  { criterion, ...when }: When & { readonly criterion: Criterion },
): Promise<Prevented> {
  const { id } = criterion;
  return writeProtocol(reach, when.practices, async (client) => {
    const protocol = await storedVersions(client, when.practices);
    const prevented = when.practices.filter(
      (practice) => !mayBegin(protocol, { id, practice, from: when.from, today: when.today }),
    );
    if (prevented.length > 0) return { undone: prevented };
    for (const practice of when.practices)
      await insert(client, reach, { ...when, practice, criterion, inForce: true });
    return [];
  });
}

/**
 * Takes a criterion out of force in the practices from a day on, which may not be before today. It is prevented where
 * it is not in force on that day. @throws Refused
 */
export async function takeOutOfForce(
  reach: FiguresReach,
  { id, ...when }: When & { readonly id: string },
): Promise<Prevented> {
  return writeProtocol(reach, when.practices, async (client) => {
    const protocol = await storedVersions(client, when.practices);
    const standing = when.practices.map((practice) => ({
      practice,
      criterion: inForceOn(protocol, id, practice, when.from),
    }));
    const prevented = standing.filter(
      ({ criterion }) => criterion === undefined || when.from < when.today,
    );
    if (prevented.length > 0) return { undone: prevented.map(({ practice }) => practice) };
    for (const { practice, criterion } of standing)
      if (criterion) await insert(client, reach, { ...when, practice, criterion, inForce: false });
    return [];
  });
}

/**
 * Withdraws a version of a practice that was put in force to begin today or later; it is kept as withdrawn, and no day
 * before today changes. False where there is none. @throws Refused
 */
export async function withdrawVersion(
  reach: FiguresReach,
  {
    practice,
    id,
    today,
  }: { readonly practice: string; readonly id: number; readonly today: string },
): Promise<boolean> {
  return writeProtocol(reach, [practice], async (client) => {
    const { rowCount } = await client.query(
      `update criterion_versions set withdrawn_by = $1, withdrawn_at = now()
       where id = $2 and practice = $3 and "from" >= $4::date and withdrawn_at is null`,
      [reach.by, id, practice, today],
    );
    return (rowCount ?? 0) > 0 ? true : { undone: false };
  });
}

function inForceOn(protocol: Protocol, id: string, practice: string, day: string) {
  return spansIn(protocol, { id, practice }).find(
    ({ from, until }) => (from === null || from <= day) && (until === null || until > day),
  )?.criterion;
}

async function insert(
  client: pg.ClientBase,
  reach: FiguresReach,
  of: When & { practice: string; criterion: Criterion; inForce: boolean },
): Promise<void> {
  await client.query(
    `insert into criterion_versions (practice, criterion, definition, in_force, "from", written_on, reason, by)
     values ($1, $2, $3, $4, $5, $6, $7, $8)`,
    [
      ...[of.practice, of.criterion.id, JSON.stringify(of.criterion), of.inForce],
      ...[of.from, of.today, of.reason, reach.by],
    ],
  );
}
