/** The same criterion with something for each of its words: whoever counts by it needs none, and they may not be there yet. */
export function wordless(criterion: unknown): unknown {
  if (typeof criterion !== "object" || criterion === null) return criterion;
  const texts = ["title", "statement", "rationale", "source", "targetSource"];
  const { exclusions } = criterion as { exclusions?: unknown };
  return {
    ...criterion,
    ...Object.fromEntries(texts.map((text) => [text, "-"])),
    ...(Array.isArray(exclusions)
      ? { exclusions: exclusions.map((one) => ({ ...one, inWords: "-" })) }
      : {}),
  };
}
