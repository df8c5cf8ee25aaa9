import type { Known, Somebody } from "./everybody";

/** An address that nobody should type, as somebody to whom the page is open. */
export interface Tampered {
  who: Somebody;
  address: string;
  /** What must stand in the answer, where it matters what it says. */
  says?: string;
}

/** Tampered parameters; each must be answered by a page that says what is wrong, or passed over, never by a failure. */
export function tamperedAddresses({ visit }: Known): Tampered[] {
  const pages: [Somebody, string][] = [
    ["group lead", "/lead"],
    ["group lead", "/lead/measures/volume"],
    ["group lead", "/lead/measures/separation-per-use"],
    ["clinician M-03", "/clinician"],
    ["quality officer", "/quality"],
    ["quality officer", "/quality/report"],
    ["quality officer", "/api/quality/adherence"],
    ["group lead", "/exceptions"],
    ["group lead", "/safety"],
    ["quality officer", "/safety"],
    ["quality officer", "/upkeep"],
    ["quality officer", "/api/quality/upkeep"],
    ["record keeper", "/records"],
  ];
  const few = numbers.filter((_, place) => place % 4 === 2);
  const lists: [Somebody, string, string[]][] = [
    ["group lead", "/lead/measures/volume", few],
    ["clinician M-03", "/clinician", few],
    ["clinician M-03", "/exceptions", few],
    ["group lead", "/exceptions", few],
    ["group lead", "/safety", few],
    ["record keeper", "/records/held", numbers],
  ];
  const ofPractices = pages.filter(([who]) => who !== "clinician M-03");
  return [
    ...pages.flatMap(([who, path]) => [
      { who, address: `${path}?period=nonsense`, says: "is no period" },
      ...periods.map((period) => ({
        who,
        address: `${path}?period=${encodeURIComponent(period)}`,
      })),
      { who, address: `${path}?period=2026-Q2&period=2026-Q3&practice=MEDLAR&practice=QUINCE` },
    ]),
    ...ofPractices.flatMap(([who, path]) =>
      practices.map((code) => ({
        ...{ who, address: `${path}?period=2026-Q2&practice=${encodeURIComponent(code)}` },
        says: "There is no practice",
      })),
    ),
    ...lists.flatMap(([who, path, some]) =>
      some.map((number) => ({ who, address: `${path}?period=2026-Q2&${listAddress(number)}` })),
    ),
    // A practice beyond one's own is answered as one that does not exist.
    ...(["/lead", "/lead/measures/volume"] as const).flatMap((path) =>
      ["SPINDLE", "NOWHERE"].map((code) => ({
        ...{ who: "MEDLAR lead" as const, address: `${path}?period=2026-Q2&practice=${code}` },
        says: `There is no practice ${code} among those you may see.`,
      })),
    ),
    ...["MEDLAR", "NOWHERE"].map((code) => ({
      ...{
        who: "SPINDLE quality officer" as const,
        address: `/quality?period=2026-Q2&practice=${code}`,
      },
      says: `There is no practice ${code} among those you may see.`,
    })),
    ...[visit.own, "' or 1=1 --", "%", "x".repeat(3000), "\u0001", "é/é"].map((id) => ({
      ...{ who: "clinician M-06" as const, address: `/visits/MEDLAR/${encodeURIComponent(id)}` },
    })),
    ...["%00", "..%2f"].map((id) => ({
      who: "group lead" as const,
      address: `/visits/MEDLAR/${id}`,
    })),
    ...["' or 1=1 --", "%", "\u0001", "__proto__"].map((id) => ({
      ...{
        who: "group lead" as const,
        address: `/exceptions/MEDLAR/${encodeURIComponent(id)}/${encodeURIComponent(id)}?canal=${encodeURIComponent(id)}`,
      },
    })),
    ...practices.map((code) => ({
      ...{ who: "group lead" as const, address: `/protocol?practice=${encodeURIComponent(code)}` },
      says: "There is no practice",
    })),
    ...["' or 1=1 --", "%", "\u0001", "__proto__", "constructor"].flatMap((id) => [
      ...["", "/change"].map((end) => ({
        ...{ who: "group lead" as const, address: `/protocol/${encodeURIComponent(id)}${end}` },
      })),
    ]),
    ...["volume/volume", "criterion", "Volume", "%27", "%00", "__proto__", "constructor"].map(
      (id) => ({
        ...{ who: "group lead" as const, address: `/lead/measures/${id}` },
      }),
    ),
    ...["0", "-1", "1e3", "9".repeat(40), "1%20or%201=1", "%00"].map((id) => ({
      ...{ who: "record keeper" as const, address: `/records/imports/${id}` },
    })),
    ...["%00", "' or 1=1 --", "__proto__"].map((id) => ({
      ...{
        who: "administrator" as const,
        address: `/administration/person/${encodeURIComponent(id)}`,
      },
    })),
    ...["../../package.json", "..%2fpackage.json", "sessions.exe"].map((name) => ({
      ...{
        who: "record keeper" as const,
        address: `/api/records/format/${encodeURIComponent(name)}`,
      },
    })),
  ];
}

/** Periods that exist at the edge of the calendar, or not at all. */
const periods = [
  ...[
    "",
    "2026-Q5",
    "2026-13",
    "0000",
    "0000-Q1",
    "0001-01",
    "9999",
    "9999-Q4",
    "9999-12",
    "2026-Q3' or '1'='1",
  ],
  ...[
    "2026-07-31..2026-07-01",
    "2026-02-30..2026-03-01",
    "0001-01-01..9999-12-31",
    "\u0000",
    "２０２６",
    "<script>",
  ],
];
const practices = [
  "' or 1=1",
  "MEDLAR'; drop table users; --",
  "medlar",
  "\u0000",
  "%",
  "x".repeat(2000),
];
const numbers = ["0", "-1", "99999999999999999999", "1e9", "NaN", "1.5", "\u0000", "x"];

/** The names that lists of pages go by. */
function listAddress(number: string): string {
  const value = encodeURIComponent(number);
  return `page=${value}&at=${value}&missed=isolation&import=${value}&clinician=${value}&table=${value}&state=${value}`;
}
