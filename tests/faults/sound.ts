import { holderReach } from "@/lib/access/reach";
import { period } from "@/lib/records/period";
import { tableNames } from "@/lib/records/tables";
import { composites } from "@/lib/reports/composite";
import { figures } from "@/lib/reports/figures";
import { disconnect, pool } from "@/lib/store/database";
import { renewFacts } from "@/lib/store/facts/renew-facts";
import { inTransaction } from "@/lib/store/import/run-import";
import { canonicalJson } from "@/lib/views/canonical-json";
import { countsThatDoNotAddUp } from "../store/corrections/counts-and-facts";
import { leftAlone } from "./own-server";
import { differing, type State, stateNow } from "./state";

/** What a database must hold, and every figure of it, computed after all that is derived was made from scratch. */
export type Reference = { readonly name: string; readonly state: State; readonly figures: string };

/** The reference of a database as it stands. */
export async function referenceOf(url: string, name: string): Promise<Reference> {
  await on(url);
  await fromScratch();
  return { name, state: await stateNow(), figures: await everyFigure() };
}

export type Found = {
  /** Which of the references it is; null where it is none of them. */
  readonly is: string | null;
  /** What is wrong, in words; empty where all is sound. */
  readonly troubles: readonly string[];
};

/**
 * The one check after every fault. The database holds exactly what one of the references holds, so that nothing accepted is lost
 * and nothing half done is visible; its figures are those of the reference, which were computed from scratch; its facts are those
 * made anew from its rows; every row read is in one place and the counts say so; what is signed is under its hash.
 *
 * @param allowed the states that are right: the one after the act alone where the act was acknowledged
 * @param how.figures false where figures of the very same state were computed from scratch already
 */
export async function soundness(
  url: string,
  allowed: readonly Reference[],
  how: { readonly sections?: string[]; readonly figures?: boolean } = {},
): Promise<Found> {
  const { sections } = how;
  await on(url);
  const state = await stateNow();
  const same = allowed.find((one) => differing(one.state, state, sections).length === 0);
  const troubles: string[] = [];
  if (!same)
    troubles.push(
      `it is not ${allowed
        .map((one) => `${one.name} (${differing(one.state, state, sections).join(", ")} differ)`)
        .join(" nor ")}`,
    );
  else if (how.figures !== false && (await everyFigure()) !== same.figures)
    troubles.push("its figures are not those computed from scratch");
  for (const [what, rows] of [
    ["files whose counts do not add up", await countsThatDoNotAddUp()],
    ["files whose lines are not each in one place", await strayPlaces()],
    ["rows of imports that are not done", await halfDone()],
    ["signed versions that are not under their hash", await altered()],
  ] as const)
    if (rows.length > 0) troubles.push(`there are ${what}`);
  await fromScratch();
  const anew = differing(state, await stateNow());
  if (anew.length > 0) troubles.push(`made from scratch, ${anew.join(", ")} differ`);
  return { is: same?.name ?? null, troubles };
}

/** Points the pool at a database on which nobody else works. */
async function on(url: string): Promise<void> {
  await disconnect().catch(() => undefined);
  process.env.DATABASE_URL = url;
  await leftAlone(url);
}

/** Every measure, criterion and overall score of everybody in every year that the records of the faults lie in. */
async function everyFigure(): Promise<string> {
  const reach = holderReach().figures;
  const periods = ["2025", "2026-Q2", "2026-Q3"].flatMap((name) => period(name) ?? []);
  const by = ["group", "practice", "clinician"] as const;
  return canonicalJson([
    await figures(reach, { periods, by: [...by, "chair"] }),
    await composites(reach, { periods, by }),
  ]);
}

/** Makes all facts anew from the rows alone. */
async function fromScratch(): Promise<void> {
  const client = await pool().connect();
  try {
    await inTransaction(client, async () => {
      await client.query("delete from canal_facts");
      await client.query("delete from visit_facts");
      await client.query(
        "create temp table touched on commit drop as select id as visit_id from sessions",
      );
      await renewFacts(client);
    });
  } finally {
    client.release();
  }
}

const places = [...tableNames.map((table) => `select file_id, line from "${table}"`)]
  .concat("select file_id, line from witnesses")
  .concat("select file_id, line from held where state in ('held', 'let-go')")
  .join(" union all ");

/** Files of which a line stands in two places, or in none. */
async function strayPlaces(): Promise<unknown[]> {
  const { rows } = await pool().query(`
    select f.id from import_files f join imports i on i.id = f.import_id left join (${places}) p on p.file_id = f.id
    where i.state = 'done' group by f.id having count(p.line) <> f.read or count(distinct p.line) <> f.read`);
  return rows;
}

/** Rows whose import is not done. */
async function halfDone(): Promise<unknown[]> {
  const { rows } = await pool().query(`
    select p.file_id from (${places}) p left join import_files f on f.id = p.file_id left join imports i on i.id = f.import_id
    where i.state is distinct from 'done' limit 1`);
  return rows;
}

async function altered(): Promise<unknown[]> {
  const { rows } = await pool().query(
    "select audit_id from signed_audits where encode(sha256(convert_to(content, 'UTF8')), 'hex') <> sha256",
  );
  return rows;
}
