import { afterAll, beforeAll, expect, test } from "vitest";
import { Refused } from "@/lib/access/refused";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { previewCriterion } from "@/lib/reports/protocol/preview";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { editable, sendable } from "@/lib/views/protocol/edit/editable";
import { freshDatabase } from "../../fresh-database";
import { bringIn, visit } from "../../store/bring-in";
import { viewerAs } from "../../store/comparing/viewers";

// Expected counts are worked by hand from the few records below.

const floor = defaults.find(({ id }) => id === "hypochlorite-floor") as Criterion;
const lead = viewerAs("clinical-lead");

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  const at = (session_id: string, practice: string, day: string, tooth: string) => ({
    ...{ ...visit, session_id, practice, chair: `${practice}-1`, patient: `hash-${session_id}` },
    ...{ started_at: `${day}T08:10:00.000Z`, ended_at: `${day}T09:00:00.000Z`, tooth },
  });
  const canal = (session_id: string, name: string) => ({
    ...{ session_id, canal: name, preparation: "rotary", filled: true },
  });
  const naocl = (session_id: string, name: string, volume_ml: number | undefined) => ({
    ...{ session_id, canal: name, seq: 1, irrigant: "naocl", delivery: "syringe", volume_ml },
  });
  await bringIn({
    sessions: [
      at("V-1", "OAK", "2026-07-03", "26"),
      at("V-2", "OAK", "2026-07-04", "36"),
      at("V-3", "ELM", "2026-08-04", "16"),
      // The quarter before.
      at("V-4", "OAK", "2026-06-04", "26"),
    ],
    canals: [
      ...[canal("V-1", "MB1"), canal("V-1", "DB"), canal("V-1", "P"), canal("V-2", "D")],
      ...[canal("V-3", "P"), canal("V-4", "P")],
    ],
    irrigation: [
      ...[naocl("V-1", "MB1", 16), naocl("V-1", "DB", 12), naocl("V-1", "P", undefined)],
      ...[naocl("V-2", "D", 20), naocl("V-3", "P", 15), naocl("V-4", "P", 20)],
    ],
    exceptions: [
      { session_id: "V-1", criterion: "hypochlorite-floor", canal: "DB", reason: "allergy" },
    ],
  });
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const preview = async (criterion: unknown, practices: string[], isNew = "", who = lead) =>
  previewCriterion(who, {
    ...{ criterion: JSON.stringify(criterion), practices: JSON.stringify(practices), isNew },
  });
const rows = async (criterion: unknown, practices: string[], isNew = "") => {
  const answer = await preview(criterion, practices, isNew);
  if ("wrong" in answer) throw new Error(JSON.stringify(answer.wrong));
  return Object.fromEntries(
    answer.view.rows.map(({ words, proposed, now }) => [words, [proposed, now]]),
  );
};
const upper: Criterion = {
  ...floor,
  id: "own-new",
  ...{ title: "", statement: "", rationale: "", source: "", exclusions: [] },
  population: {
    all: [
      { field: "filled", is: true },
      { field: "jaw", is: "upper" },
    ],
  },
  met: {
    ...{ total: ["volume_ml"], of: "course", atLeast: 15 },
    that: { field: "irrigant", is: "naocl" },
  },
};

test("a changed criterion is counted over the last quarter beside the version in force", async () => {
  const changed = { ...floor, met: { ...floor.met, atLeast: 16 } };
  expect(await rows(changed, ["OAK"])).toMatchObject({
    ...{ "Looked at": ["4", "4"], Eligible: ["4", "4"], Met: ["2", "3"], "Not met": ["0", "0"] },
    ...{ "Excepted: allergy": ["1", "0"], "Not recorded": ["1", "1"] },
    Rate: ["66.7 %", "75.0 %"],
  });
  expect(await rows(changed, ["OAK", "ELM"])).toMatchObject({
    Met: ["2", "4"],
    "Not met": ["1", "0"],
  });
});

test("a new one needs no words yet, stands beside nothing, and its examples lead to the visits", async () => {
  const answer = await preview(upper, ["OAK", "ELM"], "yes");
  if ("wrong" in answer) throw new Error(JSON.stringify(answer.wrong));
  const { view } = answer;
  expect(view.beside).toBe(false);
  expect(view.finding).toMatch(
    /^July to September 2026 so far, recorded up to 4 Aug 2026: it would have applied to 4 canals and been met in 2 of them /,
  );
  expect(view.examples.map(({ outcome, items }) => [outcome, items.length])).toEqual([
    ...[
      ["met", 2],
      ["not met", 1],
      ["not recorded", 1],
    ],
  ]);
  expect(view.examples[1]?.items).toEqual([
    { words: "OAK, 3 Jul 2026, tooth 26, canal DB", address: "/visits/OAK/V-1" },
  ]);
});

test("examples of one that is there lead to their explanation", async () => {
  const answer = await preview(sendable(editable(floor)), ["ELM"]);
  expect(answer).toMatchObject({
    view: {
      examples: [
        { items: [{ address: "/explanations/hypochlorite-floor/ELM/visit/V-3?canal=P" }] },
      ],
    },
  });
});

test("what cannot be counted says what to set; a practice beyond the reach is refused", async () => {
  const { wholeCourse: _, ...nothing } = { ...upper, met: { all: [] } };
  expect(await preview(nothing, ["OAK"], "yes")).toEqual({
    wrong: { "criterion.met": "Say what counts as met." },
  });
  expect(await preview(7, ["OAK"])).toHaveProperty("wrong");
  expect(await preview({ ...upper, exclusions: [7] }, ["OAK"])).toHaveProperty("wrong");
  expect(await preview(upper, [])).toHaveProperty("wrong.practices");
  const oak = viewerAs("clinical-lead", "OAK");
  await expect(preview(upper, ["ELM"], "yes", oak)).rejects.toThrow(Refused);
  await expect(preview(upper, ["OAK"], "yes", viewerAs("quality-officer"))).rejects.toThrow(
    Refused,
  );
  // A limit that nobody has set: nothing can be told of any unit.
  const unset = { ...upper, met: { ...upper.met, atLeast: null } };
  expect(await rows(unset, ["OAK"], "yes")).toMatchObject({ "Not recorded": ["3", ""] });
});
