import { beforeEach, expect, test } from "vitest";
import { holderReach, peopleReach } from "@/lib/access/reach";
import { keptFrom } from "@/lib/records/retention";
import { checkLog } from "@/lib/reports/log/check-log";
import { retentionRun, retentionShown } from "@/lib/reports/retention/retention";
import { setRetentions } from "@/lib/reports/retention/set-retention";
import { pool } from "@/lib/store/database";
import { linesWithin } from "@/lib/store/log/read-lines";
import { writeLines } from "@/lib/store/log/write-lines";
import { bringIn, canal, delivery, snapshot, use, visit } from "../store/bring-in";
import { viewerAs } from "../store/comparing/viewers";
import { eachOnEmptyDatabase } from "../store/empty-database";

// Expected values are the project's own rules, worked by hand on the rows below: what is older than it is kept goes, all else stays.

eachOnEmptyDatabase();
const reach = holderReach();
const today = "2026-11-29";
const home = () => ({ url: process.env.DATABASE_URL ?? "", keeperUrl: null });

beforeEach(async () => {
  const old = {
    ...visit,
    session_id: "OLD",
    started_at: "2024-02-01T08:10:00.000Z",
    ended_at: undefined,
  };
  await bringIn({
    sessions: [old, visit],
    canals: [{ ...canal, session_id: "OLD" }, canal],
    irrigation: [{ ...delivery, session_id: "OLD" }, delivery],
    instruments: [{ ...use, session_id: "OLD" }, use],
  });
  // Seen a second time, and a canal that contradicts the one accepted of the old visit.
  await bringIn({
    sessions: [old],
    canals: [{ ...canal, session_id: "OLD", preparation: "hand" }],
  });
  await pool().query(`
    insert into users (id, name, email, updated_at) values ('u', 'U', 'u@tests.example', now());
    insert into notes (user_id, period, text, saved_at) values ('u', '2024-Q1', 'x', '2024-04-01'), ('u', '2026-Q3', 'x', '2026-10-01');
    insert into reflections (audit_id, user_id, text, saved_at) values (1, 'u', 'x', '2024-04-01');
    insert into entered_exceptions (practice, session_id, canal, criterion, reason, user_id, by) values
      ('OAK', 'OLD', '', 'isolation', 'x', 'u', 'U'), ('OAK', 'V-1', '', 'isolation', 'x', 'u', 'U');
    insert into prepared (schedule_id, period, file, name, sha256, at) values (1, '2024-Q1', 'x', 'f', 'h', '2024-04-01'), (1, '2026-Q3', 'x', 'f', 'h', '2026-10-01');
    insert into audits (practice, period, criteria, by) values ('OAK', '2024-Q1', '{}', 'U');
    insert into signed_audits (audit_id, version, content, sha256, computed_sha256, by, at) values (1, 1, '{}', 'x', 'x', 'U', '2024-04-01')`);
});

test("nothing is deleted where nothing is set", async () => {
  const before = await everything();
  expect((await retentionRun(reach, home(), today)).map(({ older }) => older)).toEqual([
    0, 0, 0, 0,
  ]);
  expect(await everything()).toEqual(before);
});

test("records older than they are kept go with all that hangs on them; the rest and its figures stay", async () => {
  const kept = await snapshot();
  expect(await setRetentions(reach.people, ["records=24"])).toBeNull();
  const shown = await retentionShown(reach, today);
  // A visit and its held canal.
  expect(shown[0]).toEqual({ what: "records", months: 24, from: "2024-11-29", older: 2 });
  expect(await retentionRun(reach, home(), today)).toEqual(shown);
  const { rows } = await pool().query<{ name: string }>(
    "select table_name as name from information_schema.tables where table_schema = 'public' and table_name not in ('signed_audits', 'audits')",
  );
  for (const { name } of rows) {
    const found = await pool().query(
      `select from "${name}" t where to_jsonb(t)::text like '%"OLD"%'`,
    );
    expect(found.rowCount, name).toBe(0);
  }
  const after = await snapshot();
  expect(after.visit_facts).toEqual(kept.visit_facts?.filter((row) => idOf(row) !== "OLD"));
  expect(after.canal_facts).toEqual(kept.canal_facts?.filter((row) => idOf(row) !== "OLD"));
  const dangling = await pool().query(
    `select from witnesses w where w.table_name = 'sessions' and not exists (select from sessions s where s.id = w.row_id)`,
  );
  expect(dangling.rowCount).toBe(0);
  expect((await pool().query("select from signed_audits")).rowCount).toBe(1);
  expect((await pool().query("select from notes")).rowCount).toBe(2);
  expect((await retentionRun(reach, home(), today))[0]?.older).toBe(0);
});

test("notes, reflections and prepared files go by their own months; that a file was prepared stays known", async () => {
  expect(await setRetentions(reach.people, ["notes=12", "prepared=12"])).toBeNull();
  const ran = await retentionRun(reach, home(), today);
  expect(ran.map(({ what, older }) => [what, older])).toEqual([
    ["records", 0],
    ["notes", 2],
    ["log", 0],
    ["prepared", 1],
  ]);
  const { rows } = await pool().query(
    "select period, file is null as gone, name from prepared order by 1",
  );
  expect(rows).toEqual([
    { period: "2024-Q1", gone: true, name: "f" },
    { period: "2026-Q3", gone: false, name: "f" },
  ]);
});

test("the log is cut at a line that says so, and checks as before, also when it is cut again", async () => {
  await writeLines(Array.from({ length: 5 }, (_, n) => line(n)));
  const [fifth] = await linesWithin(reach.people, { limit: 1 });
  const day = fifth?.at.slice(0, 10) ?? "";
  await setRetentions(reach.people, ["log=1"]);
  // The day after tomorrow a month later, everything of now is older.
  const later = new Date(Date.parse(day) + 40 * 86_400_000).toISOString().slice(0, 10);
  expect((await retentionRun(reach, home(), later))[2]?.older).toBe(5);
  const [cut] = await linesWithin(reach.people, { limit: 10 });
  expect(cut).toMatchObject({ id: 6, kind: "cut", about: `through=5 hash=${fifth?.hash}` });
  expect(await checkLog(reach.people)).toMatchObject({ lines: 1, broken: null });
  await writeLines([line(6)]);
  expect(await checkLog(reach.people)).toMatchObject({ lines: 2, broken: null });
  // What an earlier check noted down was cut since, and that is told.
  const noted = { id: 5, hash: fifth?.hash ?? "" };
  expect(await checkLog(reach.people, noted)).toMatchObject({ broken: null });
  expect((await retentionRun(reach, home(), later))[2]?.older).toBe(2);
  expect(await checkLog(reach.people)).toMatchObject({ lines: 1, head: { id: 8 }, broken: null });
  await expect(pool().query("delete from log_lines")).rejects.toThrow("never deleted");
});

test("what is set wrongly is said, and only an administrator of the group sets it", async () => {
  for (const text of ["records", "records=0", "records=1201", "audits=3", "records=x"])
    expect(await setRetentions(reach.people, ["notes=3", text])).toContain(`"${text}"`);
  expect((await retentionShown(reach, today)).every(({ months }) => months === null)).toBe(true);
  await setRetentions(reach.people, ["notes=3"]);
  await setRetentions(reach.people, ["notes=never"]);
  expect((await retentionShown(reach, today))[1]?.months).toBeNull();
  await expect(
    setRetentions(peopleReach(viewerAs("administrator", "OAK")), ["notes=3"]),
  ).rejects.toThrow("administrator of the group");
});

test("months are counted back by the calendar", () => {
  expect(keptFrom("2026-11-29", 24)).toBe("2024-11-29");
  expect(keptFrom("2026-03-31", 1)).toBe("2026-02-28");
  expect(keptFrom("2024-03-31", 1)).toBe("2024-02-29");
  expect(keptFrom("2026-01-15", 13)).toBe("2024-12-15");
});

function line(n: number) {
  return { kind: "changed", person: "p", what: "undoAct", about: `import=${n}` } as const;
}

function idOf(row: unknown) {
  return (row as { session_id: string }).session_id;
}

/** How many rows each table has. */
async function everything(): Promise<unknown> {
  const { rows } = await pool().query<{ name: string }>(
    "select table_name as name from information_schema.tables where table_schema = 'public' order by 1",
  );
  const counts = rows.map(async ({ name }) => [
    name,
    (await pool().query(`select count(*)::int as n from "${name}"`)).rows[0].n,
  ]);
  return Promise.all(counts);
}
