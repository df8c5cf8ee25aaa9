/** The calendar day, YYYY-MM-DD, that an instant lies in by the clocks of a time zone. */
export function localDay(instant: string, zone: string): string {
  const parts = new Map(
    formatIn(zone)
      .formatToParts(new Date(instant))
      .map((part) => [part.type, part.value]),
  );
  return `${parts.get("year")}-${parts.get("month")}-${parts.get("day")}`;
}

// Making a format takes far longer than using it.
const formats = new Map<string, Intl.DateTimeFormat>();

function formatIn(zone: string): Intl.DateTimeFormat {
  const digits = { year: "numeric", month: "2-digit", day: "2-digit" } as const;
  const format =
    formats.get(zone) ?? new Intl.DateTimeFormat("en-GB", { timeZone: zone, ...digits });
  formats.set(zone, format);
  return format;
}
