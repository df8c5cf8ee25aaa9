import { withHome } from "@/lib/reports/with-home";
import { pool } from "@/lib/store/database";
await withHome(async () => {
  for (const q of process.argv.slice(2)) { const t=performance.now(); const r = await pool().query(q); console.log(Math.round(performance.now()-t),"ms"); console.table(r.rows.slice(0,60)); }
});
