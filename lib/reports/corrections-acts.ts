import type { RecordsReach } from "@/lib/access/reach";
import { newerVersionsRules, setNewerVersions } from "@/lib/store/corrections/newer-versions-rule";
import { TakeBackRefused, takeBackCorrection } from "@/lib/store/corrections/take-back";
import { takeNewer } from "@/lib/store/corrections/take-newer";
import { letGo } from "@/lib/store/import/let-go";
import { count } from "@/lib/views/quantity";
import type { Settled } from "./held-rows";

/** Takes the newer versions that were chosen, or lets them go so that the first ones stand. @throws Refused */
export async function settleDifferences(
  reach: RecordsReach,
  ids: readonly string[],
  how: unknown,
): Promise<Settled> {
  if (how !== "newer" && how !== "first")
    return { wrong: { how: "Choose which version is to stand." } };
  const chosen = [...new Set(ids.filter((id) => /^\d{1,18}$/.test(id)))];
  if (chosen.length === 0) return { wrong: { form: "Choose at least one row." } };
  if (how === "first") {
    const gone = await letGo(reach, chosen, "The first version stands.");
    return {
      done: `${versions(gone)} let go; the first ones stand. They can be taken back among the rows let go.`,
    };
  }
  const taken = await takeNewer(reach, chosen);
  const left = chosen.length - taken;
  return {
    done: `${versions(taken)} taken; the old ones are kept below.${
      left === 0
        ? ""
        : ` ${versions(left)} not taken: settled meanwhile, one of two versions of the same row, against a rule of the format, or not yours to change.`
    }`,
  };
}

/** Puts the old version back and holds the newer one again. @throws Refused */
export async function takeBack(reach: RecordsReach, id: number): Promise<Settled> {
  try {
    await takeBackCorrection(reach, id);
    return { done: "Taken back: the old version stands again, and the newer one is held." };
  } catch (trouble) {
    if (trouble instanceof TakeBackRefused) return { wrong: { form: trouble.message } };
    throw trouble;
  }
}

/** Sets what a practice does with newer versions from now on. @throws Refused */
export async function setRule(
  reach: RecordsReach,
  practice: string,
  rule: unknown,
): Promise<Settled> {
  const known = newerVersionsRules.find((one) => one === rule);
  if (!known) return { wrong: { rule: "Choose one of the three." } };
  return (await setNewerVersions(reach, practice, known))
    ? { done: "Saved. It holds for files that come from now on." }
    : { wrong: { form: `Practice ${practice} is not yours to change.` } };
}

function versions(rows: number): string {
  return `${count(rows)} newer ${rows === 1 ? "version" : "versions"}`;
}
