/** Where a part of a criterion is, from its top: ["met", "all", 0]. */
export type Path = readonly (string | number)[];

/** The value with the part at the path replaced; undefined takes it out of a list or an object. */
export function replacedAt<Value>(value: Value, path: Path, part: unknown): Value {
  const [key, ...rest] = path;
  if (key === undefined) return part as Value;
  if (Array.isArray(value)) {
    const place = Number(key);
    if (rest.length === 0 && part === undefined)
      return value.filter((_, at) => at !== place) as Value;
    return value.map((one, at) => (at === place ? replacedAt(one, rest, part) : one)) as Value;
  }
  const { [key]: old, ...others } = value as Record<string | number, unknown>;
  if (rest.length === 0 && part === undefined) return others as Value;
  return { ...(value as object), [key]: replacedAt(old, rest, part) } as Value;
}

/** The list with the item at a place moved by so many places; unchanged where it would leave the list. */
export function moved<Item>(list: readonly Item[], place: number, by: number): readonly Item[] {
  const to = place + by;
  const item = list[place];
  if (item === undefined || to < 0 || to >= list.length) return list;
  const rest = list.filter((_, at) => at !== place);
  return [...rest.slice(0, to), item, ...rest.slice(to)];
}

/** The part at the path; undefined where there is none. */
export function partAt(value: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (part, key) =>
      typeof part === "object" && part !== null
        ? (part as Record<string | number, unknown>)[key]
        : undefined,
    value,
  );
}
