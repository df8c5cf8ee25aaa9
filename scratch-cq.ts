import { withHome } from "@/lib/reports/with-home";
import { pool } from "@/lib/store/database";
await withHome(async () => {
  const q = async (s: string) => console.table((await pool().query(s)).rows);
  await q("select practice, count(*), count(distinct worker), min(local_day), max(local_day) from canal_facts group by 1");
  await q("select practice, worker, count(*) filter (where volume_ml is not null and exclusion is null) n, count(*) as all from canal_facts where local_day>='2026-07-01' and local_day<'2026-10-01' group by 1,2 order by 1,2");
  await q("select count(*) from sessions"); await q("select count(*) from irrigation"); await q("select count(*) from people");
  await q("select table_name, kind, state, count(*) from held group by 1,2,3");
  await q("select * from held where session_id is not null limit 3");
  await q("select * from irrigation where visit_id = 500");
  await q("select * from instruments where visit_id = 500");
  await q("select * from canals where visit_id = 500");
  await q("select * from steps where visit_id = 500");
  await q("select * from users"); await q("select * from grants");
  await q("select count(*), count(started_at) from irrigation"); await q("select count(*) from witnesses");
  await q("select count(*) from sessions v where exists (select from canals c where c.visit_id=v.id and c.clinician is not null and c.clinician<>v.clinician)");
});
