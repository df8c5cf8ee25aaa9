import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { stringify } from "csv-stringify/sync";
import { holderReach } from "@/lib/access/reach";
import { importRecords } from "@/lib/reports/import-records";
import { disconnect, pool } from "@/lib/store/database";
import { migrate } from "@/lib/store/home/migrate";
import { key } from "./acts";
import type { Ground, Outcome } from "./ground";
import { referenceOf, soundness } from "./sound";

/** A visit as a file says its time, and the moment and local day that it is; null where the time is none or two. */
type Night = readonly [zone: string, written: string, moment: string | null, day?: string];

/**
 * Visits in the nights when clocks change (IANA time zone database, Europe/London and America/New_York in 2025): as local time before
 * and after the change, in the hour that does not exist or comes twice, with an offset in both of the two, and about midnight.
 */
const nights: readonly Night[] = [
  ["Europe/London", "2025-03-29T23:30", "2025-03-29T23:30:00Z", "2025-03-29"],
  ["Europe/London", "2025-03-30T00:30", "2025-03-30T00:30:00Z", "2025-03-30"],
  ["Europe/London", "2025-03-30T01:30", null],
  ["Europe/London", "2025-03-30T02:30", "2025-03-30T01:30:00Z", "2025-03-30"],
  ["Europe/London", "2025-03-30T23:30", "2025-03-30T22:30:00Z", "2025-03-30"],
  ["Europe/London", "2025-10-25T23:30", "2025-10-25T22:30:00Z", "2025-10-25"],
  ["Europe/London", "2025-10-26T00:30", "2025-10-25T23:30:00Z", "2025-10-26"],
  ["Europe/London", "2025-10-26T01:30", null],
  ["Europe/London", "2025-10-26T01:30+01:00", "2025-10-26T00:30:00Z", "2025-10-26"],
  ["Europe/London", "2025-10-26T01:30+00:00", "2025-10-26T01:30:00Z", "2025-10-26"],
  ["Europe/London", "2025-10-26T23:30", "2025-10-26T23:30:00Z", "2025-10-26"],
  ["America/New_York", "2025-03-09T01:30", "2025-03-09T06:30:00Z", "2025-03-09"],
  ["America/New_York", "2025-03-09T02:30", null],
  ["America/New_York", "2025-03-09T03:30", "2025-03-09T07:30:00Z", "2025-03-09"],
  ["America/New_York", "2025-03-09T23:30", "2025-03-10T03:30:00Z", "2025-03-09"],
  ["America/New_York", "2025-11-02T00:30", "2025-11-02T04:30:00Z", "2025-11-02"],
  ["America/New_York", "2025-11-02T01:30", null],
  ["America/New_York", "2025-11-02T01:30-04:00", "2025-11-02T05:30:00Z", "2025-11-02"],
  ["America/New_York", "2025-11-02T01:30-05:00", "2025-11-02T06:30:00Z", "2025-11-02"],
  ["America/New_York", "2025-11-02T23:30", "2025-11-03T04:30:00Z", "2025-11-02"],
];

/** Brings them in and holds moment and local day of each against what they are. */
export async function changingNights(on: Ground): Promise<Outcome> {
  const database = await on.server.database();
  await migrate(database.url);
  await disconnect();
  process.env.DATABASE_URL = database.url;
  for (const zone of new Set(nights.map(([zone]) => zone))) {
    const path = join(on.server.folder, "sessions.csv");
    await writeFile(path, stringify(nights.flatMap(visitIn(zone)), { header: true }));
    const sources = [{ path, name: `${zone}/sessions.csv` }];
    await importRecords(holderReach().records, sources, { zone, key, heldListed: 0 });
  }
  const { rows } = await pool().query<{ id: string; moment: string; day: string }>(
    `select session_id as id, to_char(started_at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') as moment, local_day::text as day
     from sessions union all select session_id, 'held', null from held`,
  );
  const found = new Map(rows.map((row) => [row.id, row]));
  const troubles = nights.flatMap(([zone, written, moment, day], place) => {
    const visit = found.get(`N-${place}`);
    const right = visit?.moment === (moment ?? "held") && (visit.day ?? undefined) === day;
    return right ? [] : [`${written} in ${zone} became ${JSON.stringify(visit)}`];
  });
  const reference = await referenceOf(database.url, "as brought in");
  troubles.push(...(await soundness(database.url, [reference])).troubles);
  await disconnect();
  await database.drop();
  const came = nights.map(([, , moment]) =>
    moment === null ? "held as no time or two" : "on its local day",
  );
  return { what: "visits in the nights when clocks change", points: nights.length, came, troubles };
}

function visitIn(wanted: string) {
  return ([zone, started_at]: Night, place: number) =>
    zone === wanted
      ? [
          {
            ...{ session_id: `N-${place}`, practice: zone, chair: "1", clinician: "C" },
            ...{ patient: `p ${place}`, started_at, tooth: "26", tooth_notation: "fdi" },
            ...{ treatment: "primary", outcome: "completed" },
          },
        ]
      : [];
}
