import type { Values } from "@/lib/records/column";
import type { TableName } from "@/lib/records/tables";
import type { Problem } from "./problem";

type Cells = Readonly<Record<string, string>>;
type Found = { readonly column: string } & Problem;

/** What is wrong between the columns of a row, each of which is right by itself. */
export function rowProblems(table: TableName, values: Values, cells: Cells): Found[] {
  return rules[table]?.(values, cells) ?? [];
}

/** A visit longer than a day is a wrong date. */
const longestVisit = 24 * 3_600_000;

const rules: Partial<Record<TableName, (values: Values, cells: Cells) => Found[]>> = {
  sessions: ({ started_at, ended_at }, cells) => {
    if (typeof started_at !== "string" || typeof ended_at !== "string") return [];
    const length = Date.parse(ended_at) - Date.parse(started_at);
    if (length < 0)
      return [
        {
          column: "ended_at",
          found: cells.ended_at ?? ended_at,
          remedy: `the visit ends before it starts (${cells.started_at}); correct one of the two`,
        },
      ];
    if (length > longestVisit)
      return [
        {
          column: "ended_at",
          found: cells.ended_at ?? ended_at,
          remedy: `the visit lasts longer than a day (from ${cells.started_at}); correct one of the two`,
        },
      ];
    return [];
  },
  instruments: ({ uses, separated }, cells) => {
    if (uses === undefined && cells.uses?.trim()) return [];
    const stands = Number(uses ?? 1);
    if (stands > 1 && cells.separated?.trim().toLowerCase() === "yes") {
      return [
        {
          column: "separated",
          found: "yes",
          remedy: `the row stands for ${stands} uses; write how many of them separated`,
        },
      ];
    }
    if (typeof separated !== "number" || separated <= stands) return [];
    return [
      {
        column: "separated",
        found: String(separated),
        remedy: `the row stands for ${stands}; no more than that can have separated`,
      },
    ];
  },
  steps: ({ status, reason }) =>
    status === "excepted" && reason === undefined
      ? [
          {
            column: "reason",
            found: "",
            remedy: "an excepted step needs the code of its reason, as not-possible",
          },
        ]
      : [],
  people: ({ from, to }) =>
    typeof from === "string" && typeof to === "string" && to < from
      ? [{ column: "to", found: to, remedy: `it is before from (${from}); correct one of the two` }]
      : [],
};
