import type { Logged } from "./logged-pages";

/** Every verb of the command that reads or changes what is somebody's; whoever runs it holds the home. */
export const loggedVerbs = {
  "canal-audit import": { kind: "changed", words: "brought files in by the command" },
  "canal-audit watch": { kind: "changed", words: "took a finished file from a folder" },
  "canal-audit figures": { kind: "saw", words: "figures, by the command" },
  "canal-audit export adherence": {
    kind: "took out",
    words: "the adherence report, by the command",
  },
  "canal-audit rebuild": { kind: "changed", words: "derived everything anew from the records" },
  "canal-audit verify": { kind: "saw", words: "a signed audit proven, by the command" },
  "canal-audit prepare": { kind: "changed", words: "prepared what was due, by the command" },
  "canal-audit backup": { kind: "took out", words: "a backup of everything" },
  "canal-audit restore": { kind: "changed", words: "restored a backup" },
  "canal-audit export records": { kind: "took out", words: "every record, by the command" },
  "canal-audit people add": { kind: "changed", words: "added a person by the command" },
  "canal-audit people list": { kind: "saw", words: "who can sign in, by the command" },
  "canal-audit people data": {
    kind: "took out",
    words: "what is kept about a person, by the command",
  },
  "canal-audit people leave": {
    kind: "changed",
    words: "removed a leaver's account and name, by the command",
  },
  "canal-audit people second-factor": {
    kind: "changed",
    words: "changed the second factor of people, by the command",
  },
  "canal-audit patients rotate-key": { kind: "changed", words: "rotated the patient key" },
  "canal-audit retention --show": { none: "months and counts: nobody's data" },
  "canal-audit retention --set": { kind: "changed", words: "set how long things are kept" },
  "canal-audit retention --run": {
    kind: "changed",
    words: "deleted what was older than it is kept",
  },
  "canal-audit log": { kind: "saw", words: "the log, by the command" },
  "canal-audit log --check": { none: "reads every line and shows none" },
} as const satisfies Record<string, Logged>;

export type VerbName = keyof typeof loggedVerbs;
