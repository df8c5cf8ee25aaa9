import type pg from "pg";
import { canalFacts } from "./canal-facts";
import { raiseRevision } from "./revision";
import { makeSpells } from "./spells";
import { visitFacts } from "./visit-facts";

/**
 * Derives anew what the figures are computed from, for the visits in the temporary table `touched`. It runs in
 * the transaction that changed the records, so a figure never sees the one without the other.
 */
export async function renewFacts(client: pg.ClientBase): Promise<void> {
  await client.query(`
    create temp table renewing on commit drop as
    select distinct visit_id from touched where visit_id is not null`);
  await client.query(makeSpells);
  await client.query("analyze renewing, spells");
  await client.query(
    "delete from canal_facts using renewing where canal_facts.visit_id = renewing.visit_id",
  );
  await client.query(
    "delete from visit_facts using renewing where visit_facts.visit_id = renewing.visit_id",
  );
  await client.query(canalFacts);
  await client.query(`analyze canal_facts (visit_id, canal, ${askedBy}, tooth, preparation)`);
  await client.query(visitFacts);
  await client.query(`analyze visit_facts (visit_id, ${askedBy}, outcome)`);
  await raiseRevision(client);
}

/** What figures choose rows by: the planner is told of it at once, and finds out the rest by itself within a minute. */
const askedBy = "practice, chair, clinician, worker, patient, local_day, treatment, exclusion";
