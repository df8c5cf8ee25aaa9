/**
 * What a line of the log tells of: something was seen, changed, signed or taken out, somebody signed in, something was refused, or the
 * log itself was cut.
 */
export const logKinds = [
  "saw",
  "changed",
  "signed",
  "took out",
  "signed in",
  "refused",
  "cut",
] as const;
export type LogKind = (typeof logKinds)[number];

/** A line as whoever writes it gives it; number, moment and hashes are the database's. */
export type NewLogLine = {
  readonly kind: LogKind;
  /** Id of an account, or what acted without one. */
  readonly person: string;
  /** A page, an action, a route or a verb. */
  readonly what: string;
  /** Numbers and codes of what it was about; empty where there are none. */
  readonly about: string;
};

/** A line as it is kept. */
export type LogLine = Omit<NewLogLine, "kind"> & {
  readonly id: number;
  /** ISO 8601 in UTC, to the millisecond. */
  readonly at: string;
  readonly kind: string;
  readonly prev: string;
  readonly hash: string;
};

/** Whoever runs the command has no account. */
export const commandLine = "command line";
/** Somebody tried to sign in to an account that there is not. */
export const noAccount = "no such account";
/** What a schedule or a period asks for is nobody's doing. */
export const byItself = "by itself";
/** Whatever acts without an account. */
export const withoutAccount: readonly string[] = [commandLine, noAccount, byItself];

/** Before the first line. */
export const noHash = "0".repeat(64);

/** What SHA-256 is taken of: the hash before, a line feed, and the line as a JSON array with a space after each comma. */
export function hashedText(line: Omit<LogLine, "hash">): string {
  const said = [line.id, line.at, line.kind, line.person, line.what, line.about];
  return `${line.prev}\n[${said.map((one) => JSON.stringify(one)).join(", ")}]`;
}

/** How a line about a cut says through which line the log was cut, and what the hash of that line was. */
export function cutThrough(id: number, hash: string): string {
  return `through=${id} hash=${hash}`;
}
