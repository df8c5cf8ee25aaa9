import { createHash } from "node:crypto";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { checkLog } from "@/lib/reports/log/check-log";
import { noteSeen, writeNoted } from "@/lib/reports/log/note";
import { disconnect, pool } from "@/lib/store/database";
import { execute, type ScratchDatabase } from "@/lib/store/home/scratch-database";
import { linesWithin } from "@/lib/store/log/read-lines";
import { writeLines } from "@/lib/store/log/write-lines";
import { freshDatabase } from "@/tests/fresh-database";

// Expected values are worked by hand from the rule in lib/records/log-line: SHA-256 (FIPS 180-4) of the hash before, a line feed and the
// line as a JSON array. Hashes are computed here anew, sharing no code with the check.

let database: ScratchDatabase;
const { people } = holderReach();

beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});
beforeEach(() => asOwner("truncate log_lines"));

test("a line is hashed over the one before and what it says, whatever it says", async () => {
  const about = 'session=A"b\\c\u0001\u001f\u007f\u2028 é 歯 \ud83e\uddb7\n\t';
  await writeLines([line({ about }), line({ kind: "signed", what: "signAct" })]);
  const [second, first] = await linesWithin(people, { limit: 10 });
  const hash = createHash("sha256").update(
    `${"0".repeat(64)}\n[1, "${first?.at}", "changed", "p1", "undoAct", ${JSON.stringify(about)}]`,
  );
  expect(first).toMatchObject({ id: 1, prev: "0".repeat(64), hash: hash.digest("hex") });
  expect(second).toMatchObject({ id: 2, prev: first?.hash });
  expect(await checkLog(people)).toEqual({
    lines: 2,
    head: { id: 2, hash: second?.hash },
    broken: null,
  });
});

test("no line can be changed, deleted or emptied out, backdated or numbered by whoever writes it", async () => {
  await writeLines([line({}), line({})]);
  for (const sql of [
    "update log_lines set person = 'p2'",
    "delete from log_lines where id = 2",
    "truncate log_lines",
  ])
    await expect(pool().query(sql)).rejects.toThrow("never changed and never deleted");
  await pool().query(
    `insert into log_lines values (77, '2001-01-01', 'saw', 'p1', 'x', '', 'false', 'false')`,
  );
  const [last] = await linesWithin(people, { limit: 1 });
  expect(last?.id).toBe(3);
  expect(last?.at.slice(0, 4)).not.toBe("2001");
  expect((await checkLog(people)).broken).toBeNull();
});

test("the first break is named: what was changed, taken out, cut off or made anew past the triggers", async () => {
  await writeLines(Array.from({ length: 6 }, () => line({})));
  const head = (await checkLog(people)).head ?? undefined;
  await asOwner("update log_lines set person = 'p2' where id = 4");
  expect((await checkLog(people)).broken).toMatch(/^Line 4 .* its hash is another\.$/);
  await asOwner("update log_lines set person = 'p1' where id = 4");
  expect((await checkLog(people, head)).broken).toBeNull();

  await asOwner("update log_lines set at = at - interval '1 ms' where id = 2");
  expect((await checkLog(people)).broken).toMatch(/^Line 2 /);
  await asOwner("update log_lines set at = at + interval '1 ms' where id = 2");

  await asOwner("delete from log_lines where id = 6");
  expect((await checkLog(people)).broken).toBeNull();
  expect((await checkLog(people, head)).broken).toMatch(/its end was cut off\.$/);
  await writeLines([line({ about: "row=9" })]);
  expect((await checkLog(people, head)).broken).toMatch(/the log was made anew\.$/);

  await asOwner("delete from log_lines where id in (3, 4)");
  expect((await checkLog(people)).broken).toBe("Lines 3 to 4 are missing.");
  await asOwner("delete from log_lines where id < 5");
  expect((await checkLog(people)).broken).toBe(
    "The log begins at line 5, and no line tells of a cut before it.",
  );
});

test("many writers at once make one chain without a gap", async () => {
  await Promise.all(
    Array.from({ length: 8 }, (_, writer) =>
      writeLines(Array.from({ length: 10 }, (_, n) => line({ about: `row=${writer}-${n}` }))),
    ),
  );
  expect(await checkLog(people)).toMatchObject({ lines: 80, broken: null });
});

test("what was seen stands once a person, page and hour, also when the process forgot", async () => {
  const saw = { kind: "saw", person: "p1", what: "/lead", about: "" } as const;
  for (let n = 0; n < 50; n += 1) noteSeen(saw);
  noteSeen({ ...saw, person: "p2" });
  await Promise.all([writeNoted(), writeNoted()]);
  await writeLines([saw, { ...saw, what: "/safety" }], true);
  const lines = await linesWithin(people, { limit: 10 });
  expect(lines.map(({ person, what }) => `${person} ${what}`)).toEqual([
    "p1 /safety",
    "p2 /lead",
    "p1 /lead",
  ]);
});

test("an administrator of a practice reads lines of people whose every role lies there", async () => {
  await pool().query(`
    insert into practices (code, name, zone) values ('A', 'A', 'UTC'), ('B', 'B', 'UTC');
    insert into users (id, name, email, updated_at) values ('p1', 'One', 'one@a.example', now()),
      ('p2', 'Two', 'two@a.example', now()), ('p3', 'Three', 'three@a.example', now());
    insert into grants (user_id, role, practice) values ('p1', 'clinical-lead', 'A'), ('p2', 'clinical-lead', 'A'),
      ('p2', 'clinical-lead', 'B'), ('p3', 'clinical-lead', null)`);
  await writeLines(["p1", "p2", "p3", "command line"].map((person) => line({ person })));
  const { peopleReach } = await import("@/lib/access/reach");
  const grants = [{ role: "administrator", practice: "A", clinicianKey: null }] as const;
  const reach = peopleReach({ userId: "x", name: "X", email: "x@a.example", grants });
  const seen = await linesWithin(reach, { limit: 10 });
  expect(seen.map(({ person, name }) => [person, name])).toEqual([["p1", "One"]]);
  expect(await checkLog(reach)).toMatchObject({ lines: 0 });
});

function line(of: Partial<Parameters<typeof writeLines>[0][number]>) {
  return { kind: "changed", person: "p1", what: "undoAct", about: "", ...of } as const;
}

/** What only the log's owner can do. */
async function asOwner(sql: string): Promise<void> {
  await execute(
    database.url,
    `alter table log_lines disable trigger user; ${sql}; alter table log_lines enable trigger user`,
  );
}
