import type { RecordsReach } from "@/lib/access/reach";
import { pool } from "../database";
import { askedParameters, askedWhere, type HeldAsked } from "./held-asked";

/** The mappings by which the files of held rows were read, by name and version; files of the record format have none. */
export async function mappingsOfHeld(
  reach: RecordsReach,
  asked: HeldAsked,
): Promise<{ name: string; version: number | null }[]> {
  const { rows } = await pool().query<{ name: string; version: number | null }>(
    `select distinct f.mapping as name, f.version from held h join import_files f on f.id = h.file_id
     where f.mapping is not null and ${askedWhere} order by 1, 2`,
    askedParameters(reach.practices, asked),
  );
  return rows;
}
