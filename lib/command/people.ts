import { holderReach } from "@/lib/access/reach";
import { personLeaves } from "@/lib/reports/change-person";
import { byCommand } from "@/lib/reports/log/by-command";
import { addPerson, listPeople } from "@/lib/reports/people";
import { dataByEmail, idOf } from "@/lib/reports/person-data";
import { readOptions } from "./read-options";
import { secondFactor } from "./second-factor";
import { CannotDo, type Done } from "./verb";

/** `people add …` and `people list`. A password is made and told once where none is given. */
export async function people(args: string[], _json: boolean): Promise<Done> {
  const [verb, ...rest] = args;
  if (verb === "add") return add(rest);
  if (verb === "list") return list(rest);
  if (verb === "data") return data(rest);
  if (verb === "leave") return leave(rest);
  if (verb === "second-factor") return secondFactor(rest);
  throw new CannotDo(
    "What about people: `people add --role … --email … --name …`, `people list`, `people data --email …`, `people leave --email …` or `people second-factor …`.",
  );
}

async function add(args: string[]): Promise<Done> {
  const { values: given } = readOptions(args, [
    "role",
    "email",
    "name",
    "practice",
    "clinician",
    "password",
  ]);
  const answer = await byCommand("canal-audit people add", {}, () =>
    addPerson(holderReach().people, {
      role: given.role,
      email: given.email ?? "",
      // A name can be given later; the address's own part serves until then.
      name: given.name ?? given.email?.split("@")[0] ?? "",
      password: given.password,
      practice: given.practice ?? null,
      clinicianKey: given.clinician ?? null,
    }),
  );
  if ("wrong" in answer) {
    const said = Object.entries(answer.wrong).map(
      ([field, sentence]) => `${flag(field)}: ${sentence}`,
    );
    throw new CannotDo(said.join(" "));
  }
  const { added } = answer;
  const password = added.password
    ? `, with the password ${added.password} (told this once, to be changed at the first sign-in; an administrator can set another)`
    : "";
  return {
    text: `${added.name} can sign in as ${added.email}, ${added.role}${password}.`,
    json: added,
  };
}

async function list(args: string[]): Promise<Done> {
  readOptions(args, []);
  const { people: all } = await byCommand("canal-audit people list", {}, () =>
    listPeople(holderReach().people),
  );
  const lines = all.map(({ email, name, grants }) => {
    const held = grants.map(
      (grant) => `${grant.role} (${grant.clinicianKey ?? grant.practice ?? "group"})`,
    );
    return `${email}  ${name}  ${held.join(", ") || "no role"}`;
  });
  const json = all.map(({ id, email, name, grants }) => ({
    id,
    email,
    name,
    grants: grants.map(({ role, practice, clinicianKey }) => ({ role, practice, clinicianKey })),
  }));
  return { text: lines.join("\n") || "Nobody yet.", json: { people: json } };
}

/** One JSON document either way: it is made to be handed on. */
async function data(args: string[]): Promise<Done> {
  const { values } = readOptions(args, ["email"]);
  if (!values.email) throw new CannotDo("Say whose: --email ….");
  const { email } = values;
  const found = await byCommand("canal-audit people data", {}, async () => {
    const { people } = holderReach();
    const kept = await dataByEmail(people, email);
    if (!kept) throw new CannotDo(`Nobody signs in as ${email}.`);
    return kept;
  });
  return { text: JSON.stringify(found, null, 2), json: found };
}

async function leave(args: string[]): Promise<Done> {
  const { values } = readOptions(args, ["email"]);
  if (!values.email) throw new CannotDo("Say who leaves: --email ….");
  const { email } = values;
  const done = await byCommand("canal-audit people leave", {}, async () => {
    const { people } = holderReach();
    const id = await idOf(people, email);
    if (!id) throw new CannotDo(`Nobody signs in as ${email}.`);
    const answer = await personLeaves(people, id);
    if ("wrong" in answer) throw new CannotDo(Object.values(answer.wrong).join(" "));
    return answer.done;
  });
  return { text: done, json: { done } };
}

function flag(field: string): string {
  return field === "clinicianKey" ? "--clinician" : `--${field}`;
}
