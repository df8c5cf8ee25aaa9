import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Role } from "@/lib/access/role";
import { type DemoAccount, demoAccounts } from "./demo-account";

/** Who the specs are: a demo account by its role and its place among those of the role, or one added for the tests. */
const of = {
  "group lead": { role: "clinical-lead", place: 0 },
  "MEDLAR lead": { role: "clinical-lead", place: 1 },
  "clinician M-03": { role: "clinician", place: 0 },
  "clinician M-06": { role: "clinician", place: 1 },
  "quality officer": { role: "quality-officer", place: 0 },
  "record keeper": { role: "record-keeper", place: 0 },
  administrator: { role: "administrator", place: 0 },
  "SPINDLE quality officer": { role: "quality-officer", added: "spindle-quality@tests.example" },
  "SPINDLE record keeper": { role: "record-keeper", added: "spindle-records@tests.example" },
  "SPINDLE administrator": { role: "administrator", added: "spindle-people@tests.example" },
} as const satisfies Record<string, { role: Role } & ({ place: number } | { added: string })>;

export type Somebody = keyof typeof of;
export type Who = Somebody | "nobody";

/** Everybody who signs in. */
export const everybody = Object.keys(of) as Somebody[];

/** The practice of those who are added for the tests. */
export const practiceOfAdded = "SPINDLE";

/** The account somebody signs in with; `added` where the tests add it. */
export function accountOf(somebody: Somebody): DemoAccount & { added: boolean } {
  const one = of[somebody];
  if ("added" in one) {
    return { email: one.added, password: "hedge-sparrow-17", role: one.role, added: true };
  }
  const found = demoAccounts().filter((account) => account.role === one.role)[one.place];
  if (!found) throw new Error(`The demo has no ${somebody}.`);
  return { ...found, added: false };
}

/** The file of a signed-in state; give it to a browser's context. Nobody has an empty one. */
export function stateOf(who: Who): string | { cookies: []; origins: [] } {
  return who === "nobody"
    ? { cookies: [], origins: [] }
    : fileInHome(`signed-in-${who.replaceAll(" ", "-")}.json`);
}

/** What the demo's database holds that the addresses need. */
export interface Known {
  /** A visit that only M-03 worked on, one only of M-06's at the same practice, one at SPINDLE. */
  visit: { own: string; other: string; spindle: string };
  /** The import that brought MEDLAR's records, and SPINDLE's. */
  imports: { medlar: number; spindle: number };
  /** A held row of MEDLAR's. */
  held: { medlar: string };
  /** An audit of MEDLAR whose window is open, and one of the group that nobody was asked about. */
  audits: { medlar: number; group: number };
  /** Ids of people. */
  people: { lead: string; spindleQuality: string };
}

/** What everybody-signed-in.ts found out. */
export function known(): Known {
  return JSON.parse(readFileSync(fileInHome("known-to-the-tests.json"), "utf8")) as Known;
}

export function fileInHome(name: string): string {
  const home = process.env.CANAL_AUDIT_HOME;
  if (!home)
    throw new Error("CANAL_AUDIT_HOME is not set: these specs are run by playwright.config.ts.");
  return join(home, name);
}
