import type { z } from "zod";
import type { PeopleReach } from "@/lib/access/reach";
import type { Grant } from "@/lib/access/viewer";
import { clinicianKeysWithin } from "@/lib/store/people/clinician-keys";
import { placesWithin } from "@/lib/store/places/places-within";
import type { roleInput } from "./person-input";
import type { Wrong } from "./read-input";

/**
 * The role that is asked for, checked against what there is: the practice must be known, a clinician needs the
 * code or person whose figures are theirs and is of that practice.
 */
export async function askedRole(
  reach: PeopleReach,
  asked: z.output<typeof roleInput>,
): Promise<{ grant: Grant } | { wrong: Wrong }> {
  const { role, practice } = asked;
  if (practice !== null && reach.practices?.includes(practice) !== false) {
    const known = (await placesWithin(reach)).map((place) => place.code);
    if (!known.includes(practice)) {
      const those = known.length > 0 ? `; known are ${known.join(", ")}` : ". Records create them";
      return { wrong: { practice: `There is no practice ${practice}${those}.` } };
    }
  }
  if (role !== "clinician") return { grant: { role, practice, clinicianKey: null } };
  const given = asked.clinicianKey;
  if (given === null) {
    return {
      wrong: { clinicianKey: "A clinician needs the code whose figures are theirs, as P1/C01." },
    };
  }
  const keys = await clinicianKeysWithin(reach);
  const found = keys.find(({ key, codes }) => key === given || codes.includes(given));
  if (!found) {
    return {
      wrong: {
        clinicianKey: `No clinician ${given} is known to you; codes appear here once records that name them are in.`,
      },
    };
  }
  if (practice !== null && !found.practices.includes(practice)) {
    return { wrong: { practice: `${given} does not work at ${practice}.` } };
  }
  return {
    grant: { role, practice: practice ?? found.practices[0] ?? null, clinicianKey: found.key },
  };
}
