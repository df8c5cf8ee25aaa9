/** Languages whose month names are understood. */
const languages = ["en", "de", "fr", "es"];

const months = new Map<string, number>();
for (const language of languages)
  for (const style of ["long", "short"] as const)
    for (let month = 1; month <= 12; month += 1) {
      const name = new Intl.DateTimeFormat(language, { month: style, timeZone: "UTC" });
      months.set(bare(name.format(Date.UTC(2026, month - 1, 15))), month);
    }
// "Sept" and "Sep" are both written for the ninth month.
for (const name of ["sep", "sept"]) months.set(name, 9);

/** The month of a name, whole or short, whatever its case, accents and points; undefined where it is none. */
export function monthNamed(name: string): number | undefined {
  return months.get(bare(name));
}

function bare(name: string): string {
  return name
    .normalize("NFD")
    .replace(/\p{M}|\./gu, "")
    .toLowerCase();
}
