import { z } from "zod";
import type { Condition } from "./condition";
import { plainText } from "./plain-text";

/** What is wrong with a part of a criterion; `path` names the part, as met.all.0.atLeast. */
export type WrongPart = { readonly path: string; readonly message: string };

/** Deepest nesting, not counting `not` and `known`, and most parts of the conditions of one criterion. */
export const deepest = 6;
export const mostParts = 60;

const name = z.string().min(1, "Choose what is looked at.").max(80);
const limit = z
  .number({ error: "Write a number." })
  .min(0, "Nothing is below 0.")
  .max(1e6)
  .nullable();
const value = z.union([plainText("Choose a value.", 80), z.number(), z.boolean()], {
  error: "Choose a value.",
});
const part = z.unknown();

/** Every kind of condition is told by the names of its parts. */
const kinds = [
  z.strictObject({ field: name, is: value }),
  z.strictObject({
    field: name,
    among: z.array(plainText("Choose a value.", 80)).min(1, "Choose at least one.").max(40),
  }),
  z.strictObject({ field: name, atLeast: limit }),
  z.strictObject({ field: name, atMost: limit }),
  z.strictObject({ recorded: name }),
  z.strictObject({ known: part }),
  z.strictObject({ all: z.array(part) }),
  z.strictObject({ any: z.array(part).min(1, "Add a row, or take this out.") }),
  z.strictObject({ not: part }),
  z.strictObject({ some: name, that: part }),
  z.strictObject({ every: name, that: part, are: part }),
  ...(["atLeast", "atMost"] as const).map((end) =>
    z.strictObject({
      total: z.array(name).min(1, "Choose what is added up.").max(6),
      of: name,
      that: part,
      [end]: limit,
    }),
  ),
  z.strictObject({ nextTo: name, one: part, other: part }),
  z.strictObject({ between: name, one: part, other: part, lies: part }),
  z.strictObject({ after: name, each: part, comes: part }),
];
const byNames = new Map(kinds.map((kind) => [Object.keys(kind.shape).sort().join(), kind]));
/** Where a condition holds further ones. */
const inner = ["known", "not", "that", "are", "one", "other", "lies", "each", "comes"];

/** Reads one condition: its shape alone, not yet whether there are such fields. `parts` counts what was read. */
export function readCondition(
  input: unknown,
  path: string,
  wrong: WrongPart[],
  parts: { count: number },
  depth = 1,
): Condition | undefined {
  const say = (message: string, at = path) => {
    wrong.push({ path: at, message });
    return undefined;
  };
  parts.count += 1;
  if (parts.count > mostParts)
    return parts.count === mostParts + 1
      ? say(`Too long: at most ${mostParts} parts. Make two criteria of it.`)
      : undefined;
  if (depth > deepest) return say("Nested too deeply: make two criteria of it.");
  if (typeof input !== "object" || input === null || Array.isArray(input))
    return say("This is no condition.");
  const kind = byNames.get(Object.keys(input).sort().join());
  if (!kind) return say("This is no condition.");
  const shape = kind.safeParse(input);
  if (!shape.success) {
    for (const issue of shape.error.issues)
      say(issue.message, [path, ...issue.path.map(String)].join("."));
    return undefined;
  }
  const read: Record<string, unknown> = { ...shape.data };
  for (const key of inner) {
    if (!(key in read)) continue;
    const below = key === "not" || key === "known" ? depth : depth + 1;
    read[key] = readCondition(read[key], `${path}.${key}`, wrong, parts, below);
  }
  for (const key of ["all", "any"]) {
    const rows = read[key];
    if (Array.isArray(rows))
      read[key] = rows.map((row, place) =>
        readCondition(row, `${path}.${key}.${place}`, wrong, parts, depth + 1),
      );
  }
  // Every part was read by its own schema; where one was not, `wrong` says so and nobody uses the whole.
  return read as Condition;
}
