import { withHome } from "@/lib/reports/with-home";
import { figures } from "@/lib/reports/figures";
import { holderReach, narrowed } from "@/lib/access/reach";
import { period, monthsUpTo, rollingYear, quarter } from "@/lib/records/period";
import { writeFileSync } from "node:fs";
await withHome(async () => {
  const reach = holderReach().figures; const all = ["group","practice","clinician","chair"] as const;
  const qs = [quarter(2025,2),quarter(2025,3),quarter(2025,4),quarter(2026,1),quarter(2026,2),quarter(2026,3), rollingYear(quarter(2026,3))];
  const out = [await figures(reach,{periods:qs,by:all}), await figures(reach,{periods:monthsUpTo("2026-10-01",24),by:["group","clinician"]}), await figures(narrowed(reach,"P2"),{periods:qs,by:all})];
  writeFileSync(process.argv[2]!, JSON.stringify(out,null,1)); console.log(out.map(o=>o.length));
});
