import { z } from "zod";
import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { peopleReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { standardLevels } from "@/lib/audit/flag-levels";
import { chooseLevels, chosenLevels } from "@/lib/store/comparing/flag-levels";
import { type LevelsView, levelsView } from "@/lib/views/flag-levels";
import { readInput, type Wrong } from "./read-input";

/** The levels that flags are raised at. */
export async function levelsInForce(reach: FiguresReach | OwnReach) {
  const [latest] = await chosenLevels(reach);
  return latest ? { look: latest.look, lookFirst: latest.lookFirst } : standardLevels;
}

/** The administrator's page of levels: what is in force, why, and what was before. @throws Refused */
export async function flagLevelsPage(viewer: Viewer): Promise<LevelsView> {
  const reach = peopleReach(viewer);
  return levelsView(standardLevels, await chosenLevels(reach), reach.practices === null);
}

const share = z
  .string()
  .trim()
  .transform((text) => Number(text.replace(",", ".")) / 100);
const chosen = z.object({
  look: share.refine((value) => value >= 0.001 && value <= 0.2, {
    error: "Write per cent between 0.1 and 20, as 5.",
  }),
  lookFirst: share.refine((value) => value >= 0.0001 && value <= 0.05, {
    error: "Write per cent between 0.01 and 5, as 0.2.",
  }),
  reason: z.string().trim().min(1, "Say why: the reason stands beside the levels.").max(500),
});

/** Puts other levels in force, or says what is wrong with them beside each field. @throws Refused */
export async function changeFlagLevels(
  viewer: Viewer,
  typed: Readonly<Record<string, string>>,
): Promise<{ readonly done?: string; readonly wrong?: Wrong }> {
  const reach = peopleReach(viewer);
  const input = readInput(chosen, typed);
  if ("wrong" in input) return input;
  if (input.read.lookFirst > input.read.look)
    return { wrong: { lookFirst: "Look first is the stricter of the two: not over the look." } };
  await chooseLevels(reach, input.read);
  return { done: "In force from now on. Earlier levels are kept below." };
}
