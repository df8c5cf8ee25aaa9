import { pool } from "@/lib/store/database";
import { renewFacts } from "@/lib/store/facts/renew-facts";
import { inTransaction } from "@/lib/store/import/run-import";
import { snapshot } from "../bring-in";

/** Files of imports that stand whose rows are not each in one state. */
export async function countsThatDoNotAddUp(): Promise<unknown[]> {
  const { rows } = await pool().query(`
    select f.* from import_files f join imports i on i.id = f.import_id
    where i.state = 'done' and (f.read <> f.accepted + f.repeated + f.held + f.let_go
      or least(f.accepted, f.repeated, f.held, f.let_go) < 0
      or f.held + f.let_go <> (
        select count(*) from (
          select file_id, state from held
          union all select w.file_id, h.state from witnesses w join held h on w.table_name = 'held' and h.id = w.row_id
        ) p where p.file_id = f.id and p.state in ('held', 'let-go')))`);
  return rows;
}

/** What decides the figures, with the facts of every visit derived anew from the rows. */
export async function factsAnew(): Promise<Record<string, unknown[]>> {
  const client = await pool().connect();
  try {
    await inTransaction(client, async () => {
      await client.query(
        "create temp table touched on commit drop as select id as visit_id from sessions",
      );
      await renewFacts(client);
    });
  } finally {
    client.release();
  }
  return snapshot();
}
