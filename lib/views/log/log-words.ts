import { commandLine, type LogLine, withoutAccount } from "@/lib/records/log-line";
import { moment } from "../day";
import { loggedActs } from "./logged-acts";
import { type Logged, loggedPages } from "./logged-pages";
import { loggedRoutes } from "./logged-routes";
import { loggedVerbs } from "./logged-verbs";
import { loggedAttempts, loggedWork } from "./logged-work";

/** A line of the log as the page lists it. */
export type LineView = {
  readonly id: number;
  readonly at: string;
  readonly who: string;
  /** The kind of line. */
  readonly did: string;
  readonly what: string;
  readonly about: string;
};

const all: Readonly<Record<string, { readonly words: string } | Logged>> = {
  ...loggedPages,
  ...loggedActs,
  ...loggedRoutes,
  ...loggedVerbs,
  ...loggedAttempts,
  ...loggedWork,
  "sign-in": { kind: "signed in", words: "signed in" },
  log: { kind: "changed", words: "cut the log at what is older than is kept" },
};

/** A line in words; whoever has no account any more is told by its id alone. */
export function lineView(line: LogLine & { readonly name: string | null }, zone: string): LineView {
  const logged = all[line.what];
  return {
    id: line.id,
    at: moment(new Date(line.at), zone),
    who: line.name ?? withoutName(line.person),
    did: line.kind,
    what: logged && "words" in logged ? logged.words : line.what,
    about: line.about
      .split(" ")
      .map((one) => decoded(one.replace("=", " ")))
      .join(" · "),
  };
}

function withoutName(person: string): string {
  if (person === commandLine) return "the command line";
  return withoutAccount.includes(person) ? person : `somebody who left (${person.slice(0, 8)})`;
}

function decoded(text: string): string {
  try {
    return decodeURI(text);
  } catch {
    return text;
  }
}
