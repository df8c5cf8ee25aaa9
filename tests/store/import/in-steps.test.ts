import fc from "fast-check";
import { expect, test } from "vitest";
import { tableNames } from "@/lib/records/tables";
import { pool } from "@/lib/store/database";
import { noRecords } from "../../plain/records";
import { bringIn, canal, delivery, snapshot, use, visit } from "../bring-in";
import { eachOnEmptyDatabase } from "../empty-database";
import { messyRows, staged } from "../mend/messy-rows";
import { emptyFor } from "../records-rows";

// Properties: no expected value but what the same import comes to when all is published at its end.

eachOnEmptyDatabase();

test("tables that are published while others are read come to what they come to at the end", async () => {
  const orders = fc.shuffledSubarray([...tableNames], { minLength: tableNames.length });
  await fc.assert(
    fc.asyncProperty(messyRows, orders, async (messy, order) => {
      const found: unknown[] = [];
      for (const told of [true, false]) {
        await emptyFor(noRecords({ OAK: "Europe/London" }));
        const { counts } = await bringIn(staged(messy), order, { told });
        const files = Object.values(counts).map((file) => ({ ...file, id: undefined }));
        found.push([await snapshot(), files]);
      }
      expect(found[0]).toEqual(found[1]);
    }),
    { numRuns: 25 },
  );
}, 300_000);

test("what is published early is not there where a later row is refused by the database", async () => {
  const whole = { sessions: [visit], canals: [canal], irrigation: [delivery] };
  const wrong = { ...use, uses: "no number" };
  await expect(
    bringIn({ ...whole, instruments: [wrong] }, tableNames, { told: true }),
  ).rejects.toThrow("no number");
  const { rows } = await pool().query(
    "select (select count(*)::int from sessions) as visits, (select count(*)::int from practices) as practices, state from imports",
  );
  expect(rows).toEqual([{ visits: 0, practices: 0, state: "failed" }]);
});
