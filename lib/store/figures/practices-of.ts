import type { OwnReach } from "@/lib/access/reach";
import { pool } from "../database";
import { comparing } from "../wall/as-whom";

/** The practices in which work can be the clinician's: that of their code, or those that know the person by one. */
export function practicesOf({ clinicianKey }: OwnReach): Promise<string[]> {
  return comparing(() => found(clinicianKey));
}

async function found(clinicianKey: string): Promise<string[]> {
  const person = /^person:(.*)$/s.exec(clinicianKey)?.[1];
  const { rows } = await pool().query<{ practice: string }>(
    person === undefined
      ? "select code as practice from practices where starts_with($1, code || '/') order by 1"
      : "select distinct practice from people where person = $1 order by 1",
    [person ?? clinicianKey],
  );
  return rows.map(({ practice }) => practice);
}
