import { z } from "zod";

/** Text that holds JSON, up to what a criterion can need; whatever it says is then read by its own schema. */
export const jsonText = z
  .string()
  .max(60_000)
  .transform((text, context): unknown => {
    try {
      return JSON.parse(text);
    } catch {
      context.addIssue({ code: "custom", message: "The form did not arrive whole." });
      return z.NEVER;
    }
  });

/** Codes of practices as JSON, each once. */
export const practiceCodes = jsonText
  .pipe(z.array(z.string().max(200)).min(1, "Choose at least one practice.").max(1000))
  .transform((codes) => [...new Set(codes)]);
