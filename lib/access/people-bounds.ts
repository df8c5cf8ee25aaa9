import type { PeopleReach } from "./reach";
import { Refused } from "./refused";

/** May an administrator give or take roles there; `practice` null is the whole group. */
export function covers(reach: PeopleReach, practice: string | null): boolean {
  if (reach.practices === null) return true;
  return practice !== null && reach.practices.includes(practice);
}

/** @throws Refused where the administrator's reach does not cover it */
export function mustCover(reach: PeopleReach, practice: string | null): void {
  if (covers(reach, practice)) return;
  const own = `You administer ${reach.practices?.join(", ")}`;
  throw new Refused(
    practice === null
      ? `${own}; what concerns the whole group is for an administrator of the group.`
      : `${own}; practice ${practice} is not among them.`,
  );
}
