/** What a thing that can be asked for leaves in the log: a kind of line with words for it, or why it leaves none. */
export type Logged =
  | {
      readonly kind: "saw" | "changed" | "signed" | "took out" | "signed in";
      readonly words: string;
      /** It comes again and again: one line a person, thing and hour. What was seen is so anyway. */
      readonly hourly?: true;
    }
  | { readonly none: string };

/** Every page that reads through app/_parts/within, by its folder in app. */
export const loggedPages = {
  "/lead": saw("the practice's quarter by clinician"),
  "/lead/measures/[...measure]": saw("a measure compared between clinicians"),
  "/clinician": saw("the own quarter"),
  "/clinician/audits": saw("the own audits"),
  "/clinician/audits/[id]": saw("the own page of an audit"),
  "/clinician/audits/[id]/summary": saw("the own summary of an audit"),
  "/quality": saw("the practice's adherence"),
  "/quality/criteria/[criterion]": saw("a criterion by practice and chair"),
  "/quality/prepared": saw("which adherence reports were prepared"),
  "/quality/report": saw("the adherence report"),
  "/safety": saw("safety: single visits with a separation or incident"),
  "/upkeep": saw("the upkeep calendars"),
  "/units/[...measure]": saw("the single canals or visits behind a figure"),
  "/visits/[practice]/[session]": saw("a visit's record"),
  "/explanations/[criterion]/[practice]/visit/[session]": saw("why a visit met a criterion or not"),
  "/explanations/[criterion]/[practice]/chair/[chair]/[day]": saw(
    "why a chair's day met a criterion or not",
  ),
  "/exceptions": saw("the exceptions"),
  "/exceptions/[practice]/[session]/[criterion]": saw("an exception at a visit"),
  "/audits": saw("the list of audits"),
  "/audits/prepared": saw("which audits were prepared"),
  "/audits/[id]/actions": saw("an audit: what was agreed"),
  "/audits/[id]/confirming": saw("an audit: what clinicians confirm"),
  "/audits/[id]/data": saw("an audit: the state of the data"),
  "/audits/[id]/history": saw("an audit: its history"),
  "/audits/[id]/look": saw("an audit: the closer look"),
  "/audits/[id]/report": saw("an audit: the report"),
  "/audits/[id]/results": saw("an audit: the results"),
  "/audits/[id]/scope": saw("an audit: the scope"),
  "/audits/[id]/signature": saw("an audit: the signature"),
  "/records": saw("the records' overview"),
  "/records/held": saw("the held rows"),
  "/records/held/mends": saw("the mends made"),
  "/records/held/preview": saw("what a mend would change"),
  "/records/held/rows/[id]": saw("a held row"),
  "/records/corrections": saw("newer versions of rows"),
  "/records/coverage": saw("the days that records cover"),
  "/records/imports/[id]": saw("an import"),
  "/records/waiting": saw("the files that wait"),
  "/records/waiting/[id]": saw("rows of a file that waits"),
  "/records/mappings": none("how files are read: nobody's data"),
  "/records/mappings/[name]": none("how a file is read: nobody's data"),
  "/records/mappings/[name]/change": none("how a file is read: nobody's data"),
  "/records/format": none("the record format: nobody's data"),
  "/protocol": none("the protocol is no secret and about nobody"),
  "/protocol/[criterion]": none("the protocol is no secret and about nobody"),
  "/protocol/new": none("a blank form; what it counts is an action"),
  "/administration": saw("who can sign in"),
  "/administration/person/[id]": saw("an account"),
  "/administration/log": saw("the log"),
  "/administration/practices": none("names and codes of practices: about nobody"),
  "/administration/levels": none("the levels of flags: about nobody"),
} as const satisfies Record<string, Logged>;

export type PageName = keyof typeof loggedPages;

/** Pages that read nothing of anybody and so do not go through within. */
export const pagesWithoutReading: Readonly<Record<string, string>> = {
  "/": "leads to the viewer's first page",
  "/audits/[id]": "leads to the audit's first open step",
  "/protocol/[criterion]/change": "reads through the editor's frame, as /protocol/new",
  "/account": "the viewer's own sessions and second factor; what is kept about them is a route",
  "/sign-in/second": "a form; signing in leaves its line where the session begins",
  "/sign-in": "a form; signing in is an action",
};

function saw(words: string) {
  return { kind: "saw", words } as const;
}

function none(why: string) {
  return { none: why } as const;
}
