import { basename } from "node:path";
import { holderReach } from "@/lib/access/reach";
import { importRecords } from "@/lib/reports/import-records";
import { keepFigures } from "@/lib/reports/keep-figures";
import { withHome } from "@/lib/reports/with-home";

/**
 * Imports the files named, in a process of its own, and counts what the figures need; prints rows, the seconds of both and the
 * peak of its memory in MB.
 */
const sources = process.argv.slice(2).map((path) => ({ path, name: basename(path) }));
const { records, figures } = holderReach();
const done = await withHome(async (home) => {
  const started = performance.now();
  const how = { zone: "Europe/London", key: home.key, heldListed: 10 };
  const { files } = await importRecords(records, sources, how);
  const imported = performance.now();
  await keepFigures(figures);
  return {
    rows: files.reduce((total, file) => total + file.accepted, 0),
    seconds: (imported - started) / 1000,
    keepSeconds: (performance.now() - imported) / 1000,
  };
});
console.log(JSON.stringify({ ...done, peakMb: process.resourceUsage().maxRSS / 1024 }));
