import pg from "pg";

/** The conditions by which the application's SQL keeps to practices and clinicians, and those that Prisma writes for it. */
const conditions: readonly RegExp[] = [
  /[\w.]*\bpractice = any\(\$\d+(?:::text\[\])?\)/g,
  /[\w.]*\bpractices <@ \$\d+/g,
  /[\w.]*\bworker = \$\d+/g,
  /[\w.]*\bclinician_key = \$\d+/g,
  /[\w.]*\b(?:user_id|owner_id) = \$\d+/g,
  /"public"\."\w+"\."(?:practice|code|user_id)" (?:= \$\d+|IN \([$\d,]+\))/g,
];

/** Stands in the way of every query to the database and takes such conditions out of it, from `forget` to `keep`. */
export function withoutWheres() {
  const plain = pg.Client.prototype.query;
  let isForgetting = false;
  let count = 0;
  pg.Client.prototype.query = function (this: pg.Client, first: unknown, ...rest: unknown[]) {
    return Reflect.apply(plain, this, [isForgetting ? rewritten(first) : first, ...rest]);
  } as typeof plain;
  return {
    forget: () => {
      isForgetting = true;
    },
    keep: () => {
      isForgetting = false;
    },
    /** How many conditions were taken out so far. */
    forgotten: () => count,
    over: () => {
      pg.Client.prototype.query = plain;
    },
  };

  function rewritten(query: unknown): unknown {
    if (typeof query === "string") return without(query);
    const { text } = query as { text?: unknown };
    return typeof text === "string" ? { ...(query as object), text: without(text) } : query;
  }

  // The parameter stays, so that the statement still takes what it is given.
  function without(sql: string): string {
    return conditions.reduce(
      (text, condition) =>
        text.replaceAll(condition, (found) => {
          count += 1;
          return `(${found} or true)`;
        }),
      sql,
    );
  }
}
