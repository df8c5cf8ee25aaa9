import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { readSheets } from "@/lib/intake/read-sheets";
import type { Context, Sheet } from "@/lib/intake/sheet";
import { tables } from "@/lib/records/tables";

/** Reads and checks the irrigation file named so many times, in a process of its own, and prints rows, seconds and the peak of its memory in MB. */
const [path = "", way = "", times = "1"] = process.argv.slice(2);
const context: Context = {
  zoneOf: () => "UTC",
  pseudonym: (_, reference) => reference,
  now: new Date(),
};
const started = performance.now();
let rows = 0;
let good = 0;
for (let time = 0; time < Number(times); time += 1)
  for await (const sheet of sheets())
    for await (const { verdict } of sheet.rows) {
      rows += 1;
      if (verdict === "good") good += 1;
    }
console.log(
  JSON.stringify({
    ...{ rows, good, seconds: (performance.now() - started) / 1000 },
    peakMb: process.resourceUsage().maxRSS / 1024,
  }),
);

function sheets(): AsyncGenerator<Sheet> {
  const name = "irrigation.csv";
  return way === "mapped"
    ? readMapped(path, name, mappingOfOwn(), context)
    : readSheets(path, name, context);
}

/** Each column under its own name, the volume and the times through a unit and the irrigant through a word. */
function mappingOfOwn(): Mapping {
  const { columns } = tables.irrigation;
  const names = [
    ...["session_id", "canal", "seq", "irrigant", "concentration_pct", "volume_ml"],
    ...["flow_ml_min", "duration_s", "basis", "delivery", "activation"],
  ].filter((name) => columns.some((column) => column.name === name));
  const fields = Object.fromEntries(names.map((name) => [name, { columns: [name] }]));
  return mappingSchema.parse({
    ...{ format: "canal-audit-mapping-1", name: "bench", columns: names },
    file: { kind: "separated" },
    tables: [
      {
        table: "irrigation",
        fields: {
          ...fields,
          volume_ml: { columns: ["volume_ml"], unit: "cm3" },
          irrigant: { columns: ["irrigant"], words: [{ word: "NaOCl", means: "naocl" }] },
        },
      },
    ],
  });
}
