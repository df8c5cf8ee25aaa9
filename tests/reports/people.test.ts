import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { holderReach, peopleReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Role } from "@/lib/access/role";
import { giveRole, removePerson, resetPassword, takeRole } from "@/lib/reports/change-person";
import { addPerson, listPeople, type PersonInput } from "@/lib/reports/people";
import { changePractice, confirmCodes, listPlaces } from "@/lib/reports/places";
import { signIn } from "@/lib/reports/sign-in";
import { disconnect, pool } from "@/lib/store/database";
import { viewerOf } from "@/lib/store/people/viewer-of";
import { freshDatabase } from "../fresh-database";

// Expected values are the project's own rules (who may do what), except where a source stands beside them.

const group = holderReach().people;
const ofP1 = peopleReach({
  userId: "a1",
  name: "Administrator of P1",
  email: "a1@example.org",
  grants: [{ role: "administrator", practice: "P1", clinicianKey: null }],
});
const password = "fifteen or more of them";
let drop: () => Promise<void>;

beforeAll(async () => {
  const database = await freshDatabase();
  drop = database.drop;
  process.env.DATABASE_URL = database.url;
  process.env.BETTER_AUTH_URL = "http://localhost:3000";
  process.env.BETTER_AUTH_SECRET = "for-tests-alone-for-tests-alone-1234";
  await pool().query(`
    insert into practices (code, name, zone) values ('P1', 'P1', 'UTC'), ('P2', 'P2', 'UTC');
    insert into settings values ('second factor', 'not yet'); insert into chairs (practice, code) values ('P1', '1'), ('P1', '2'), ('P2', '1');
    insert into clinicians (practice, code) values ('P1', 'C01'), ('P1', 'C02'), ('P2', 'C09');
    insert into people (file_id, line, fields, person, practice, code, "from") values
      (1, 1, 0, 'k7', 'P1', 'C02', '2026-01-01'), (1, 2, 0, 'k7', 'P2', 'C09', '2026-01-01');
    insert into sessions (file_id, line, fields, practice, session_id, chair, clinician, patient, started_at, local_day,
      tooth, tooth_notation, treatment, outcome)
      values (1, 1, 0, 'P2', 's1', '1', 'C09', 'hash', '2026-07-01T09:00Z', '2026-07-01', '16', 'iso', 'initial', 'finished');`);
});

afterAll(async () => {
  await disconnect();
  await drop();
});

describe("adding people", () => {
  it("lets the first administrator sign in, under the role that was given", async () => {
    await added({ email: "Root@Example.org", role: "administrator" });
    const viewer = await viewerOf(await signedIn("root@example.org", password));
    expect(viewer?.email).toBe("root@example.org");
    expect(viewer?.grants).toEqual([{ role: "administrator", practice: null, clinicianKey: null }]);
  });

  it("makes a password where none is given, and it opens the door", async () => {
    const { password: made } = await added({
      email: "made@example.org",
      password: "",
      role: "record-keeper",
    });
    expect(made).toMatch(/^[a-z2-9]{4}(-[a-z2-9]{4}){3}$/);
    expect((await viewerOf(await signedIn("made@example.org", made ?? "")))?.name).toBe("Some One");
  });

  it("says what is wrong, field by field", async () => {
    // NIST SP 800-63B rev. 4 asks for 15 characters at least of a password that may stand alone.
    const answer = await addPerson(group, input({ email: "nope", password: "short", name: " " }));
    expect(Object.keys(wrongOf(answer)).sort()).toEqual(["email", "name", "password"]);
    expect(wrongOf(await addPerson(group, input({ email: "root@example.org" }))).email).toMatch(
      /already/,
    );
    expect(wrongOf(await addPerson(group, input({ practice: "P7" }))).practice).toMatch(/P1, P2/);
    expect(wrongOf(await addPerson(group, { ...input({}), role: "owner" })).role).toMatch(
      /administrator/,
    );
  });

  it("needs a clinician's code, and keeps the person whom the records name behind it", async () => {
    const bare = await addPerson(group, input({ role: "clinician", practice: "P1" }));
    expect(wrongOf(bare).clinicianKey).toMatch(/P1\/C01/);
    const unknown = await addPerson(group, input({ role: "clinician", clinicianKey: "P1/C77" }));
    expect(wrongOf(unknown).clinicianKey).toMatch(/C77/);
    await added({ email: "c2@example.org", role: "clinician", clinicianKey: "P1/C02" });
    const grants = (await viewerOf(await signedIn("c2@example.org", password)))?.grants;
    expect(grants).toEqual([{ role: "clinician", practice: "P1", clinicianKey: "person:k7" }]);
  });

  it("follows a code to its person when the records tell only later", async () => {
    await added({ email: "c1@example.org", role: "clinician", clinicianKey: "P1/C01" });
    const headers = await signedIn("c1@example.org", password);
    expect((await viewerOf(headers))?.grants[0]?.clinicianKey).toBe("P1/C01");
    const row = `(1, 3, 0, 'k1', 'P1', 'C01', '2026-01-01')`;
    await pool().query(
      `insert into people (file_id, line, fields, person, practice, code, "from") values ${row}`,
    );
    expect((await viewerOf(headers))?.grants[0]?.clinicianKey).toBe("person:k1");
  });
});

describe("signing in", () => {
  it("says the same of a wrong password and of nobody's address", async () => {
    const wrong = await signIn(
      { email: "root@example.org", password: "not-this-one-at-all" },
      headers(),
    );
    const nobody = await signIn(
      { email: "who@example.org", password: "not-this-one-at-all" },
      headers(),
    );
    expect(wrong).toEqual(nobody);
    expect("sentence" in wrong && wrong.sentence).toMatch(/do not belong together/);
  });

  it("works from 127.0.0.1 though the base address says localhost, and not from elsewhere", async () => {
    const who = { email: "root@example.org", password };
    expect(await signIn(who, headers("http://127.0.0.1:3000"))).toHaveProperty("cookies");
    expect(await signIn(who, headers("http://elsewhere.example"))).toHaveProperty("sentence");
  });

  it("stops the eleventh try on an account, from whatever address, and only there", async () => {
    const tries: string[] = [];
    for (let place = 0; place < 11; place += 1) {
      const from = headers();
      from.set("x-forwarded-for", `203.0.113.${place}`); // TEST-NET-3, RFC 5737
      const answer = await signIn(
        { email: "target@example.org", password: "guess-upon-guess" },
        from,
      );
      tries.push("sentence" in answer ? answer.sentence : "in");
    }
    expect(tries.slice(0, 10).every((said) => said.includes("do not belong together"))).toBe(true);
    expect(tries[10]).toMatch(/^Too many attempts/);
    expect(await signIn({ email: "root@example.org", password }, headers())).toHaveProperty(
      "cookies",
    );
  });
});

describe("changing people", () => {
  it("keeps an administrator of one practice to its people", async () => {
    const mine = await added({ email: "p1@example.org", role: "record-keeper", practice: "P1" });
    const other = await added({ email: "p2@example.org", role: "record-keeper", practice: "P2" });
    const seen = (await listPeople(ofP1)).people.map((person) => person.email);
    expect(seen).toContain("p1@example.org");
    expect(seen).not.toContain("p2@example.org");
    expect(seen).not.toContain("root@example.org");
    await expect(resetPassword(ofP1, other.id)).rejects.toThrow(Refused);
    await expect(removePerson(ofP1, other.id)).rejects.toThrow(Refused);
    const ofAll = giveRole(ofP1, mine.id, { role: "clinical-lead", practice: "" });
    await expect(ofAll).rejects.toThrow(Refused);
    await expect(
      addPerson(ofP1, input({ email: "x@example.org", practice: "P2" })),
    ).rejects.toThrow(Refused);
    expect(await giveRole(ofP1, mine.id, { role: "clinical-lead", practice: "P1" })).toHaveProperty(
      "done",
    );
  });

  it("does not offer a person's key where they work at another practice too", async () => {
    const keys = (await listPeople(ofP1)).clinicians.map((one) => one.key);
    expect(keys).toEqual(["person:k1"]);
  });

  it("ends the sessions of whoever gets a new password", async () => {
    const { id } = await added({ email: "lost@example.org", role: "clinical-lead" });
    const before = await signedIn("lost@example.org", password);
    const answer = await resetPassword(group, id);
    const made = "password" in answer ? answer.password : "";
    expect(await viewerOf(before)).toBeNull();
    expect(await viewerOf(await signedIn("lost@example.org", made))).not.toBeNull();
  });

  it("never leaves the group without an administrator", async () => {
    const { people } = await listPeople(group);
    const root = people.find((person) => person.email === "root@example.org");
    const grant = root?.grants[0];
    if (!root || !grant) throw new Error("the first administrator is gone");
    expect(wrongOf(await removePerson(group, root.id)).form).toMatch(/administrator/);
    expect(wrongOf(await takeRole(group, root.id, grant.id)).form).toMatch(/administrator/);
    const second = await added({ email: "second@example.org", role: "administrator" });
    expect(await takeRole(group, root.id, grant.id)).toHaveProperty("done");
    expect(wrongOf(await removePerson(group, second.id)).form).toMatch(/administrator/);
  });
});

describe("practices", () => {
  it("are renamed and confirmed, their zone only while they have no visits", async () => {
    expect(
      await changePractice(group, "P1", { name: "Quarry Lane", zone: "Europe/Lisbon" }),
    ).toHaveProperty("done");
    const [first] = await listPlaces(ofP1);
    expect(first).toMatchObject({
      name: "Quarry Lane",
      zone: "Europe/Lisbon",
      confirmed: true,
      hasVisits: false,
    });
    const moved = await changePractice(group, "P2", { name: "P2", zone: "Europe/Lisbon" });
    expect(wrongOf(moved).zone).toMatch(/has visits/);
    const renamed = await changePractice(group, "P2", { name: "Mole End", zone: "UTC" });
    expect(renamed).toHaveProperty("done");
    const nowhere = await changePractice(group, "P1", { name: "", zone: "Mars/Olympus" });
    expect(wrongOf(nowhere)).toHaveProperty("zone");
    await expect(changePractice(ofP1, "P2", { name: "Mine", zone: "UTC" })).rejects.toThrow(
      Refused,
    );
  });

  it("have their codes confirmed one by one", async () => {
    expect(await confirmCodes(ofP1, "P1", "chair", ["2"])).toEqual({
      done: "1 code is confirmed.",
    });
    const [first] = await listPlaces(ofP1);
    expect(first?.chairs).toEqual([
      { code: "1", confirmed: false },
      { code: "2", confirmed: true },
    ]);
    await expect(confirmCodes(ofP1, "P2", "chair", ["1"])).rejects.toThrow(Refused);
  });
});

function input(given: Partial<PersonInput>): PersonInput {
  const role: Role = "record-keeper";
  const blank = { name: "Some One", email: "new@example.org", practice: null, clinicianKey: null };
  return { ...blank, password, role, ...given };
}

async function added(given: Partial<PersonInput>) {
  const answer = await addPerson(group, input(given));
  if ("wrong" in answer) throw new Error(JSON.stringify(answer.wrong));
  return answer.added;
}

function wrongOf(answer: object): Partial<Record<string, string>> {
  return "wrong" in answer ? (answer.wrong as Partial<Record<string, string>>) : {};
}

function headers(origin = "http://localhost:3000"): Headers {
  return new Headers({ origin });
}

/** Signs in and gives the headers that the browser would then send. */
async function signedIn(email: string, with_: string): Promise<Headers> {
  const answer = await signIn({ email, password: with_ }, headers());
  if ("sentence" in answer) throw new Error(answer.sentence);
  const cookie = answer.cookies
    .map(({ name, value }) => `${name}=${encodeURIComponent(value)}`)
    .join("; ");
  return new Headers({ cookie });
}
