import { expect, test } from "vitest";
import { describeColumns } from "@/lib/intake/describe-columns";
import { tableSchema } from "@/lib/intake/table-schema";
import { rowsIn } from "./read-text";

// Expected values are the project's own rule: a practice's own codes are own- and 1 to 60 small letters, digits, hyphens.

const steps = (step: string) =>
  rowsIn("steps.csv", `session_id,step,status\nV-1,${step},done\n`).then(([row]) => row);
const exceptions = (criterion: string) =>
  rowsIn("exceptions.csv", `session_id,criterion,reason\nV-1,${criterion},own-late\n`).then(
    ([row]) => row,
  );

test("a practice's own step and own criterion are taken, in small letters", async () => {
  expect(await steps("own-photo")).toMatchObject({
    verdict: "good",
    values: { step: "own-photo" },
  });
  expect(await steps("OWN-Photo-2")).toMatchObject({ values: { step: "own-photo-2" } });
  expect(await steps(`own-${"x".repeat(60)}`)).toMatchObject({ verdict: "good" });
  expect(await exceptions("own-upper-molars")).toMatchObject({
    verdict: "good",
    values: { criterion: "own-upper-molars", reason: "own-late" },
  });
  expect(await steps("dam")).toMatchObject({ verdict: "good", values: { step: "dam" } });
});

test.each([
  "photo",
  "own-",
  "own_photo",
  "own-é",
  "own-a b",
  "x-own-photo",
  `own-${"x".repeat(61)}`,
])("%s is held, and the remedy says what is taken", async (step) => {
  const row = await steps(step);
  expect(row).toMatchObject({ verdict: "held" });
  expect(JSON.stringify(row)).toContain("begins with own-");
});

test("other choices take no own codes", async () => {
  const [row] = await rowsIn("steps.csv", "session_id,step,status\nV-1,dam,own-done\n");
  expect(row).toMatchObject({ verdict: "held" });
});

test("the description and the Table Schema say it", () => {
  const step = describeColumns("steps").find(({ column }) => column === "step");
  expect(step?.holds).toMatch(/^one of consent, dam, .*begins with own-$/);
  const field = tableSchema("steps").fields.find(({ name }) => name === "step");
  expect(field?.constraints?.enum).toBeUndefined();
  const pattern = new RegExp(`^(${field?.constraints?.pattern})$`);
  expect(["dam", "own-photo"].map((code) => pattern.test(code))).toEqual([true, true]);
  expect(["photo", "own-", "dam2"].map((code) => pattern.test(code))).toEqual([
    false,
    false,
    false,
  ]);
});
