import type { PeopleReach } from "@/lib/access/reach";
import { giveRoleWithin, takeRoleWithin } from "@/lib/store/people/change-roles";
import { LastAdministrator, NoSuchPerson } from "@/lib/store/people/change-within";
import { type Left, leaveWithin } from "@/lib/store/people/leave";
import { removePersonWithin } from "@/lib/store/people/remove-person";
import { setPasswordWithin } from "@/lib/store/people/set-password";
import { takeSecondFactorWithin } from "@/lib/store/people/take-second-factor";
import { askedRole } from "./asked-role";
import { madePassword } from "./made-password";
import { roleInput } from "./person-input";
import { readInput, type Wrong } from "./read-input";

/** Done, or what is wrong; `form` holds what is wrong with no single field. */
export type Changed = { readonly done: string } | { readonly wrong: Wrong };

/** Gives a person a further role. @throws Refused where the person or the role lies outside the reach */
export async function giveRole(
  reach: PeopleReach,
  userId: string,
  input: unknown,
): Promise<Changed> {
  const checked = readInput(roleInput, input);
  if ("wrong" in checked) return checked;
  const asked = await askedRole(reach, checked.read);
  if ("wrong" in asked) return asked;
  return changed("The role is given.", () => giveRoleWithin(reach, userId, asked.grant));
}

/** Takes a role from a person. @throws Refused */
export async function takeRole(
  reach: PeopleReach,
  userId: string,
  grantId: number,
): Promise<Changed> {
  return changed("The role is taken back.", () => takeRoleWithin(reach, userId, grantId));
}

/** Makes a new password, told once in the answer; every session of that person ends. @throws Refused */
export async function resetPassword(
  reach: PeopleReach,
  userId: string,
): Promise<{ readonly password: string } | { readonly wrong: Wrong }> {
  const password = madePassword();
  const answer = await changed("", () => setPasswordWithin(reach, userId, password));
  return "wrong" in answer ? answer : { password };
}

/** Takes a second factor away whose device is lost; every session of that person ends. @throws Refused */
export async function takeSecondFactor(reach: PeopleReach, userId: string): Promise<Changed> {
  return changed("The second factor is taken away. Every session of this person has ended.", () =>
    takeSecondFactorWithin(reach, userId),
  );
}

/** Removes a person with their notes; records keep their codes. @throws Refused */
export async function removePerson(reach: PeopleReach, userId: string): Promise<Changed> {
  return changed("The person is removed.", () => removePersonWithin(reach, userId));
}

/** A person who leaves: the account and the name go, figures stay under their code. @throws Refused */
export async function personLeaves(reach: PeopleReach, userId: string): Promise<Changed> {
  let left: Left | undefined;
  const answer = await changed("", async () => {
    left = await leaveWithin(reach, userId);
  });
  if ("wrong" in answer || !left) return answer;
  return {
    done: left.nameShared
      ? "The account is removed. Somebody else bears the same name, so it stays where it stood beside what was done: whose it is cannot be told."
      : `The account is removed, and ${left.under} stands where the name stood. Signed audits and what was typed into texts stay as they are.`,
  };
}

async function changed(done: string, change: () => Promise<void>): Promise<Changed> {
  try {
    await change();
    return { done };
  } catch (error) {
    if (error instanceof LastAdministrator) {
      return {
        wrong: {
          form: "Nobody would be left to administer the group. Make somebody else an administrator first.",
        },
      };
    }
    if (error instanceof NoSuchPerson)
      return { wrong: { form: "This person was removed meanwhile." } };
    throw error;
  }
}
