import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { openTables } from "@/lib/store/wall/open-tables";
import { walledTables } from "@/lib/store/wall/walled-tables";
import { freshDatabase } from "../../fresh-database";
import {
  askedAs,
  type Letters,
  lettersIn,
  type ViewerName,
  viewers,
  viewersUrlOf,
} from "./shown-to";
import { fillTwoPractices } from "./two-practices";

// Expected values are worked by hand from what each role is for (README, "Roles") and the rows of two-practices.ts: the database is asked for
// each whole table, and only the wall stands between.

let database: ScratchDatabase;
let url = "";
let letters: Letters;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  url = viewersUrlOf(database.url);
  await fillTwoPractices();
  letters = await lettersIn(pool());
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const inOrder = ["lead", "officer", "keeper", "clinician", "administrator", "leadOfAll"] as const;
const ofVisits = ["12", "12", "12", "1", "", "12E"];
const ofAudits = ["O", "", "", "", "", "GMO"];
const ofPeopleInAudits = ["12", "", "", "1", "", "12"];
const keepers = ["", "", "x", "", "", ""];
const ofPlaces = ["O", "O", "O", "MO", "O", "MO"];
const ownAndAdministered = ["", "", "", "1", "12", ""];

/** By table, what each viewer in order is shown; letters as in shown-to. */
const shown: Readonly<Record<string, readonly string[]>> = {
  ...each(["sessions", "canals", "irrigation", "instruments", "followups", "steps"], ofVisits),
  ...each(["exceptions", "incidents", "canal_facts", "visit_facts", "held"], ofVisits),
  ...each(["corrections", "entered_exceptions", "exception_queries", "mended_rows"], ofVisits),
  upkeep: ["O", "O", "O", "O", "", "MO"],
  month_units: ["O", "O", "O", "", "", "MO"],
  // Whose a code is, an administrator of any practice has to know: a person may work at several.
  people: ["O", "O", "O", "", "MO", "MO"],
  clinicians: ["OOO", "OOO", "OOO", "O", "MMOOO", "MMOOO"],
  ...each(["practices", "chairs", "criterion_versions", "own_terms"], ofPlaces),
  imports: ["M", "M", "", "", "", "M"],
  ...each(["import_files"], Array(6).fill("x".repeat(10))),
  mends: ["", "", "O", "", "", ""],
  ...each(["mappings", "waiting_files", "taken_files"], keepers),
  witnesses: ["", "", "", "", "", ""],
  // A clinician sees of audits that they are shared; what is theirs of them is the application's to take out.
  ...each(["audits", "signed_audits"], ["O", "", "", "GO", "", "GMO"]),
  ...each(["audit_texts", "audit_looks"], ofAudits),
  ...each(["audit_confirmations", "audit_disputes"], ofPeopleInAudits),
  ...each(["audit_answers", "audit_readers"], ofPeopleInAudits),
  audit_actions: ["O", "", "", "O", "", "MO"],
  audit_action_news: ["O", "", "", "O", "", "MO"],
  ...each(["schedules", "prepared"], ["O", "O", "", "", "", "GMO"]),
  ...each(["notes", "reflections"], ["", "", "", "1", "", ""]),
  ...each(["users", "grants"], ["12", "", "", "1", "12", "12"]),
  ...each(["accounts", "sign_ins", "two_factors"], ownAndAdministered),
  verifications: ["", "", "", "", "", ""],
  rebases: ["x", "x", "", "x", "", "x"],
  exports: ["x", "x", "x", "", "", "x"],
};

function each(tables: readonly string[], of: readonly string[]) {
  return Object.fromEntries(tables.map((table) => [table, of]));
}

describe("asked for a whole table, the database shows", () => {
  test.each(inOrder)("a %s what is theirs to see", async (name) => {
    const place = inOrder.indexOf(name);
    const expected = Object.keys(shown).map((table) => [table, shown[table]?.[place]]);
    expect(await allShownTo(name)).toEqual(Object.fromEntries(expected));
  });

  test("nobody anything", async () => {
    const nothing = Object.keys(shown).map((table) => [table, ""]);
    expect(await allShownTo(null)).toEqual(Object.fromEntries(nothing));
  });

  test("the owner everything, so that nothing above is empty for want of rows", async () => {
    for (const table of Object.keys(shown)) {
      if (table === "witnesses") continue;
      expect((await pool().query(`select from "${table}" limit 1`)).rowCount, table).toBe(1);
    }
  });

  test("whoever is just signing in accounts, and no records", async () => {
    const nobody = { ...viewers.lead, grants: [] };
    await askedAs(
      url,
      nobody,
      async (client) => {
        const counts = async (table: string) =>
          (await client.query(`select from "${table}"`)).rowCount;
        for (const table of ["users", "grants", "accounts", "two_factors", "verifications"])
          expect(await counts(table), table).toBe(2);
        for (const table of ["sessions", "canal_facts", "held", "notes", "audits", "signed_audits"])
          expect(await counts(table), table).toBe(0);
      },
      "signing in",
    );
  });
});

test("every table of the database is behind the wall, or is named with the reason why not", async () => {
  const { rows } = await pool().query<{ name: string; walled: boolean; policies: number }>(
    `select relname as name, relrowsecurity as walled, (select count(*)::int from pg_policy where polrelid = c.oid) as policies
     from pg_class c where relnamespace = 'public'::regnamespace and relkind in ('r', 'p', 'v', 'm', 'f') order by 1`,
  );
  expect(rows.length).toBeGreaterThan(50);
  const open = rows.filter(({ walled }) => !walled).map(({ name }) => name);
  expect(open.sort()).toEqual(Object.keys(openTables).sort());
  const behind = rows.filter(({ walled }) => walled);
  expect(behind.map(({ name }) => name).sort()).toEqual(Object.keys(walledTables).sort());
  for (const { name, policies } of behind) expect(policies, name).toBe(4);
  expect(Object.keys(shown).sort()).toEqual(Object.keys(walledTables).sort());
});

async function allShownTo(name: ViewerName | null): Promise<Record<string, string>> {
  return askedAs(url, name && viewers[name], async (client) => {
    const found: Record<string, string> = {};
    for (const table of Object.keys(shown)) {
      const { rows } = await client.query(`select * from "${table}"`);
      found[table] = rows.map(letters).sort().join("");
    }
    return found;
  });
}
