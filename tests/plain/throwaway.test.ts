import * as fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import * as reach from "@/lib/access/reach";
import { measures } from "@/lib/measures/measures";
import { criteria, criterionMeasure } from "@/lib/protocol/criteria";
import { period, quarter } from "@/lib/records/period";
import { tableNames } from "@/lib/records/tables";
import { medianIntervalRanks } from "@/lib/statistics/median-interval-ranks";
import { disconnect, pool } from "@/lib/store/database";
import { tallies } from "@/lib/store/figures/tallies";
import { freshDatabase } from "../fresh-database";
import { bringIn } from "../store/bring-in";
import { arbitraryRecords } from "./arbitrary";
import { plainTallies } from "./tally";

let database: any;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});
const order = (list: readonly any[]) =>
  Object.fromEntries(
    list.map((t) => [
      [
        t.measure,
        t.period.name,
        t.subject.kind,
        t.subject.key ?? "",
        t.subject.kind === "clinician" ? "" : (t.subject.practice ?? ""),
        t.subject.kind === "clinician" ? "" : (t.subject.code ?? ""),
      ].join("|"),
      JSON.parse(JSON.stringify(t)),
    ]),
  );
test("equal", async () => {
  let compared = 0;
  await fc.assert(
    fc.asyncProperty(arbitraryRecords, async (records) => {
      const { rows } = await pool().query(
        "select tablename from pg_tables where schemaname = 'public' and tablename not like '\\_%'",
      );
      await pool().query(
        `truncate ${rows.map((r: any) => `"${r.tablename}"`).join(", ")} restart identity cascade`,
      );
      for (const [code, zone] of Object.entries(records.zones))
        await pool().query("insert into practices (code, name, zone) values ($1, $1, $2)", [
          code,
          zone,
        ]);
      const some: any = {};
      for (const t of tableNames) {
        const held = records.held
          .filter((h) => h.table === t)
          .map((h, i) => ({
            line: 500 + i,
            key: "",
            ...h,
            canal: h.canal ?? (i % 2 ? "" : undefined),
            raw: { n: String(i), t, ...h },
            reasons: [],
          }));
        if (records[t].length + held.length) some[t] = [...records[t], ...held];
      }
      const { counts } = await bringIn(some);
      for (const t of tableNames)
        if (some[t]) expect([t, counts[t]!.accepted]).toEqual([t, records[t].length]);
      const periods = [quarter(2024, 1), quarter(2024, 2), quarter(2024, 3), period("2024")!];
      const by = ["group", "practice", "clinician", "chair"] as const;
      const ids = [...measures.map((m) => m.id), ...criteria.map(criterionMeasure)];
      const ranks = (n: number) => medianIntervalRanks(n, 0.5);
      const a = await tallies((reach as any).holderReach().figures ?? (reach as any).wholeReach(), {
        measures: ids,
        periods,
        by,
        ranks,
      });
      const b = periods.flatMap((p) =>
        plainTallies(records, { measures: ids, period: p, by, ranks }),
      );
      compared += b.length;
      expect(order(a)).toEqual(order(b));
    }),
    { numRuns: Number(process.env.RUNS ?? 200), endOnFailure: process.env.SHRINK !== "1" },
  );
  console.log({ compared });
}, 500000);
