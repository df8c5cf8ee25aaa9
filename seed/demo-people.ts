import { chmod, readFile, rename, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { asHolder } from "@/lib/reports/as-holder";
import { madePassword } from "@/lib/reports/made-password";
import { addPerson } from "@/lib/reports/people";
import { group } from "./scenario";

type PeopleReach = ReturnType<typeof asHolder>["people"];
type Grant = Pick<Parameters<typeof addPerson>[1], "role" | "practice" | "clinicianKey">;
type Account = { email: string; password: string; role: string; name: string };

/** Who can sign in to the demo: invented, each with one role; a role without a practice is the group's. */
const demoPeople: readonly { name: string; grant: Grant }[] = [
  { name: "Tamsel Orrick", grant: { role: "administrator", practice: null, clinicianKey: null } },
  { name: "Bryde Fennimoor", grant: { role: "clinical-lead", practice: null, clinicianKey: null } },
  {
    name: "Corvin Ashlake",
    grant: { role: "clinical-lead", practice: "MEDLAR", clinicianKey: null },
  },
  {
    name: "Ilva Marrendine",
    grant: { role: "clinician", practice: "MEDLAR", clinicianKey: "MEDLAR/M-03" },
  },
  {
    name: "Joss Quillander",
    grant: { role: "clinician", practice: null, clinicianKey: "person:HG-06" },
  },
  {
    name: "Wenna Tolverby",
    grant: { role: "quality-officer", practice: null, clinicianKey: null },
  },
  { name: "Perrin Oxlade", grant: { role: "record-keeper", practice: null, clinicianKey: null } },
];

/**
 * Adds the demo's people and keeps their passwords in `demo-accounts.json` of the home, mode 0600. The passwords
 * are kept before anybody is added, so that a run that was cut short can be done again.
 */
export async function addDemoPeople(reach: PeopleReach, home: string): Promise<number> {
  const accounts = await keptAccounts(home);
  for (const { name, grant } of demoPeople) {
    const account = accounts.find((kept) => kept.name === name);
    if (!account)
      throw new Error(`demo-accounts.json of the home does not name ${name}; delete it.`);
    const { email, password } = account;
    const answer = await addPerson(reach, { name, email, password, ...grant });
    // An address that is taken is this person's, from a run that was cut short.
    if ("wrong" in answer && !answer.wrong.email) {
      throw new Error(`${name} could not be added: ${Object.values(answer.wrong).join(" ")}`);
    }
  }
  return demoPeople.length;
}

async function keptAccounts(home: string): Promise<Account[]> {
  const file = join(home, "demo-accounts.json");
  const kept = await readFile(file, "utf8").catch(() => null);
  if (kept !== null) return JSON.parse(kept) as Account[];
  const accounts = demoPeople.map(({ name, grant }) => accountOf(name, String(grant.role)));
  await writeFile(`${file}.new`, `${JSON.stringify(accounts, null, 2)}\n`, { mode: 0o600 });
  await chmod(`${file}.new`, 0o600);
  await rename(`${file}.new`, file);
  return accounts;
}

function accountOf(name: string, role: string): Account {
  const email = `${name.toLowerCase().replace(" ", ".")}@${group.mailDomain}`;
  return { email, password: madePassword(), role, name };
}
