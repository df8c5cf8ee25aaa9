import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { leadReach } from "@/lib/access/reach";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { criterionPage } from "@/lib/reports/protocol/criterion-page";
import { editorPage } from "@/lib/reports/protocol/editor-page";
import { withdrawCriterionVersion } from "@/lib/reports/protocol/end-version";
import { localDay } from "@/lib/reports/protocol/local-day";
import { putCriterionInForce } from "@/lib/reports/protocol/put-in-force";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { freshDatabase } from "../../fresh-database";
import { viewerAs } from "../../store/comparing/viewers";

// Expected values are the project's own rules: nothing that held is lost from sight, and no address is a dead end.

const group = viewerAs("clinical-lead");
const floor = defaults.find(({ id }) => id === "hypochlorite-floor") as Criterion;
const own = { ...floor, id: "own-new", title: "Own floor" };

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await pool().query(
    `insert into practices (code, name, zone) values ('NORTH', 'North', 'Europe/London'), ('SOUTH', 'South', 'Europe/London')`,
  );
});
beforeEach(async () => {
  await pool().query("truncate criterion_versions");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const send = (criterion: unknown, more: Record<string, string> = {}) =>
  putCriterionInForce(group, {
    ...{ criterion: JSON.stringify(criterion), practices: '["NORTH"]', practice: "NORTH" },
    ...{ from: localDay("Europe/London"), reason: "Agreed.", isNew: "", ...more },
  });

async function put(criterion: Criterion): Promise<string> {
  const answer = await send(criterion, { isNew: criterion.id === own.id ? "yes" : "" });
  if ("wrong" in answer) throw new Error(JSON.stringify(answer.wrong));
  return answer.id;
}

test("after a change the page still says what held from the beginning", async () => {
  await put({ ...floor, target: 0.9 });
  expect(await criterionPage(group, floor.id, { practice: "NORTH" })).toMatchObject({
    standing: expect.stringMatching(/^In force from the beginning, changed on \d+ \w+ \d{4}\.$/),
    atFirst: { inForce: true, demands: expect.stringContaining("80 %") },
  });
});

test("a criterion of another practice leads back to the protocol and to where it is", async () => {
  const id = await put(own);
  expect(await criterionPage(group, id, { practice: "SOUTH" })).toMatchObject({
    elsewhere: { title: own.title, practice: { code: "SOUTH" }, has: [{ code: "NORTH" }] },
  });
  await expect(editorPage(group, id, { practice: "SOUTH" })).rejects.toThrow(
    "South has no such criterion; another practice has.",
  );
  expect(await criterionPage(group, "own-nowhere", { practice: "SOUTH" })).toBeNull();
});

test("a version that begins today is withdrawn the same day, and what held before holds again", async () => {
  await put({ ...floor, target: 0.9 });
  const [version] = (await protocolWithin(leadReach(group))).versions;
  const withdrawn = { practice: "NORTH", version: String(version?.id) };
  expect((await withdrawCriterionVersion(group, withdrawn)).done).toBeDefined();
  expect(await criterionPage(group, floor.id, { practice: "NORTH" })).toMatchObject({
    standing: "In force from the beginning.",
  });
});

test("all that is missing is said at once: day, practice, reason, words and demand", async () => {
  // A criterion that demands nothing looks at no course.
  const { wholeCourse: _, ...rest } = floor;
  const bare = { ...rest, title: "", rationale: "", met: { all: [] } };
  const answer = await send(bare, { from: "", reason: "", practices: "[]" });
  expect("wrong" in answer && Object.keys(answer.wrong).sort()).toEqual([
    ...["criterion.met", "criterion.rationale", "criterion.title", "from", "practices", "reason"],
  ]);
});
