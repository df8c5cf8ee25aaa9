import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { mappingSchema } from "@/lib/intake/mapping/mapping";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import type { GoodRow, HeldRow } from "@/lib/intake/sheet";
import { context } from "../read-text";
import { withFile } from "../with-file";

// Expected values are worked by hand from the README's example: London is an hour ahead of UTC in July, UR6 is ISO 3950's 16,
// .1 mL/s is 6 mL/min.

const section = /## Files of other systems\n([\s\S]*?)\n## /.exec(
  readFileSync("README.md", "utf8"),
);
const [lines = "", json = ""] = [
  ...(section?.[1] ?? "").matchAll(/```(?:json)?\n([\s\S]*?)```/g),
].map(([, text]) => text);

test("the README's example reads its file as it says", async () => {
  const mapping = mappingSchema.parse(JSON.parse(json));
  const rinse = "NORTH-2;03.07.2026 07:40;;;water;120;0,1;rinse\n";
  const rows = await withFile(`${lines}${rinse}`, async (path) => {
    const read: (GoodRow | HeldRow)[] = [];
    for await (const { rows } of readMapped(path, "pump.csv", mapping, context))
      for await (const row of rows) read.push(row);
    return read;
  });
  expect(rows).toMatchObject([
    {
      verdict: "good",
      line: 3,
      match: { chair: "NORTH-2", tooth: "16", at: "2026-07-03T08:20:00.000Z", minutes: 5 },
      values: {
        ...{ canal: "MB1", seq: 92_000, irrigant: "naocl", concentration_pct: 2.5 },
        ...{ duration_s: 45, flow_ml_min: 6, delivery: "continuous" },
      },
    },
  ]);
});
