/** The fields of a form or an address whose numbers and codes a line of the log may name. Free text and references are not among them. */
const named = [
  ...["audit", "practice", "chair", "day", "period", "quarter", "import", "session", "visit"],
  ...["criterion", "canal", "measure", "whose", "outcome", "person", "grant", "mend", "row", "id"],
  ...[
    "correction",
    "dispute",
    "action",
    "file",
    "version",
    "clinicians",
    "format",
    "code",
    "months",
  ],
];
const longest = 100;

/** What a thing was about, as `audit=3 practice=MEDLAR`: of several values the first three and how many there are. */
export function aboutOf(fields: Iterable<readonly [string, unknown]>): string {
  const found = new Map<string, string[]>();
  for (const [name, value] of fields) {
    if (typeof value !== "string" || value === "" || !named.includes(name)) continue;
    if (value.length > longest) continue;
    found.set(name, [...(found.get(name) ?? []), encodeURI(value)]);
  }
  return named
    .flatMap((name) => {
      const values = found.get(name) ?? [];
      if (values.length === 0) return [];
      const more = values.length > 3 ? `,and-${values.length - 3}-more` : "";
      return [`${name}=${values.slice(0, 3).join(",")}${more}`];
    })
    .join(" ");
}
