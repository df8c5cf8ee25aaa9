import type { RecordsReach } from "@/lib/access/reach";
import type { Prisma } from "@/prisma/client/client";
import { pool, prisma } from "./database";

/** A kept mapping; the definition is one of lib/intake/mapping, read by whoever asks. */
export type KeptMapping = {
  readonly name: string;
  readonly version: number;
  readonly definition: unknown;
  readonly by: string;
  readonly at: Date;
  /** Files are no longer recognised by it. */
  readonly retired: boolean;
};

/**
 * Keeps a definition under its name as a new version; one that equals the newest is that version.
 *
 * Mappings hold no records and are shared by the whole home.
 */
export async function keepMapping(
  reach: RecordsReach,
  name: string,
  definition: unknown,
): Promise<{ name: string; version: number }> {
  return prisma().$transaction(async (all) => {
    // Two who keep one name at once get two versions, one after the other.
    await all.$executeRaw`select pg_advisory_xact_lock(hashtext('canal-audit mappings'))`;
    const newest = await all.mapping.findFirst({ where: { name }, orderBy: { version: "desc" } });
    const same = await all.$queryRaw<{ same: boolean }[]>`
      select ${JSON.stringify(newest?.definition ?? null)}::jsonb = ${JSON.stringify(definition)}::jsonb as same`;
    if (newest && same[0]?.same) {
      if (newest.retired)
        await all.mapping.update({ where: { id: newest.id }, data: { retired: false } });
      return { name, version: newest.version };
    }
    const version = (newest?.version ?? 0) + 1;
    await all.mapping.create({
      data: { name, version, definition: definition as Prisma.InputJsonValue, by: reach.by },
    });
    return { name, version };
  });
}

/** The newest version of every mapping, by name. */
export async function keptMappings(_reach: RecordsReach): Promise<KeptMapping[]> {
  return prisma().mapping.findMany({
    distinct: ["name"],
    orderBy: [{ name: "asc" }, { version: "desc" }],
  });
}

/** All versions of one mapping, newest first. */
export async function versionsOfMapping(
  _reach: RecordsReach,
  name: string,
): Promise<KeptMapping[]> {
  return prisma().mapping.findMany({ where: { name }, orderBy: { version: "desc" } });
}

/** One mapping by name, the newest where no version is named; null where there is none. */
export async function mappingNamed(
  _reach: RecordsReach,
  name: string,
  version?: number,
): Promise<KeptMapping | null> {
  return prisma().mapping.findFirst({ where: { name, version }, orderBy: { version: "desc" } });
}

/** From now on files are no longer recognised by the mapping, or are again. */
export async function retireMapping(
  _reach: RecordsReach,
  name: string,
  retired: boolean,
): Promise<void> {
  await prisma().mapping.updateMany({ where: { name }, data: { retired } });
}

/** How many files each mapping has read, by name. */
export async function filesByMapping(_reach: RecordsReach): Promise<Map<string, number>> {
  const { rows } = await pool().query<{ mapping: string; files: number }>(
    `select mapping, count(distinct (import_id, name))::int as files from import_files
     where mapping is not null group by mapping`,
  );
  return new Map(rows.map((row) => [row.mapping, row.files]));
}
