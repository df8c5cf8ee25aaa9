import { z } from "zod";
import type { PeopleReach } from "@/lib/access/reach";
import { changePracticeWithin } from "@/lib/store/places/change-practice";
import { confirmCodesWithin } from "@/lib/store/places/confirm-codes";
import { type PlaceRow, placesWithin, practicesWithVisits } from "@/lib/store/places/places-within";
import type { Changed } from "./change-person";
import { readInput } from "./read-input";
import { isTimeZone } from "./time-zone";

const practiceInput = z.object({
  name: z.string().trim().min(1, "Write the practice's name.").max(120, "At most 120 characters."),
  zone: z
    .string()
    .trim()
    .refine(isTimeZone, "Not a time zone that this machine knows; write one as Europe/London."),
});

/** A practice, and has it any visit. */
export type PlaceView = PlaceRow & { readonly hasVisits: boolean };

/** The practices within the reach with their chairs and clinicians' codes. */
export async function listPlaces(reach: PeopleReach): Promise<readonly PlaceView[]> {
  const [places, used] = await Promise.all([placesWithin(reach), practicesWithVisits(reach)]);
  return places.map((place) => ({ ...place, hasVisits: used.has(place.code) }));
}

/** Renames a practice, sets its time zone while it has no visits, and confirms it. @throws Refused */
export async function changePractice(
  reach: PeopleReach,
  code: string,
  input: unknown,
): Promise<Changed> {
  const checked = readInput(practiceInput, input);
  if ("wrong" in checked) return checked;
  const answer = await changePracticeWithin(reach, code, checked.read);
  if (answer === "unknown") return { wrong: { form: `There is no practice ${code} any more.` } };
  if (answer === "has-visits") {
    return {
      wrong: {
        zone: "The practice has visits, and another zone would put them on other days. Undo their imports first.",
      },
    };
  }
  return { done: `${checked.read.name} is saved.` };
}

/** Confirms codes that imports created. @throws Refused */
export async function confirmCodes(
  reach: PeopleReach,
  practice: string,
  kind: "chair" | "clinician",
  codes: readonly string[],
): Promise<Changed> {
  const count = await confirmCodesWithin(reach, practice, kind, codes);
  return { done: count === 1 ? "1 code is confirmed." : `${count} codes are confirmed.` };
}
