const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** 2026-07-03 as 3 Jul 2026. */
export function day(iso: string): string {
  const [year, month, date] = iso.slice(0, 10).split("-");
  return `${Number(date)} ${months[Number(month) - 1]} ${year}`;
}

/** 2026-07 as Jul 2026. */
export function month(iso: string): string {
  return `${months[Number(iso.slice(5, 7)) - 1]} ${iso.slice(0, 4)}`;
}

/** A moment as 3 Jul 2026, 09:10, in a time zone. */
export function moment(at: Date, zone: string): string {
  const parts = new Intl.DateTimeFormat("sv-SE", {
    timeZone: zone,
    dateStyle: "short",
    timeStyle: "short",
  }).format(at);
  return `${day(parts)}, ${parts.slice(11, 16)}`;
}
