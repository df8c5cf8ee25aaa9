import type { IntervalChart, MonthsChart } from "@/lib/views/chart-rows";
import type { DocumentBlock, DocumentTable, ReportDocument } from "@/lib/views/document/document";

/** A report that asks everything of its drawing: long tables, long words, both charts, sheets on their side. */
export function madeReport(): ReportDocument {
  return {
    title: "Root-canal treatment, 1 July to 30 September 2026",
    over: "Riverside practice · clinician K07 · third quarter 2026",
    language: "en-GB",
    facts: [
      { name: "Period", words: "1 July – 30 September 2026, records up to 4 October" },
      { name: "Records", words: "312 visits, 684 canals, 41 held rows not counted" },
      {
        name: "Fingerprint",
        words: "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
      },
      {
        name: "Version of the protocol and of what it demands",
        words: "2026-05, in force since 1 May",
      },
    ],
    summary: [
      { kind: "words", words: words(3) },
      {
        kind: "list",
        items: [
          "Irrigant ≥ 20\u202fmL in 86 % of canals (78–92)",
          words(2),
          "Ł → é, 3 × 4 ÷ 2 − 1 ≤ 5",
        ],
      },
      { kind: "heading", words: "How the figures were made" },
      {
        kind: "words",
        words: "Figures with fewer than 10 units are not flagged; “missing” is never 0.",
        soft: true,
      },
      { kind: "intervals", chart: madeIntervals(9) },
    ],
    parts: [
      {
        id: "irrigation",
        title: "Irrigation",
        note: "Volumes are those that the pump measured.",
        blocks: [
          { kind: "heading", words: "Month by month" },
          { kind: "months", chart: madeMonths() },
          {
            kind: "facts",
            facts: [
              { name: "Median", words: "18.6\u202fmL" },
              { name: "Canals", words: "684" },
            ],
          },
          { kind: "heading", words: "By clinician" },
          { kind: "intervals", chart: madeIntervals(14) },
          { kind: "heading", words: "Every canal" },
          madeTable("Canals with their volumes", 40),
        ],
      },
      {
        id: "adherence",
        title: "Adherence to the protocol",
        wide: true,
        blocks: [madeTable("Criteria by month", 40, 7), { kind: "words", words: words(4) }],
      },
      {
        id: "separations",
        title: "Separated instruments",
        blocks: [
          ...filler(9),
          { kind: "heading", words: "A heading near the end" },
          madeTable("A short table", 3),
        ],
      },
      {
        id: "method",
        title: "Method",
        blocks: [
          { kind: "words", words: words(14) },
          { kind: "words", words: words(9), soft: true },
        ],
      },
    ],
    foot: "Made from the records of the practice · 9f86d081884c7d659a2feaa0c55ad015 · not for publication",
  };
}

export function madeTable(label: string, rows: number, columns = 7): DocumentTable {
  const titles = [
    "Canal",
    "Visit",
    "Clinician",
    "Volume, mL",
    "Interval, 95 %",
    "Time, min",
    "What was written down",
  ];
  return {
    kind: "table",
    label,
    columns: titles.slice(0, columns).map((title, place) => ({
      title,
      numeric: place > 2 && place < 6,
      share: place === 6 ? 2.4 : place === 0 ? 1.3 : 1,
    })),
    rows: Array.from({ length: rows }, (_, place) => ({
      id: `${label} ${place}`,
      cells: [
        `tooth ${11 + place} MB${place % 3}`,
        `V-2026-${1000 + place}`,
        `K${place}`,
        `${(place * 1.7).toFixed(1)}`,
        `${place}.1–${place + 9}.4`,
        place % 7 === 0 ? "" : `${place} min 45 s`,
        place % 5 === 0
          ? "sodium-hypochlorite/ethylenediaminetetraacetic-acid-alternated-with-ultrasonics-throughout"
          : place % 3 === 0
            ? "rinsed after each instrument, as the protocol asks, with two pauses that nobody explained"
            : "as asked",
      ].slice(0, columns),
    })),
  };
}

export function madeIntervals(rows: number): IntervalChart {
  return {
    title:
      "Of 14 clinicians two irrigate less than the rest, after allowing for the number of figures",
    axis: axis("canals with at least 20 mL, %"),
    countsTitle: "canals",
    rows: Array.from({ length: rows }, (_, place) => ({
      id: `K${place}`,
      label:
        place === 4
          ? "K4 with a name that is longer than any column can be (locum, at two practices)"
          : `K${place} Riverside`,
      estimate: place === 3 ? null : 0.3 + place * 0.04,
      lower: place === 3 ? null : 0.2 + place * 0.035,
      upper: place === 3 ? null : 0.42 + place * 0.043,
      ...(place % 2 === 0
        ? { outer: { lower: 0.13 + place * 0.03, upper: 0.5 + place * 0.045 } }
        : {}),
      ...(place === 0
        ? { flag: "look first" as const }
        : place === 1
          ? { flag: "look" as const }
          : {}),
      ...(place === 3 ? { missing: "too few canals (3)" } : {}),
      ...(place === 5 ? { comparison: 0.61 } : {}),
      counts: `${place * 7 + 3} of ${place * 9 + 11}`,
      words: `K${place}`,
    })),
    references: [
      { value: 0.8, words: "target 80 %" },
      { value: 0.57, words: "practice 57 %" },
    ],
    notes: ["The thick line is the plain interval; the thin one allows for canals of one patient."],
    table: { head: [], rows: [] },
  };
}

export function madeMonths(): MonthsChart {
  const names = [
    "Jan",
    "Feb",
    "Mar",
    "Apr",
    "May",
    "Jun",
    "Jul",
    "Aug",
    "Sep",
    "Oct",
    "Nov",
    "Dec",
  ];
  return {
    title: "The share rose from spring on; August has no canals",
    axis: axis("canals with at least 20 mL, %"),
    rows: Array.from({ length: 24 }, (_, place) => {
      const none = place === 7 || place === 19;
      const estimate = 0.4 + 0.3 * Math.sin(place / 4);
      return {
        id: `${2025 + Math.floor(place / 12)}-${String((place % 12) + 1).padStart(2, "0")}`,
        label: place % 3 === 0 ? `${names[place % 12]} ${2025 + Math.floor(place / 12)}` : "",
        estimate: none ? null : estimate,
        lower: none ? null : estimate - 0.12,
        upper: none ? null : estimate + 0.14,
        words: "",
      };
    }),
    references: [
      { value: 0.57, words: "all practices 57 %" },
      { value: 0.55, words: "own year before 55 %" },
      { value: 0.8, words: "target 80 %" },
    ],
    table: { head: [], rows: [] },
  };
}

function axis(title: string) {
  const ticks = [0, 0.2, 0.4, 0.6, 0.8, 1];
  return {
    min: 0,
    max: 1,
    title,
    ticks: ticks.map((value) => ({ value, words: `${Math.round(value * 100)}` })),
  };
}

function filler(times: number): DocumentBlock[] {
  return Array.from({ length: times }, () => ({ kind: "words", words: words(4) }));
}

function words(times: number): string {
  const sentence =
    "In the third quarter 86 of 100 canals had at least 20 mL of irrigant, and the interval reaches from 78 % to 92 %, so that the target of 80 % is neither met nor missed beyond chance. ";
  return sentence.repeat(times).trim();
}
