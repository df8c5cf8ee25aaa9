import { basename } from "node:path";
import { holderReach } from "@/lib/access/reach";
import { importRecords } from "@/lib/reports/import-records";
import { withHome } from "@/lib/reports/with-home";

/** Imports the files named, in a process of its own, and prints seconds, rows and the peak of its memory in MB. */
const paths = process.argv.slice(2);
const started = performance.now();
const rows = await withHome(async (home) => {
  const sources = paths.map((path) => ({ path, name: basename(path) }));
  const { files } = await importRecords(holderReach().records, sources, {
    zone: "UTC",
    key: home.key,
    heldListed: 10,
  });
  return files.reduce((total, file) => total + file.accepted, 0);
});
console.log(
  JSON.stringify({
    rows,
    seconds: (performance.now() - started) / 1000,
    peakMb: process.resourceUsage().maxRSS / 1024,
  }),
);
