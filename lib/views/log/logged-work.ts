import type { Logged } from "./logged-pages";

/** What is tried at the sign-in and fails; whoever tries is told no more than before. */
export const loggedAttempts = {
  "wrong password": refused("signing in: the password was wrong"),
  "wrong second factor": refused("signing in: the second factor was wrong"),
  "too many attempts": refused("signing in: there were too many attempts"),
} as const;

/** What goes on with nobody waiting for it. */
export const loggedWork = {
  "demo import": { kind: "changed", words: "brought the demo's records in" },
  "import taken up": {
    kind: "changed",
    words: "went on with an import whose process was gone",
  },
  "import ended": { kind: "changed", words: "the import of an upload ended" },
  prepared: { kind: "changed", words: "prepared what a schedule asks for" },
  deleted: { kind: "changed", words: "deleted what was older than it is kept" },
} as const satisfies Record<string, Logged>;

export type AttemptName = keyof typeof loggedAttempts;
export type WorkName = keyof typeof loggedWork;

function refused(words: string) {
  return { kind: "refused", words } as const;
}
