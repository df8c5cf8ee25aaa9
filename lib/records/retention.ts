/** What can be deleted by age: months are counted back from today. Signed audits are none of them. */
export const retained = ["records", "notes", "log", "prepared"] as const;
export type Retained = (typeof retained)[number];

/** Months that each is kept; what is not named is kept for good. */
export type Retention = Readonly<Partial<Record<Retained, number>>>;

/** The first day that is kept. */
export function keptFrom(today: string, months: number): string {
  const [year = 0, month = 0, day = 0] = today.split("-").map(Number);
  const first = new Date(Date.UTC(year, month - 1 - months, 1));
  // The 31st of a month without one is its last day.
  const last = new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1, 0)).getUTCDate();
  first.setUTCDate(Math.min(day, last));
  return first.toISOString().slice(0, 10);
}
