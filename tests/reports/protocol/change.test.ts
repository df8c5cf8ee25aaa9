import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { leadReach, protocolReach, qualityReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { dayAfter } from "@/lib/records/period";
import { criterionPage } from "@/lib/reports/protocol/criterion-page";
import { editorPage } from "@/lib/reports/protocol/editor-page";
import { endCriterion, withdrawCriterionVersion } from "@/lib/reports/protocol/end-version";
import { localDay } from "@/lib/reports/protocol/local-day";
import { protocolPage } from "@/lib/reports/protocol/protocol-page";
import { putCriterionInForce } from "@/lib/reports/protocol/put-in-force";
import { disconnect, pool } from "@/lib/store/database";
import { revision } from "@/lib/store/facts/revision";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { addTerm } from "@/lib/store/protocol/own-terms";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { freshDatabase } from "../../fresh-database";
import { viewerAs } from "../../store/comparing/viewers";

// Expected values are the project's own rules: who changes a protocol, from when, and that nothing of it is lost.

const group = viewerAs("clinical-lead");
const north = viewerAs("clinical-lead", "NORTH");
const lead = leadReach(group);
const floor = defaults.find(({ id }) => id === "hypochlorite-floor") as Criterion;
const today = localDay("Europe/London");
const { wholeCourse: _, ...plain } = floor;
const own: Criterion = {
  ...plain,
  id: "own-new",
  title: "Upper molars: 15 mL",
  population: {
    all: [
      { field: "tooth_group", is: "molar" },
      { field: "jaw", is: "upper" },
    ],
  },
  exclusions: [],
  met: {
    ...{ total: ["volume_ml"], of: "deliveries", atLeast: 15 },
    that: { field: "irrigant", is: "naocl" },
  },
};

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await pool().query(
    `insert into practices (code, name, zone) values ('NORTH', 'North', 'Europe/London'), ('SOUTH', 'South', 'Europe/London')`,
  );
});
beforeEach(async () => {
  await pool().query("truncate criterion_versions, own_terms");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const typed = (criterion: Criterion, more: Record<string, string> = {}) => ({
  criterion: JSON.stringify(criterion),
  practices: '["NORTH"]',
  from: today,
  reason: "Agreed at the meeting.",
  isNew: criterion.id === "own-new" ? "yes" : "",
  ...more,
});
const put = (criterion: Criterion, more: Record<string, string> = {}, who: Viewer = group) =>
  putCriterionInForce(who, typed(criterion, more));
const versions = async () =>
  (await protocolWithin(lead)).versions.map(
    ({ practice, criterion, inForce, from, writtenOn }) => ({
      ...{ practice, id: criterion.id, inForce, from, writtenOn },
    }),
  );

/** The page of a criterion that the practice has. */
async function pageOf(...asked: Parameters<typeof criterionPage>) {
  const page = await criterionPage(...asked);
  return page && "elsewhere" in page ? null : page;
}

test("a criterion of one's own gets its name from its title, and may begin on a day that has passed", async () => {
  const before = await revision(lead);
  expect(await put(own, { from: "2020-01-01" })).toEqual({ id: "own-upper-molars-15-ml" });
  expect(await revision(lead)).not.toBe(before);
  expect(await versions()).toEqual([
    {
      ...{ practice: "NORTH", id: "own-upper-molars-15-ml", inForce: true },
      ...{ from: "2020-01-01", writtenOn: today },
    },
  ]);
  const page = await protocolPage(group, { practice: "NORTH" });
  expect(page.shown?.view.own.map(({ title, standing }) => [title, standing])).toEqual([
    ["Upper molars: 15 mL", "since 1 Jan 2020"],
  ]);
  // Another of the same title, in another practice too, is another criterion.
  expect(await put(own, { practices: '["SOUTH"]' })).toEqual({ id: "own-upper-molars-15-ml-2" });
});

test("what the editor shows can be put in force as it is, and groups of one are stored as that one", async () => {
  const view = await editorPage(group, floor.id, { practice: "NORTH" });
  expect(view).toMatchObject({ isNew: false, practice: "NORTH" });
  if (!view) throw new Error("There is such a criterion.");
  expect(await put(view.criterion)).toEqual({ id: floor.id });
  const { versions: stored } = await protocolWithin(lead);
  expect(stored.map(({ criterion }) => criterion)).toEqual([floor]);
  expect(await editorPage(group, null, {})).toMatchObject({
    isNew: true,
    fromWords: expect.stringMatching(/^Any day/),
  });
  expect(await editorPage(group, "own-nothing", {})).toBeNull();
});

test("for every practice it is a row each, or none at all", async () => {
  const changed = { ...floor, target: 0.7 };
  expect(await put(changed, { practices: '["NORTH","SOUTH","NORTH"]' })).toEqual({ id: floor.id });
  expect((await versions()).map(({ practice }) => practice)).toEqual(["NORTH", "SOUTH"]);
  // Out of force in SOUTH for long: there any day would do, in NORTH not.
  await pool().query("delete from criterion_versions");
  await pool().query(
    `insert into criterion_versions (practice, criterion, definition, in_force, "from", written_on, reason, by)
     values ('SOUTH', $1, $2, false, '2020-01-01', '2020-01-01', 'x', 'x')`,
    [floor.id, JSON.stringify(floor)],
  );
  const past = { from: dayAfter(today, -1) };
  expect(await put(changed, { ...past, practices: '["NORTH","SOUTH"]' })).toMatchObject({
    wrong: {
      from: expect.stringMatching(
        /^A change never alters a past figure, and on \d+ \w+ \d{4} this criterion was already in force in North: choose today, \d+ \w+ \d{4}, or a later day\.$/,
      ),
    },
  });
  expect(await versions()).toHaveLength(1);
  expect(await put(changed, { ...past, practices: '["SOUTH"]' })).toEqual({ id: floor.id });
});

test("what is wrong is named by its place, and nothing is stored", async () => {
  const wrong = async (criterion: Criterion, more: Record<string, string> = {}) => {
    const answer = await put(criterion, more);
    return "wrong" in answer ? Object.keys(answer.wrong) : [];
  };
  expect(await wrong(own, { from: "2026-02-30", reason: " ", practices: "[]" })).toEqual([
    ...["from", "practices", "reason"],
  ]);
  expect(await wrong(own, { criterion: "{" })).toEqual(["criterion"]);
  expect(await wrong(own, { criterion: "7" })).toEqual(["criterion."]);
  expect(await wrong({ ...own, title: "" })).toEqual(["criterion.title"]);
  expect(await wrong({ ...own, met: { all: [] } })).toEqual(["criterion.met"]);
  const unset = defaults.find(({ id }) => id === "flow-limit") as Criterion;
  expect(await wrong(unset)).toEqual(["criterion.met.atMost"]);
  expect(await wrong({ ...own, id: "own-nobody-wrote" }, { isNew: "" })).toEqual(["form"]);
  await put(own);
  const other = { ...own, id: "own-upper-molars-15-ml", unit: "visit", treatmentPopulation: false };
  expect(await wrong({ ...other, unit: "visit" } as Criterion)).toEqual(["criterion.unit"]);
  expect(await versions()).toHaveLength(1);
});

test("an own term must be there in every practice that it is put in force in", async () => {
  await addTerm(lead, ["NORTH"], { kind: "step", code: "own-photo", words: "photograph" });
  const met = { field: "step/own-photo", is: "done" } as const;
  const photo = { ...own, title: "Photograph", met };
  expect(await put(photo, { practices: '["NORTH","SOUTH"]' })).toMatchObject({
    wrong: { practices: expect.stringMatching(/^Practice SOUTH has no own step “photo”/) },
  });
  expect(await put(photo)).toEqual({ id: "own-photograph" });
});

test("only a lead changes a protocol, and only that of their practices", async () => {
  for (const role of ["quality-officer", "administrator", "clinician", "record-keeper"] as const)
    await expect(put(own, {}, viewerAs(role, null, "NORTH/C1"))).rejects.toThrow(Refused);
  await expect(put(own, { practices: '["SOUTH"]' }, north)).rejects.toThrow(Refused);
  await expect(put(own, { practices: '["NORTH","SOUTH"]' }, north)).rejects.toThrow(Refused);
  await expect(put(own, { practices: '["NOWHERE"]' })).rejects.toThrow(Refused);
  await expect(editorPage(north, floor.id, { practice: "SOUTH" })).rejects.toThrow(/SOUTH/);
  await expect(
    addTerm(qualityReach(viewerAs("quality-officer")), ["NORTH"], {
      ...{ kind: "step", code: "own-x", words: "x" },
    }),
  ).rejects.toThrow(Refused);
  expect(await versions()).toEqual([]);
});

test("clinicians, officers and administrators read it; a record keeper does not", async () => {
  for (const role of ["quality-officer", "administrator", "clinician", "clinical-lead"] as const) {
    const page = await pageOf(viewerAs(role, "NORTH", "NORTH/C1"), floor.id, {});
    expect(page).toMatchObject({ title: floor.title, mayChange: role === "clinical-lead" });
    expect(page?.practices.map(({ code }) => code)).toEqual(
      role === "clinician" ? ["NORTH", "SOUTH"] : ["NORTH"],
    );
  }
  await expect(protocolPage(viewerAs("record-keeper"), {})).rejects.toThrow(Refused);
  expect(() => protocolReach(viewerAs("record-keeper"))).toThrow(Refused);
  await expect(protocolPage(north, { practice: "SOUTH" })).rejects.toThrow(
    "There is no practice SOUTH among those you may see.",
  );
  expect(await pageOf(group, "no-such-criterion", {})).toBeNull();
});

test("a criterion goes out of force from today on at the earliest, and only where it is in force", async () => {
  const end = (more: Record<string, string> = {}, who = group) =>
    endCriterion(who, {
      ...{ practice: "NORTH", id: floor.id, from: today, reason: "Not asked for.", ...more },
    });
  expect((await end({ from: dayAfter(today, -1) })).wrong).toHaveProperty("from");
  expect((await end({ id: "flow-limit" })).wrong).toHaveProperty("from");
  expect((await end({ reason: "" })).wrong).toHaveProperty("reason");
  await expect(end({ practice: "SOUTH" }, north)).rejects.toThrow(Refused);
  expect((await end()).done).toBeDefined();
  expect(await pageOf(group, floor.id, { practice: "NORTH" })).toMatchObject({
    inForce: false,
  });
  expect(await pageOf(group, floor.id, { practice: "SOUTH" })).toMatchObject({
    inForce: true,
  });
  expect((await end()).wrong).toHaveProperty("from");
});

test("a version that has not begun is withdrawn and kept; one that began before today stays", async () => {
  await put(floor, { from: dayAfter(today, 1) });
  await put(floor);
  const { rows } = await pool().query<{ id: number; late: boolean }>(
    `select id, "from" > $1::date as late from criterion_versions order by late desc`,
    [today],
  );
  await pool().query(`update criterion_versions set "from" = "from" - 1 where id = $1`, [
    rows[1]?.id,
  ]);
  const withdraw = (id: unknown, who = group, practice = "NORTH") =>
    withdrawCriterionVersion(who, { practice, version: String(id) });
  expect((await withdraw(rows[1]?.id)).wrong).toHaveProperty("form");
  expect((await withdraw(rows[0]?.id, group, "SOUTH")).wrong).toHaveProperty("form");
  await expect(withdraw(rows[0]?.id, viewerAs("clinical-lead", "SOUTH"))).rejects.toThrow(Refused);
  const before = await revision(lead);
  expect((await withdraw(rows[0]?.id)).done).toBeDefined();
  expect(await revision(lead)).not.toBe(before);
  expect((await withdraw(rows[0]?.id)).wrong).toHaveProperty("form");
  expect((await versions()).map(({ from }) => from)).toEqual([dayAfter(today, -1)]);
  const page = await pageOf(group, floor.id, { practice: "NORTH" });
  expect(page?.withdrawn.map(({ words }) => words)).toEqual([
    expect.stringMatching(
      /Agreed at the meeting\. \(A clinical-lead\); withdrawn by A clinical-lead/,
    ),
  ]);
  expect(page?.versions.map(({ state }) => state)).toEqual(["in force"]);
});
