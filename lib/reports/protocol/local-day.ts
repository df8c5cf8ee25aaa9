/** The calendar day that it is in a time zone, YYYY-MM-DD. */
export function localDay(zone: string, now: Date = new Date()): string {
  return new Intl.DateTimeFormat("sv-SE", { timeZone: zone, dateStyle: "short" }).format(now);
}

/** The day that it is in the first of the zones to reach it. */
export function latestLocalDay(zones: readonly string[], now: Date = new Date()): string {
  return (
    zones
      .map((zone) => localDay(zone, now))
      .sort()
      .at(-1) ?? localDay("UTC", now)
  );
}
