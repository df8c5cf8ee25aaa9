import { expect, test, vi } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { receiveUpload } from "@/lib/reports/receive-upload";
import { resumeImport } from "@/lib/reports/resume-import";
import { takeUpImports } from "@/lib/reports/take-up-imports";
import { pool, prisma } from "@/lib/store/database";
import { beginAgain, brokenOffUploads } from "@/lib/store/import/broken-off";
import { linesWithin } from "@/lib/store/log/read-lines";
import { isLostConnection } from "@/lib/store/lost-connection";
import { eachInUploadHome, endedImport, sentForm } from "./upload-home";

// Expected values are the project's own rule: an import whose process is gone goes on once, in the name and within the reach of whoever
// brought it in, and not for ever.

eachInUploadHome();
const reach = holderReach();
const head =
  "session_id,practice,chair,clinician,patient,started_at,tooth,tooth_notation,treatment,outcome";
const row = (id: string, practice: string) =>
  `${id},${practice},1,C01,reference-1,2026-07-03T09:10,26,fdi,primary,completed`;
const both = [head, row("V-1", "OAK"), row("V-2", "ELM"), ""].join("\r\n");

/** A keeper of OAK, and an import of theirs whose process died a while ago. */
async function brokenOff() {
  await pool().query(`
    insert into practices (code, name, zone) values ('OAK', 'OAK', 'Europe/London'), ('ELM', 'ELM', 'Europe/London') on conflict do nothing;
    insert into users (id, name, email, updated_at) values ('keeper', 'Some One', 'keeper@tests.example', now());
    insert into grants (user_id, role, practice) values ('keeper', 'record-keeper', 'OAK')`);
  const upload = await receiveUpload(...sentForm({ "sessions.csv": both }), [], "keeper");
  const { id } = await prisma().import.create({
    data: { by: "Some One", state: "reading", upload: upload.folder, startedAt: new Date(0) },
  });
  return id;
}

test("it goes on by itself, once, within the reach of whoever brought it in", async () => {
  const id = await brokenOff();
  const taken = await Promise.all([takeUpImports(), takeUpImports(), takeUpImports()]);
  expect(taken.flat()).toEqual([id]);
  expect(await endedImport(id)).toMatchObject({ state: "done", rowsRead: 2 });
  expect((await prisma().visit.findMany()).map(({ practice }) => practice)).toEqual(["OAK"]);
  // What comes after the import's end, its files and its line, nobody waits for.
  await vi.waitFor(async () => {
    const lines = (await linesWithin(reach.people, { limit: 10 })).map((line) => [
      ...[line.person, line.what, line.about],
    ]);
    expect(lines.sort()).toEqual([
      ["keeper", "import ended", `import=${id} outcome=done`],
      ["keeper", "import taken up", `import=${id}`],
    ]);
  }, 10_000);
  expect(await prisma().import.findUnique({ where: { id } })).toMatchObject({ upload: null });
  expect(await takeUpImports()).toEqual([]);
});

test("it waits for somebody where whoever brought it in may no longer", async () => {
  const id = await brokenOff();
  await pool().query("delete from grants");
  expect(await takeUpImports()).toEqual([]);
  expect(await resumeImport(reach.records, id)).toBe(true);
  expect(await endedImport(id)).toMatchObject({ state: "done" });
});

test("one that ended three processes is left to be looked at", async () => {
  const id = await brokenOff();
  const { upload } = await prisma().import.findUniqueOrThrow({ where: { id } });
  for (const more of [true, true, false]) {
    expect(await brokenOffUploads(reach.records)).toEqual([{ id, upload }]);
    // It got as far as its row, and nobody is marked as running it: that process is gone too.
    expect(await beginAgain({ importId: id, asked: false }, upload)).toBe(true);
    await pool().query("update imports set started_at = 'epoch' where id = $1", [id]);
    expect(await brokenOffUploads(reach.records)).toHaveLength(more ? 1 : 0);
  }
  expect(await takeUpImports()).toEqual([]);
  expect(await resumeImport(reach.records, id)).toBe(true);
  expect(await endedImport(id)).toMatchObject({ state: "done", tries: 0 });
});

test("a database that went away is told from a file that is wrong", () => {
  const lost = ["57P01", "57P03", "08006", "ECONNREFUSED"];
  for (const code of lost)
    expect(isLostConnection(Object.assign(new Error("x"), { code }))).toBe(true);
  expect(isLostConnection(new Error("Connection terminated unexpectedly"))).toBe(true);
  for (const code of ["57014", "22P02", "23505"])
    expect(isLostConnection(Object.assign(new Error("x"), { code }))).toBe(false);
  expect(isLostConnection(new Error("sessions.csv: it is no table"))).toBe(false);
});
