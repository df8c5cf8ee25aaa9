import { z } from "zod";
import type { PeopleReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import {
  isSecondFactorRequired,
  keepSecondFactorRule,
  type SecondFactorRule,
} from "@/lib/store/sign-in/second-factor-rule";

const asked = z.object({ rule: z.enum(["required", "not yet"]) });

/** Whether clinical leads and administrators need a second factor, and whether the viewer may change that. */
export async function secondFactorRule(
  reach: PeopleReach,
): Promise<{ readonly rule: SecondFactorRule; readonly mayChange: boolean }> {
  const rule = (await isSecondFactorRequired()) ? "required" : "not yet";
  return { rule, mayChange: reach.practices === null };
}

/** Sets it for the whole group. @throws Refused for whoever administers less than all of it */
export async function changeSecondFactorRule(
  reach: PeopleReach,
  input: unknown,
): Promise<{ readonly done: string }> {
  if (reach.practices !== null) {
    throw new Refused(
      "The second factor concerns the whole group: only an administrator of all practices may change it.",
    );
  }
  const { rule } = asked.parse(input);
  await keepSecondFactorRule(reach, rule);
  return rule === "required"
    ? { done: "Required: whoever of them has none is led to set one up at their next page." }
    : { done: "Not required; whoever has one keeps it." };
}
