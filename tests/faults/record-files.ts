import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { stringify } from "csv-stringify/sync";
import type { Source } from "@/lib/reports/import-records";

/** Words that no list knows, so that their rows are held until they are mended. */
export const slips = { irrigant: "bleech", preparation: "rotory" };

/**
 * Writes record files of so many visits of practice ELM, two canals each, and answers them as an import takes them. Every
 * eighth delivery and every tenth canal has a slip where that is asked.
 */
export async function recordFiles(
  folder: string,
  name: string,
  visits: number,
  slipping = false,
): Promise<Source[]> {
  const rows: Record<string, Record<string, string>[]> = {
    ...{ sessions: [], canals: [], irrigation: [], instruments: [] },
  };
  for (let place = 0; place < visits; place += 1) {
    const session_id = `${name}-${place}`;
    const day = String((place % 28) + 1).padStart(2, "0");
    rows.sessions?.push({
      ...{ session_id, practice: "ELM", chair: `ELM-${place % 3}`, clinician: `E0${place % 4}` },
      ...{ patient: `${name} ${place % 97}`, started_at: `2026-0${7 + (place % 3)}-${day}T09:10` },
      ...{ tooth: "26", tooth_notation: "fdi", treatment: "primary", outcome: "completed" },
    });
    for (const [number, canal] of ["MB1", "P"].entries()) {
      const one = place * 2 + number;
      const preparation = slipping && one % 10 === 3 ? slips.preparation : "rotary";
      rows.canals?.push({ session_id, canal, preparation, timer_reset: "yes" });
      for (const seq of ["1", "2"])
        rows.irrigation?.push({
          ...{ session_id, canal, seq, delivery: "syringe" },
          irrigant: slipping && one % 8 === 5 ? slips.irrigant : "naocl",
          volume_ml: String(2 + (one % 7) / 2),
          duration_s: String(40 + (one % 50)),
        });
      const separated = one % 41 === 0 ? "yes" : "no";
      rows.instruments?.push({
        ...{
          session_id,
          canal,
          seq: "1",
          kind: "rotary",
          instrument_id: `i-${one % 60}`,
          separated,
        },
      });
    }
  }
  await mkdir(join(folder, name), { recursive: true });
  return Promise.all(
    Object.entries(rows).map(async ([table, some]) => {
      const path = join(folder, name, `${table}.csv`);
      await writeFile(path, stringify(some, { header: true }));
      return { path, name: `${name}/${table}.csv` };
    }),
  );
}
