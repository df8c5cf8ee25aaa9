import { z } from "zod";

/** A text in one line, without what no database takes; runs of space become one. */
export function plainText(least: string | null, most: number) {
  return z
    .string()
    .transform((text) => text.replace(/\s+/g, " ").trim())
    .pipe(
      z
        .string()
        .min(least === null ? 0 : 1, least ?? undefined)
        .max(most, `At most ${most} characters.`)
        .regex(/^[^\p{Cc}\p{Surrogate}]*$/u, "It has a character in it that cannot be kept."),
    );
}

/** A coded word: small letters, digits and hyphens. */
export const codeText = z
  .string()
  .max(64, "At most 64 characters.")
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "Choose one, or make one of your own.");
