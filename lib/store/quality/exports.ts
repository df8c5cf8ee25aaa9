import type { FiguresReach } from "@/lib/access/reach";
import { prisma } from "../database";

/** What left the house, when, by whom, the SHA-256 of the bytes and, where it has one, of its view. */
export type ExportKept = {
  readonly id: number;
  readonly what: string;
  readonly format: string;
  readonly period: string;
  /** Codes of the practices it speaks of; none is the whole group. */
  readonly practices: readonly string[];
  readonly by: string;
  readonly at: Date;
  readonly sha256: string;
  readonly fingerprint: string | null;
};

/** Keeps a line about an export. */
export async function keepExport(
  reach: FiguresReach,
  made: { what: string; format: string; period: string; sha256: string; fingerprint?: string },
): Promise<void> {
  const scope = JSON.stringify([...(reach.practices ?? [])].sort());
  await prisma().export.create({ data: { ...made, scope, by: reach.by } });
}

/** Exports of no more than the reach sees, newest first. */
export async function exportsBefore(reach: FiguresReach, limit: number): Promise<ExportKept[]> {
  const rows = await prisma().export.findMany({ orderBy: { id: "desc" } });
  return rows
    .map(({ scope, ...kept }) => ({ ...kept, practices: JSON.parse(scope) as string[] }))
    .filter(({ practices }) => within(reach, practices))
    .slice(0, limit);
}

function within(reach: FiguresReach, practices: readonly string[]): boolean {
  if (reach.practices === null) return true;
  return practices.length > 0 && practices.every((code) => reach.practices?.includes(code));
}
