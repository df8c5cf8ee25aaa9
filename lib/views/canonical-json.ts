import canonicalize from "canonicalize";

/**
 * A value as canonical JSON by RFC 8785, so that what is the same has the same bytes: keys in the order of their UTF-16 code units, no
 * blanks, numbers as ECMAScript writes them. Numbers are taken to 12 significant digits first, as the last digits of a sum are the
 * machine's; −0 is 0, a date its ISO 8601 text, what is undefined is left out.
 *
 * @throws Error where a number is not finite
 */
export function canonicalJson(value: unknown): string {
  const text = canonicalize(rounded(value));
  if (text === undefined) throw new Error("there is nothing to write");
  return text;
}

function rounded(value: unknown): unknown {
  if (typeof value === "number" && Number.isFinite(value)) return Number(value.toPrecision(12)) + 0;
  if (Array.isArray(value)) return value.map(rounded);
  if (value === null || typeof value !== "object" || value instanceof Date) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, rounded(one)]));
}
