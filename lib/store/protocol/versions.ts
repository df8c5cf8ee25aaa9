import type pg from "pg";
import type { FiguresReach, OwnReach, ProtocolReach } from "@/lib/access/reach";
import type { Criterion } from "@/lib/protocol/criterion";
import type { Protocol, Version } from "@/lib/protocol/protocol";
import { pool } from "../database";

/**
 * The versions of the practices within a reach, in the order in which they were written; those withdrawn before they
 * began are left out. A clinician's reach has those of every practice, as their work may lie in several.
 */
export async function protocolWithin(
  reach: FiguresReach | OwnReach | ProtocolReach,
): Promise<Protocol> {
  return storedVersions(pool(), "practices" in reach ? reach.practices : null);
}

/** The same of practices (null is all), as a transaction sees them. */
export async function storedVersions(
  client: pg.ClientBase | pg.Pool,
  practices: readonly string[] | null,
): Promise<Protocol> {
  const { rows } = await client.query<Omit<Version, "criterion"> & { definition: Criterion }>(
    `select id, practice, definition, in_force as "inForce", "from"::text, written_on::text as "writtenOn", reason, by, at
     from criterion_versions where withdrawn_at is null and ($1::text[] is null or practice = any($1)) order by id`,
    [practices],
  );
  return {
    versions: rows.map(({ definition, ...version }) => ({ ...version, criterion: definition })),
  };
}
