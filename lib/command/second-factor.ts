import { holderReach } from "@/lib/access/reach";
import { takeSecondFactor } from "@/lib/reports/change-person";
import { byCommand } from "@/lib/reports/log/by-command";
import { listPeople } from "@/lib/reports/people";
import { changeSecondFactorRule } from "@/lib/reports/second-factor-rule";
import { readOptions } from "./read-options";
import { CannotDo, type Done } from "./verb";

/**
 * `people second-factor required|not-yet` for the whole group; `people second-factor take --email …` for an
 * administrator who lost device and recovery codes and has nobody to ask.
 */
export async function secondFactor(args: string[]): Promise<Done> {
  const [what, ...rest] = args;
  if (what === "take") return take(rest);
  if (what !== "required" && what !== "not-yet") {
    throw new CannotDo("What about it: `required`, `not-yet`, or `take --email …`.");
  }
  readOptions(rest, []);
  const rule = what === "required" ? "required" : "not yet";
  const { done } = await byCommand("canal-audit people second-factor", {}, () =>
    changeSecondFactorRule(holderReach().people, { rule }),
  );
  return { text: done, json: { rule } };
}

async function take(args: string[]): Promise<Done> {
  const { values: given } = readOptions(args, ["email"]);
  const email = given.email?.toLowerCase() ?? "";
  const { people } = holderReach();
  const answer = await byCommand("canal-audit people second-factor", {}, async () => {
    const found = (await listPeople(people)).people.find((person) => person.email === email);
    if (!found) throw new CannotDo(`Nobody signs in as ${email}; give it by --email.`);
    return takeSecondFactor(people, found.id);
  });
  if ("wrong" in answer) throw new CannotDo(Object.values(answer.wrong).join(" "));
  return { text: answer.done, json: { email } };
}
