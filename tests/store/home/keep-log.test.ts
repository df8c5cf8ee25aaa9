import pg from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openHome } from "@/lib/store/home/open-home";
import { readyDatabase } from "@/lib/store/home/ready-database";
import { temporaryFolder } from "./temporary-home";

// Expected values are the project's own rule: the application's role may read the log and add to it, and nothing else.

let folder: Awaited<ReturnType<typeof temporaryFolder>>;
let home: Awaited<ReturnType<typeof openHome>>;
const before = { ...process.env };

beforeAll(async () => {
  folder = await temporaryFolder();
  process.env.CANAL_AUDIT_HOME = folder.folder;
  delete process.env.DATABASE_URL;
  home = await openHome();
  await readyDatabase(home);
});
afterAll(async () => {
  await home.close();
  process.env.CANAL_AUDIT_HOME = before.CANAL_AUDIT_HOME;
  process.env.DATABASE_URL = before.DATABASE_URL;
  await folder.remove();
});

test("the application's role adds lines, and cannot change, delete, drop, disarm or take back the log", async () => {
  const client = new pg.Client({ connectionString: home.url });
  client.on("error", () => undefined);
  await client.connect();
  await client.query(
    "insert into log_lines (kind, person, what, about) values ('saw', 'p', '/lead', '')",
  );
  // PostgreSQL only warns that this gives nothing.
  await client.query("grant all on log_lines to canal_audit");
  for (const sql of [
    "update log_lines set person = 'q'",
    "delete from log_lines",
    "truncate log_lines",
    "drop table log_lines",
    "alter table log_lines disable trigger user",
    "alter table log_lines owner to canal_audit",
    "drop trigger log_lines_stay on log_lines",
    "create or replace function log_lines_stay() returns trigger language plpgsql as 'begin return null; end'",
    "create rule r as on insert to log_lines do instead nothing",
    "drop schema public cascade",
    "set session_replication_role = replica",
    "set role keeper",
  ])
    await expect(client.query(sql), sql).rejects.toThrow(/permission denied|must be owner/);
  // Its own tables are as before.
  await client.query("create table mine (a int); drop table mine");
  const { rows } = await client.query("select id::int, kind from log_lines");
  expect(rows).toEqual([{ id: 1, kind: "saw" }]);
  await client.end();
});

test("readying the database again changes nothing", async () => {
  expect(await readyDatabase(home)).toEqual([]);
});
