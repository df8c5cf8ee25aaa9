import { afterAll, beforeAll, expect, test } from "vitest";
import { Refused } from "@/lib/access/refused";
import { addOwnTerm, retireOwnTerm, rewordOwnTerm } from "@/lib/reports/protocol/change-terms";
import { editorPage } from "@/lib/reports/protocol/editor-page";
import { protocolPage } from "@/lib/reports/protocol/protocol-page";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { viewerAs } from "../../store/comparing/viewers";

// Expected values are the project's own rules: a code is made from the words once and stays.

const group = viewerAs("clinical-lead");
const north = viewerAs("clinical-lead", "NORTH");

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await pool().query(
    `insert into practices (code, name, zone) values ('NORTH', 'North', 'Europe/London'), ('SOUTH', 'South', 'Europe/London')`,
  );
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("own terms are added, reworded, retired and offered again; their code stays", async () => {
  const add = (words: string, more: Record<string, string> = {}) =>
    addOwnTerm(group, { kind: "reason", words, practice: "NORTH", where: "here", ...more });
  expect((await add("Zu müde, um zu bleiben")).done).toContain("own-zu-mude-um-zu-bleiben");
  expect((await add("  ")).wrong).toHaveProperty("words");
  expect((await add("zu mude um zu bleiben")).wrong).toHaveProperty("words");
  expect((await add("Too tired", { where: "everywhere" })).done).toBeDefined();
  expect((await add("Too tired", { practice: "SOUTH" })).wrong).toHaveProperty("words");
  const code = "own-too-tired";
  const term = { kind: "reason", practice: "NORTH", code };
  expect((await rewordOwnTerm(group, { ...term, words: "too tired to go on" })).done).toBeDefined();
  expect((await retireOwnTerm(group, { ...term, retired: "yes" })).done).toBeDefined();
  const reasons = async (practice: string) =>
    (await protocolPage(group, { practice })).shown?.terms.find(({ kind }) => kind === "reason")
      ?.lines;
  expect(await reasons("NORTH")).toEqual([
    { code: "own-zu-mude-um-zu-bleiben", words: "Zu müde, um zu bleiben", retired: false },
    { code, words: "too tired to go on", retired: true },
  ]);
  expect(await reasons("SOUTH")).toEqual([{ code, words: "Too tired", retired: false }]);
  const offered = async () =>
    (await editorPage(group, "chelator", { practice: "NORTH" }))?.terms.reasons.map(
      ({ value }) => value,
    );
  expect(await offered()).not.toContain(code);
  await retireOwnTerm(group, { ...term, retired: "no" });
  expect(await offered()).toContain(code);
  expect(
    (await retireOwnTerm(group, { ...term, code: "own-none", retired: "no" })).wrong,
  ).toBeDefined();
  await expect(rewordOwnTerm(north, { ...term, practice: "SOUTH", words: "x" })).rejects.toThrow(
    Refused,
  );
});
