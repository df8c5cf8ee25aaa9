import pg from "pg";
import { inject } from "vitest";
import type { Viewer } from "@/lib/access/viewer";
import { type Told, toldOf } from "@/lib/store/wall/told-sql";
import { viewerAs } from "../comparing/viewers";

/** One viewer for each role at OAK, and a lead of the whole group. The clinician did the first of OAK's two visits. */
export const viewers = {
  lead: viewerAs("clinical-lead", "OAK"),
  officer: viewerAs("quality-officer", "OAK"),
  keeper: viewerAs("record-keeper", "OAK"),
  clinician: { ...viewerAs("clinician", "OAK", "OAK/C01"), userId: "OAK C01" },
  administrator: viewerAs("administrator", "OAK"),
  leadOfAll: viewerAs("clinical-lead"),
} satisfies Record<string, Viewer>;
export type ViewerName = keyof typeof viewers;

/** The address of a database as the role as which requests are asked. */
export function viewersUrlOf(url: string): string {
  const address = new URL(inject("viewersUrl"));
  address.pathname = new URL(url).pathname;
  return address.href;
}

/** Asks the database directly, past all of the application, in a transaction that is taken back. `viewer` null is nobody. */
export async function askedAs<Answer>(
  url: string,
  viewer: Viewer | null,
  work: (client: pg.Client) => Promise<Answer>,
  as: Told["as"] = "viewer",
): Promise<Answer> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query("begin");
    if (viewer) await client.query(toldOf({ as, person: viewer.userId, grants: viewer.grants }));
    return await work(client);
  } finally {
    await client.end();
  }
}

type Row = Readonly<Record<string, unknown>>;
/** What a row belongs to, as a letter: OAK's visits 1 and 2 (and their clinicians), ELM's E; practices O and M, the group's G; else x. */
export type Letters = (row: Row) => string;

/** The letters of every table's rows, read by the owner, so that a viewer's rows can be told apart. */
export async function lettersIn(owner: pg.Pool): Promise<Letters> {
  const read = async (sql: string) =>
    new Map((await owner.query<{ id: unknown; of: unknown }>(sql)).rows.map((r) => [r.id, r.of]));
  const visits = await read("select id, session_id as of from sessions");
  const held = await read("select id, session_id as of from held");
  const audits = await read("select id, coalesce(practice, 'group') as of from audits");
  const actions = await read(
    "select c.id, practice as of from audit_actions c join audits a on a.id = c.audit_id",
  );
  const schedules = await read("select id, coalesce(practice, 'group') as of from schedules");
  return (row) => {
    const of =
      visits.get(row.visit_id) ??
      row.session_id ??
      held.get(row.held_id) ??
      row.user_id ??
      row.clinician_key ??
      audits.get(row.audit_id) ??
      actions.get(row.action_id) ??
      schedules.get(row.schedule_id) ??
      (row.practices as string[] | undefined)?.[0] ??
      ("practice" in row ? (row.practice ?? "group") : (row.code ?? row.identifier ?? row.id));
    return letters[String(of)] ?? "x";
  };
}

const letters: Readonly<Record<string, string>> = {
  ...{ "OAK C01": "1", "OAK C02": "2", "ELM C01": "E" },
  ...{ "OAK/C01": "1", "OAK/C02": "2" },
  ...{ OAK: "O", ELM: "M", group: "G" },
};
