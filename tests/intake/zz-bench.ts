import { createWriteStream, existsSync, statSync } from "node:fs";
import { once } from "node:events";
import writeWorkbook from "write-excel-file/node";
import { readSheets } from "@/lib/intake/read-sheets";
const context = { zoneOf: () => "Europe/London", pseudonym: (p: string, r: string) => p + r.length, now: new Date() };
const [kind, n] = [process.argv[2] ?? "csv", Number(process.argv[3] ?? 1e5)];
const cols = "session_id,canal,seq,started_at,irrigant,concentration_pct,volume_ml,flow_ml_min,duration_s,dwell_s,basis,delivery,activation,activation_s,tip_short_mm".split(",");
const row = (i: number, local: boolean) => [`S${String(i >> 4).padStart(7, "0")}`, i & 1 ? "MB1" : "DB", (i % 16) + 1, `2026-0${(i % 6) + 1}-1${i % 9}T09:${10 + (i % 50)}:00${local ? "" : "Z"}`, "naocl", 3, 4.5, 6, 45, 60, "metered", "syringe", "none", null, 2];
const local = process.argv[4] === "local";
const path = `/tmp/cq/b-${n}-${local}.${kind}`;
if (!existsSync(path)) {
  if (kind === "xlsx") await writeWorkbook([cols, ...Array.from({ length: n }, (_, i) => row(i, local))]).toFile(path);
  else {
    const out = createWriteStream(path); if (kind === "csv") out.write(cols.join(",") + "\n"); if (kind === "json") out.write("[");
    for (let i = 0; i < n; i++) { const r = row(i, local); const t = kind === "csv" ? r.map((c) => c ?? "").join(",") + "\n" : (kind === "json" && i ? ",\n" : "") + JSON.stringify(Object.fromEntries(cols.map((c, j) => [c, r[j]]))) + (kind === "ndjson" ? "\n" : ""); if (!out.write(t)) await once(out, "drain"); }
    if (kind === "json") out.write("]"); out.end(); await once(out, "finish");
  }
  console.log("written", statSync(path).size >> 20, "MB"); process.exit(0);
}
const t0 = Date.now(); let good = 0, held = 0;
for await (const s of readSheets(path, `irrigation.${kind}`, context)) for await (const r of s.rows) if (r.verdict === "good") good++; else { if (!held++) console.log(r.reasons[0]?.sentence); }
console.log(kind, n, local ? "local" : "offset", good, held, Math.round(n / (Date.now() - t0)), "k rows/s, peak", Math.round(process.resourceUsage().maxRSS / 1024), "MB");
