import type { Logged } from "./logged-pages";

const nobodys = { none: "how files are read: nobody's data" } as const;

/** Every route that answers a signed-in person, by method and folder in app. */
export const loggedRoutes = {
  "GET /api/quality/adherence": out("the adherence report as a file"),
  "GET /api/quality/prepared/[id]/[period]": out("a prepared adherence report"),
  "GET /api/quality/upkeep": out("the upkeep calendars as a file"),
  "GET /api/units/[...measure]": out("the canals or visits behind a figure as a file"),
  "GET /api/audits/[id]/report": out("the report of an audit as a file"),
  "GET /api/clinician/audits/[id]/summary": out("the own summary of an audit as a file"),
  "GET /api/person-data": out("what is kept about a person"),
  "GET /api/own-data": out("what is kept about oneself"),
  "GET /api/audits/[id]/text": { kind: "saw", words: "the texts of an audit" },
  // As it is typed, every few seconds; every revision is kept beside.
  "POST /api/audits/[id]/text": { kind: "changed", words: "wrote in an audit", hourly: true },
  "POST /api/records/import": { kind: "changed", words: "brought files in" },
  "GET /api/records/waiting/[id]/words": { kind: "saw", words: "words of a file that waits" },
  "POST /api/records/waiting/[id]/preview": {
    kind: "saw",
    words: "rows of a file that waits, by a mapping",
  },
  "POST /api/records/waiting/[id]/test": {
    kind: "saw",
    words: "the test of a mapping on a file that waits",
  },
  "GET /api/records/waiting/[id]/test": {
    none: "how far a test is; that it was begun stands there",
  },
  "GET /api/records/format/[file]": { none: "the record format: nobody's data" },
  "GET /api/records/mapping-schema": nobodys,
  "GET /api/records/mappings/[name]": nobodys,
} as const satisfies Record<string, Logged>;

export type RouteName = keyof typeof loggedRoutes;

/** Routes that do not go through app/_parts/answering. */
export const routesWithoutReading: Readonly<Record<string, string>> = {
  "POST /api/auth/[...all]": "shut but for signing in and out, which the form's action does",
  "POST /sign-out": "ends the own session: nothing is seen",
};

function out(words: string) {
  return { kind: "took out", words } as const;
}
