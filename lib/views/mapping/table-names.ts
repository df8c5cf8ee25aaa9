/** A table of the record format as the heading over what feeds it. */
export function tableHeading(table: string): string {
  return headings[table] ?? table;
}

const headings: Readonly<Record<string, string>> = {
  people: "People",
  sessions: "Visits",
  canals: "Canals",
  irrigation: "Deliveries of irrigant",
  instruments: "Uses of instruments",
  followups: "Follow-ups of separations",
  steps: "Steps of the protocol",
  exceptions: "Exceptions",
  incidents: "Incidents",
  upkeep: "Upkeep",
};
