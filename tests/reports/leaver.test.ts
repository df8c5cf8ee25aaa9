import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach, peopleReach } from "@/lib/access/reach";
import { personLeaves } from "@/lib/reports/change-person";
import { addPerson } from "@/lib/reports/people";
import { dataByEmail, idOf, ownDataFile, personDataFile } from "@/lib/reports/person-data";
import { disconnect, pool } from "@/lib/store/database";
import { writeLines } from "@/lib/store/log/write-lines";
import { namesWritten } from "@/lib/store/people/names-written";
import { freshDatabase } from "../fresh-database";

// Expected values are the project's own rules of what is handed out and what goes, worked by hand on the rows below.

const { people } = holderReach();
const name = "Isolde Quenby-Hart";
const email = "isolde@tests.example";
let drop: () => Promise<void>;
let id = "";

beforeAll(async () => {
  const database = await freshDatabase();
  drop = database.drop;
  process.env.DATABASE_URL = database.url;
  await pool().query(`
    insert into practices (code, name, zone) values ('P1', 'P1', 'UTC'), ('P2', 'P2', 'UTC');
    insert into clinicians (practice, code) values ('P1', 'C01')`);
  await addPerson(people, {
    ...{ name: "Root", email: "root@tests.example", role: "administrator", practice: null },
    clinicianKey: null,
  });
  await addPerson(people, {
    ...{ name, email, role: "clinician", practice: "P1", clinicianKey: "P1/C01" },
  });
  id = (await idOf(people, email)) ?? "";
  await pool().query(`
    insert into audits (practice, period, criteria, by) values ('P1', '2026-Q2', '{}', '${name}');
    insert into notes (user_id, period, text) values ('${id}', '2026-Q2', 'private note');
    insert into reflections (audit_id, user_id, text) values (1, '${id}', 'private reflection');
    insert into audit_answers (audit_id, user_id, clinician_key, text, by) values (1, '${id}', 'P1/C01', 'my answer', '${name}');
    insert into audit_confirmations (audit_id, clinician_key, by) values (1, 'P1/C01', '${name}');
    insert into audit_disputes (audit_id, clinician_key, practice, session_id, kind, note, by)
      values (1, 'P1/C01', 'P1', 's1', 'wrong', 'my dispute', '${name}');
    insert into entered_exceptions (practice, session_id, canal, criterion, reason, user_id, by)
      values ('P1', 's1', '', 'isolation', 'not-possible', '${id}', '${name}');
    insert into signed_audits (audit_id, version, content, sha256, computed_sha256, by, at)
      values (1, 1, '{}', 'x', 'x', '${name}', now())`);
  await writeLines([{ kind: "saw", person: id, what: "/clinician", about: "" }]);
});
afterAll(async () => {
  await disconnect();
  await drop();
});

test("what is kept about a person is handed out, private texts only to themselves", async () => {
  const handed = JSON.stringify(await dataByEmail(people, email));
  for (const said of [name, email, "my answer", "my dispute", "not-possible", "/clinician"])
    expect(handed).toContain(said);
  expect(handed).not.toContain("private");
  const data = await dataByEmail(people, email);
  expect(data?.notes).toMatchObject([{ period: "2026-Q2", text: null }]);
  expect(data?.reflections).toMatchObject([{ audit: 1, text: null }]);
  expect(data?.confirmations).toMatchObject([{ audit: 1, clinician: "P1/C01" }]);

  const own = await ownDataFile({ userId: id, name, email, grants: [] });
  expect(own.text).toContain("private note");
  expect(own.text).toContain("private reflection");
});

test("an administrator of another practice is answered as if there were nobody", async () => {
  const grants = [{ role: "administrator", practice: "P2", clinicianKey: null }] as const;
  const viewer = { userId: "a", name: "A", email: "a@tests.example", grants };
  expect(await personDataFile(viewer, id)).toBeNull();
  expect(await personDataFile(viewer, "none")).toBeNull();
  expect(await idOf(peopleReach(viewer), email)).toBeUndefined();
});

test("every column that says who did something is either gone through for a leaver, or holds no name", async () => {
  const { rows } = await pool().query<{ place: string }>(
    `select table_name || '.' || column_name as place from information_schema.columns
     where table_schema = 'public' and data_type = 'text' and (column_name ~ '(^|_)by$' or column_name = 'owner')`,
  );
  const without = ["signed_audits.by", "upkeep.done_by", "exceptions.entered_by"];
  expect(rows.map(({ place }) => place).sort()).toEqual(
    [...namesWritten.map(([table, column]) => `${table}.${column}`), ...without].sort(),
  );
});

test("a leaver's account and name are nowhere but in what was signed; their code stands instead", async () => {
  expect(await personLeaves(people, id)).toMatchObject({ done: expect.stringContaining("P1/C01") });
  expect(await placesOf(name)).toEqual(["signed_audits"]);
  expect(await placesOf(email)).toEqual([]);
  expect(await placesOf("private")).toEqual([]);
  const { rows } = await pool().query("select by from audit_confirmations");
  expect(rows).toEqual([{ by: "P1/C01" }]);
  expect(await personLeaves(people, id)).toHaveProperty("wrong");
});

test("a name that another account bears stays: whose it is cannot be told", async () => {
  for (const one of ["a", "b"])
    await addPerson(people, {
      ...{ name: "Same Name", email: `${one}@tests.example`, role: "record-keeper" },
      ...{ practice: null, clinicianKey: null },
    });
  await pool().query(
    "insert into imports (by, state, practices) values ('Same Name', 'done', '{}')",
  );
  const first = (await idOf(people, "a@tests.example")) ?? "";
  expect(await personLeaves(people, first)).toMatchObject({
    done: expect.stringContaining("same name"),
  });
  expect(await placesOf("Same Name")).toEqual(["imports", "users"]);
});

/** Tables of which a row holds the text anywhere. */
async function placesOf(text: string): Promise<string[]> {
  const { rows } = await pool().query<{ name: string }>(
    "select table_name as name from information_schema.tables where table_schema = 'public' order by 1",
  );
  const found: string[] = [];
  for (const { name: table } of rows) {
    const { rowCount } = await pool().query(
      `select 1 from "${table}" t where position($1 in to_jsonb(t)::text) > 0 limit 1`,
      [text],
    );
    if (rowCount) found.push(table);
  }
  return found;
}
