import { z } from "zod";
import type { ProtocolReach } from "@/lib/access/reach";
import { type PracticeRow, practicesWithin } from "@/lib/store/records/practices";
import { type Address, AskedWrongly } from "../asked-period";
import { localDay } from "./local-day";

/** Whose protocol a page shows, and what else can be chosen. */
export type AskedPractice = {
  readonly practices: readonly PracticeRow[];
  /** Undefined where there is no practice at all. */
  readonly practice: PracticeRow | undefined;
  /** The practice's local day. */
  readonly today: string;
  readonly mayChange: boolean;
};

const code = z.string().optional();

/**
 * Reads ?practice=…: without it the first practice that the viewer may change, else the first.
 * @throws AskedWrongly where no practice of that code is within the reach
 */
export async function askedPractice(
  reach: ProtocolReach,
  address: Address,
): Promise<AskedPractice> {
  const asked = code.safeParse(address.practice);
  if (!asked.success) throw new AskedWrongly("The address asks for more than one practice.");
  const practices = await practicesWithin(reach);
  const changes = (one: PracticeRow) => mayChange(reach, one.code);
  const practice = asked.data
    ? practices.find((one) => one.code === asked.data)
    : (practices.find(changes) ?? practices[0]);
  if (asked.data && !practice)
    throw new AskedWrongly(`There is no practice ${asked.data} among those you may see.`);
  return {
    practices,
    practice,
    today: localDay(practice?.zone ?? "UTC"),
    mayChange: practice !== undefined && changes(practice),
  };
}

/** Is the protocol of the practice the viewer's to change. */
export function mayChange(reach: ProtocolReach, practice: string): boolean {
  return reach.changes === null || reach.changes.includes(practice);
}
