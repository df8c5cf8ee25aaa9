import type { z } from "zod";

/** What is wrong with an input, field by field, in sentences. */
export type Wrong = Readonly<Partial<Record<string, string>>>;

/** Reads an input by its schema. */
export function readInput<Schema extends z.ZodType>(
  schema: Schema,
  input: unknown,
): { read: z.output<Schema> } | { wrong: Wrong } {
  const result = schema.safeParse(input);
  if (result.success) return { read: result.data };
  const wrong: Record<string, string> = {};
  for (const issue of result.error.issues) wrong[String(issue.path[0] ?? "form")] ??= issue.message;
  return { wrong };
}
