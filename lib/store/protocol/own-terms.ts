import type { FiguresReach, OwnReach, ProtocolReach } from "@/lib/access/reach";
import { prisma } from "../database";
import { writeProtocol } from "./write-protocol";

/** A practice's own step, upkeep task or reason. */
export type OwnTermRow = {
  readonly practice: string;
  readonly kind: "step" | "task" | "reason";
  /** Begins with own-. */
  readonly code: string;
  readonly words: string;
  /** Who changed it last. */
  readonly by: string;
  /** When it was added: from that day on it is asked for. */
  readonly at: Date;
  /** No longer offered; what bears it keeps its words. */
  readonly retired: boolean;
};

type Named = Pick<OwnTermRow, "practice" | "kind" | "code">;

/** The own terms of the practices within a reach, by kind and words, retired ones too. */
export async function ownTerms(
  reach: FiguresReach | OwnReach | ProtocolReach,
): Promise<OwnTermRow[]> {
  const practices = "practices" in reach ? reach.practices : null;
  const rows = await prisma().ownTerm.findMany({
    where: practices === null ? {} : { practice: { in: [...practices] } },
    orderBy: [{ practice: "asc" }, { kind: "asc" }, { words: "asc" }],
  });
  return rows.flatMap((row) => {
    const kind = (["step", "task", "reason"] as const).find((one) => one === row.kind);
    return kind ? [{ ...row, kind }] : [];
  });
}

/** Adds a term to practices; the practices that have the code already are answered, and then nothing is added. @throws Refused */
export async function addTerm(
  reach: FiguresReach,
  practices: readonly string[],
  term: Pick<OwnTermRow, "kind" | "code" | "words">,
): Promise<readonly string[]> {
  return writeProtocol(reach, practices, async (client) => {
    const { rows } = await client.query<{ practice: string }>(
      "select practice from own_terms where practice = any($1) and kind = $2 and code = $3 order by 1",
      [practices, term.kind, term.code],
    );
    if (rows.length > 0) return { undone: rows.map(({ practice }) => practice) };
    await client.query(
      `insert into own_terms (practice, kind, code, words, by)
       select unnest($1::text[]), $2, $3, $4, $5`,
      [practices, term.kind, term.code, term.words, reach.by],
    );
    return [];
  });
}

/** Gives a term other words; records keep its code. False where there is none. @throws Refused */
export async function rewordTerm(
  reach: FiguresReach,
  { practice, kind, code }: Named,
  words: string,
): Promise<boolean> {
  return writeProtocol(reach, [practice], async (client) => {
    const { rowCount } = await client.query(
      `update own_terms set words = $4, by = $5
       where practice = $1 and kind = $2 and code = $3`,
      [practice, kind, code, words, reach.by],
    );
    return (rowCount ?? 0) > 0 ? true : { undone: false };
  });
}

/** Retires a term, or brings it back. False where there is none. @throws Refused */
export async function retireTerm(
  reach: FiguresReach,
  { practice, kind, code }: Named,
  retired: boolean,
): Promise<boolean> {
  return writeProtocol(reach, [practice], async (client) => {
    const { rowCount } = await client.query(
      `update own_terms set retired = $4, by = $5
       where practice = $1 and kind = $2 and code = $3`,
      [practice, kind, code, retired, reach.by],
    );
    return (rowCount ?? 0) > 0 ? true : { undone: false };
  });
}
