import { withHome } from "@/lib/reports/with-home";
import { holderReach, ownReach } from "@/lib/access/reach";
import { figures, allMeasures } from "@/lib/reports/figures";
import { withReferences } from "@/lib/reports/reference";
import { period, monthsUpTo } from "@/lib/records/period";
const q = period("2026-Q3")!;
const own = ownReach({userId:"u",name:"n",email:"e",grants:[{role:"clinician",practice:null,clinicianKey:"P1/C04"}]});
const t = async <T>(what: string, f: () => Promise<T>) => { const s = performance.now(); const r = await f(); console.log(what, Math.round(performance.now()-s)); return r; };
await withHome(async () => {
  for (let i=0;i<3;i++) {
  const f = await t("own figures", () => figures(own,{periods:[q],by:["clinician"]}));
  const r = await t("own refs", () => withReferences(own, f));
  if(i==0) for (const x of r) console.log(x.measure, x.estimate, x.interval?.lower, x.interval?.upper, x.reference?.estimate, x.reference?.n, (x.reference as any)?.kind);
  await t("own 24 months", () => figures(own,{measures:["irrigation-time","volume","separation-per-canal","criterion/timer-reset","criterion/isolation"],periods:monthsUpTo(q.until,24),by:["clinician"]}));
  const all = await t("all figures", () => figures(holderReach().figures,{periods:[q],by:["clinician"]}));
  await t("all refs", () => withReferences(holderReach().figures, all));
  }
});
