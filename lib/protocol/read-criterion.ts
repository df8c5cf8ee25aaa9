import { z } from "zod";
import { isOwnCode } from "@/lib/records/own-code";
import type { Condition } from "./condition";
import { formatSteps, isWhatever, senseOf } from "./condition-sense";
import { type Criterion, unitKinds } from "./criterion";
import { defaults } from "./defaults/defaults";
import { listsIn } from "./looked-at";
import { codeText, plainText } from "./plain-text";
import { readCondition, type WrongPart } from "./read-condition";

const share = z.number({ error: "Write per cent from 0 to 100." }).min(0).max(1);
const step = codeText.refine(
  (code) => formatSteps.includes(code) || isOwnCode(code),
  "There is no such step.",
);
const exclusion = z.strictObject({
  reason: codeText,
  inWords: plainText("Say in words what is left out.", 160),
  when: z.unknown(),
});
const shape = z.strictObject({
  id: z
    .string()
    .refine(
      (id) => defaults.some((one) => one.id === id) || isOwnCode(id),
      "A criterion of your own has a name that begins with own-.",
    ),
  title: plainText("Give it a title.", 80),
  statement: plainText("Say in one sentence what is demanded.", 400),
  rationale: plainText("Say why it is demanded.", 600),
  source: plainText("Say where it comes from, or that it is common practice.", 300),
  unit: z.enum(unitKinds, { error: "Choose what is counted." }),
  treatmentPopulation: z.boolean(),
  population: z.unknown(),
  exclusions: z.array(exclusion).max(12, "At most 12 reasons to leave out."),
  met: z.unknown(),
  exceptions: z
    .strictObject({ steps: z.array(step).max(20), reasons: z.array(codeText).max(40) })
    .nullable(),
  target: share.gt(0, "Write per cent over 0 and up to 100."),
  targetSource: plainText("Say whose choice the target is.", 200),
  completenessFloor: share.nullable(),
  byClinician: z.boolean(),
  wholeCourse: z.literal(true).optional(),
});

/**
 * Reads a criterion that comes from outside: its shape, and whether it asks only for what its units have.
 * @param options.inForce refuses limits that nobody has set
 */
export function readCriterion(
  input: unknown,
  options: { readonly inForce?: boolean } = {},
): { readonly read: Criterion } | { readonly wrong: readonly WrongPart[] } {
  const result = shape.safeParse(input);
  if (!result.success)
    return {
      wrong: result.error.issues.map(({ path, message }) => ({
        path: path.map(String).join("."),
        message,
      })),
    };
  const wrong: WrongPart[] = [];
  const parts = { count: 0 };
  const condition = (raw: unknown, path: string) => readCondition(raw, path, wrong, parts);
  const { wholeCourse, ...rest } = result.data;
  const population = condition(rest.population, "population");
  const exclusions = rest.exclusions.map((one, place) => ({
    ...one,
    when: condition(one.when, `exclusions.${place}.when`),
  }));
  const met = condition(rest.met, "met");
  if (wrong.length > 0) return { wrong };
  // Nothing was wrong, so every condition was read.
  const read = {
    ...rest,
    population,
    exclusions,
    met,
    ...(wholeCourse ? { wholeCourse } : {}),
  } as Criterion;
  const senseless = [...conditionsOf(read, options.inForce === true), ...wholeSense(read)];
  return senseless.length > 0 ? { wrong: senseless } : { read };
}

function conditionsOf(criterion: Criterion, inForce: boolean): WrongPart[] {
  const place = { unit: criterion.unit, unset: !inForce };
  return [
    ...senseOf(criterion.population, place, "population"),
    ...criterion.exclusions.flatMap(({ when }, at) =>
      senseOf(when, place, `exclusions.${at}.when`),
    ),
    ...senseOf(criterion.met, place, "met"),
  ];
}

/** What holds of the criterion as a whole. */
function wholeSense(criterion: Criterion): WrongPart[] {
  const { id, unit, met, exclusions, population } = criterion;
  const found: WrongPart[] = [];
  const say = (path: string, message: string, when: boolean) => {
    if (when) found.push({ path, message });
  };
  const first = defaults.find((one) => one.id === id);
  say(
    "unit",
    "What it counts stays as it is: add one of your own instead.",
    first !== undefined && first.unit !== unit,
  );
  say("met", "Say what counts as met.", isWhatever(met));
  const reasons = exclusions.map(({ reason }) => reason);
  for (const [at, { reason, when }] of exclusions.entries()) {
    say(`exclusions.${at}.reason`, "Each reason once.", reasons.indexOf(reason) !== at);
    say(`exclusions.${at}.when`, "This would leave out every unit.", isWhatever(when));
  }
  const inCanal = unit !== "visit" && unit !== "chair-day";
  say(
    "treatmentPopulation",
    "Only canals belong to the treatment population.",
    criterion.treatmentPopulation && !inCanal,
  );
  say(
    "byClinician",
    "A day of a chair is no clinician's.",
    criterion.byClinician && unit === "chair-day",
  );
  say(
    "exceptions",
    "No exception can be entered for a day of a chair.",
    criterion.exceptions !== null && unit === "chair-day",
  );
  const lists = [population, met, ...exclusions.map(({ when }) => when)].flatMap(listsIn);
  const course = lists.includes("course");
  say(
    "met",
    "Only “Record complete” looks at what other criteria lack.",
    lists.includes("gaps") && id !== "record-complete",
  );
  say(
    "population",
    "A whole course ends with the canal's filling: demand here that the canal was filled.",
    course && !demandsFilled(population),
  );
  say(
    "wholeCourse",
    "It looks at the whole course: its units count for everyone who worked in it.",
    course !== (criterion.wholeCourse === true),
  );
  return found;
}

function demandsFilled(condition: Condition): boolean {
  if ("field" in condition)
    return condition.field === "filled" && "is" in condition && condition.is === true;
  if ("known" in condition) return demandsFilled(condition.known);
  return "all" in condition && condition.all.some(demandsFilled);
}
