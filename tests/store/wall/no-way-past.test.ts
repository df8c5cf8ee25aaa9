import pg from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { disconnect, pool } from "@/lib/store/database";
import { raiseWall } from "@/lib/store/home/raise-wall";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { asHolder, asViewer, publishing } from "@/lib/store/wall/as-whom";
import { standingUrl } from "@/lib/store/wall/standing-url";
import type { Told } from "@/lib/store/wall/told-sql";
import { freshDatabase } from "../../fresh-database";
import { askedAs, viewers, viewersUrlOf } from "./shown-to";
import { fillTwoPractices } from "./two-practices";

// Expected values are PostgreSQL's own refusals (SQLSTATE 42501, insufficient privilege, PostgreSQL 18 manual, appendix A), and counts by hand of
// the rows of two-practices.ts: three visits, two of them OAK's, one of those the clinician's.

let database: ScratchDatabase;
let url = "";
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  url = viewersUrlOf(database.url);
  await fillTwoPractices();
});
afterAll(async () => {
  delete process.env.DATABASE_URL_OF_VIEWERS;
  await disconnect();
  await database.drop();
});

const role = () => new URL(url).username;
const owner = () => new URL(database.url).username;

describe("the role as which requests are asked", () => {
  test("is nobody's owner or member and may not bypass policies", async () => {
    const { rows } = await pool().query(
      `select rolsuper or rolbypassrls or rolcreaterole or rolcreatedb or rolreplication as mighty,
         (select count(*)::int from pg_class where relowner = r.oid) + (select count(*)::int from pg_proc where proowner = r.oid) as owns,
         (select count(*)::int from pg_auth_members where member = r.oid) as member,
         has_schema_privilege(oid, 'public', 'create') as makes
       from pg_roles r where rolname = $1`,
      [role()],
    );
    expect(rows).toEqual([{ mighty: false, owns: 0, member: 0, makes: false }]);
  });

  test("is refused whatever would take the wall away", async () => {
    const tries = [
      "alter table sessions disable row level security",
      "alter table sessions no force row level security",
      "drop policy reads on sessions",
      "alter policy reads on sessions using (true)",
      "create policy more on sessions using (true)",
      `set role ${owner()}`,
      `set session authorization ${owner()}`,
      `alter role ${role()} bypassrls`,
      `grant ${owner()} to ${role()}`,
      "set local row_security = off; select * from sessions",
      "truncate sessions cascade",
      "drop table notes",
      "create table public.kept_aside as select 1",
      "create function public.mine() returns int language sql security definer as 'select 1'",
      "create or replace function public.visits_of_viewer() returns setof bigint language sql as 'select id from sessions'",
      "alter function public.visits_of_viewer() owner to current_user",
      "alter table sessions owner to current_user",
      "select * from _prisma_migrations",
      "delete from log_lines",
    ];
    for (const sql of tries)
      expect([sql, await refusalOf(viewers.lead, sql)]).toEqual([sql, "42501"]);
  });

  test("copies no more than it is shown", async () => {
    const count = (name: keyof typeof viewers) =>
      askedAs(url, viewers[name], async (client) => {
        await client.query("create temp table aside as select * from canal_facts");
        return (await client.query("select from aside")).rowCount;
      });
    expect([await count("clinician"), await count("lead"), await count("leadOfAll")]).toEqual([
      ...[1, 2, 3],
    ]);
  });
});

describe("a row of another practice is not written", () => {
  const visit = (practice: string) =>
    `insert into sessions (file_id, line, fields, practice, session_id, chair, clinician, patient, started_at, local_day, tooth, tooth_notation, treatment, outcome)
     values (1, 9, 0, '${practice}', 'more', '${practice}-1', 'C01', 'x', now(), current_date, '26', 'fdi', 'primary', 'completed')`;
  const held = `insert into held (table_name, digest, kind, practice, key, raw, reasons, file_id, line)
    values ('sessions', 'more', 'outside-reach', 'ELM', 'x', '{}', '[]', 1, 9)`;
  const canal = (of: string) =>
    `insert into canals (file_id, line, fields, visit_id, canal, preparation) select 1, 9, 0, id, 'DB', 'hand' from sessions where session_id = '${of}'`;

  test.each(["viewer", "publishing"] as const)("by a keeper as %s", async (as) => {
    expect(await refusalOf(viewers.keeper, visit("OAK"), as)).toBe("none");
    expect(await refusalOf(viewers.keeper, visit("ELM"), as)).toBe("42501");
    expect(await refusalOf(viewers.keeper, canal("OAK C01"), as)).toBe("none");
    const moved = "update sessions set practice = 'ELM' where practice = 'OAK'";
    expect(await refusalOf(viewers.keeper, moved, as)).toBe("42501");
  });

  test("and where publishing sees all that is there, it holds what it may not let in", async () => {
    expect(await refusalOf(viewers.keeper, held, "publishing")).toBe("none");
    expect(await refusalOf(viewers.keeper, held)).toBe("42501");
    expect(await refusalOf(viewers.keeper, canal("ELM C01"), "publishing")).toBe("42501");
  });

  test("by a lead, an officer, a clinician or an administrator, not even one of their own practice", async () => {
    for (const name of ["lead", "officer", "clinician", "administrator"] as const)
      expect([name, await refusalOf(viewers[name], visit("OAK"))]).toEqual([name, "42501"]);
  });
});

test("comparing reads everybody's facts, and writes and reads nothing else that is not one's own", async () => {
  await askedAs(
    url,
    viewers.clinician,
    async (client) => {
      const count = async (table: string) =>
        (await client.query(`select from "${table}"`)).rowCount;
      expect(await count("canal_facts")).toBe(3);
      for (const table of ["notes", "audit_answers"]) expect(await count(table), table).toBe(1);
      for (const table of ["mends", "audit_texts", "imports"])
        expect(await count(table), table).toBe(0);
    },
    "comparing",
  );
  const changed = "update canal_facts set uses = 9";
  expect(await refusalOf(viewers.clinician, changed, "comparing")).toBe("42501");
});

describe("through the application's own pool", () => {
  const visitsSeen = async () => (await pool().query("select from sessions")).rowCount;
  const each = async () => [
    await visitsSeen(),
    await asViewer(viewers.clinician, visitsSeen),
    await asViewer(viewers.lead, visitsSeen),
    await asViewer(viewers.keeper, () => publishing(visitsSeen)),
    await asHolder(visitsSeen),
    await publishing(visitsSeen),
  ];

  test("nobody is shown nothing, also at the same time as others are shown theirs", async () => {
    process.env.DATABASE_URL_OF_VIEWERS = url;
    await disconnect();
    expect(await each()).toEqual([0, 1, 2, 3, 3, 0]);
    const many = Array.from({ length: 20 }, each);
    for (const one of await Promise.all(many)) expect(one).toEqual([0, 1, 2, 3, 3, 0]);
  });

  test("a connection that failed forgets as whom it was asked", async () => {
    await asViewer(viewers.lead, async () => {
      await expect(pool().query("select 1 / 0")).rejects.toThrow("division by zero");
      expect(await visitsSeen()).toBe(2);
    });
    expect(await visitsSeen()).toBe(0);
  });

  test("where the owner is the only role there is, policies hold it too", async () => {
    const one = await freshDatabase();
    try {
      await raiseWall({ url: one.url, keeperUrl: null, viewersUrl: one.url });
      process.env.DATABASE_URL = standingUrl(one.url, "holder");
      process.env.DATABASE_URL_OF_VIEWERS = one.url;
      await disconnect();
      await asHolder(fillTwoPractices);
      expect(await each()).toEqual([0, 1, 2, 3, 3, 0]);
    } finally {
      await disconnect();
      await one.drop();
      process.env.DATABASE_URL = database.url;
    }
  });
});

/** SQLSTATE of the refusal, or "none". */
async function refusalOf(
  viewer: (typeof viewers)[keyof typeof viewers],
  sql: string,
  as: Told["as"] = "viewer",
): Promise<string> {
  const done = async (client: pg.Client) => {
    await client.query(sql);
    return "none";
  };
  return askedAs(url, viewer, done, as).catch((error: unknown) => {
    if (!(error instanceof pg.DatabaseError)) throw error;
    return `${error.code}`;
  });
}
