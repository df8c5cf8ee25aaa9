import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { holderReach, peopleReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import {
  beginSecondFactor,
  confirmSecondFactor,
  renewRecoveryCodes,
} from "@/lib/reports/account/own-second-factor";
import { takeSecondFactor } from "@/lib/reports/change-person";
import { changeSecondFactorRule } from "@/lib/reports/second-factor-rule";
import { signIn, signInSecond } from "@/lib/reports/sign-in";
import { pool } from "@/lib/store/database";
import { viewerOf } from "@/lib/store/people/viewer-of";
import { codeOf, fromBase32 } from "./codes";
import { type SignInDatabase, signInDatabase } from "./sign-in-database";

// Expected values: codes are those of RFC 6238, appendix B (published), their last six digits; who needs a second factor
// is the project's own rule.

let database: SignInDatabase;
beforeAll(async () => {
  database = await signInDatabase();
});
afterAll(async () => database.drop());
const password = "seven otters under a tin roof";
const { people } = holderReach();

it.each([
  [59, "94287082"],
  [1_111_111_109, "07081804"],
  [1_111_111_111, "14050471"],
  [1_234_567_890, "89005924"],
  [2_000_000_000, "69279037"],
  [20_000_000_000, "65353130"],
])("the code at second %d is that of RFC 6238", async (second, published) => {
  vi.useFakeTimers({ toFake: ["Date"], now: second * 1000 });
  try {
    expect(await codeOf("12345678901234567890")).toBe(published.slice(2));
  } finally {
    vi.useRealTimers();
  }
});

describe("who needs a second factor", () => {
  it("are clinical leads and administrators, unless the administrator says not yet", async () => {
    for (const role of ["administrator", "clinical-lead"] as const) {
      const session = await database.signedIn((await database.person(role, password)).who);
      expect(await viewerOf(session)).toMatchObject({ due: "second factor", grants: [] });
      await changeSecondFactorRule(people, { rule: "not yet" });
      expect((await viewerOf(session))?.grants).toHaveLength(1);
      await changeSecondFactorRule(people, { rule: "required" });
    }
    const keeper = await database.signedIn((await database.person("record-keeper", password)).who);
    expect((await viewerOf(keeper))?.grants).toHaveLength(1);
  });

  it("is not for an administrator of one practice to say", async () => {
    const grants = [{ role: "administrator", practice: "P1", clinicianKey: null } as const];
    const ofOne = peopleReach({ userId: "a", name: "A", email: "a@example.org", grants });
    const asked = changeSecondFactorRule(ofOne, { rule: "not yet" });
    await expect(asked).rejects.toThrow(Refused);
  });
});

describe("a second factor", () => {
  it("is on after its first code, and asked for from then on", async () => {
    const { who, secret, viewer } = await enrolled();
    expect(viewer).toMatchObject({ grants: [{ role: "clinical-lead" }] });
    const first = await signIn(who, database.from());
    expect(first).toMatchObject({ second: true });
    const half = "cookies" in first ? database.carrying(first.cookies) : new Headers();
    expect(await viewerOf(half)).toBeNull();
    expect(await signInSecond("000000", database.from(half))).toHaveProperty("sentence");
    vi.useFakeTimers({ toFake: ["Date"], now: Date.now() + 30_000 });
    try {
      const code = await codeOf(secret);
      const done = await signInSecond(`${code.slice(0, 3)} ${code.slice(3)}`, database.from(half));
      const whole = "cookies" in done ? database.carrying(done.cookies) : new Headers();
      expect(await viewerOf(whole)).not.toBeNull();
      // RFC 6238, 5.2: a code is taken once.
      const again = await signIn(who, database.from());
      const halfAgain = "cookies" in again ? database.carrying(again.cookies) : new Headers();
      expect(await signInSecond(code, database.from(halfAgain))).toHaveProperty("sentence");
    } finally {
      vi.useRealTimers();
    }
  });

  it("can be replaced by each recovery code once, and by none of those before new ones", async () => {
    const { who, codes, account, session } = await enrolled();
    const by = async (code = "") => {
      const first = await signIn(who, database.from());
      const half = "cookies" in first ? database.carrying(first.cookies) : new Headers();
      return signInSecond(code, database.from(half));
    };
    expect(codes).toHaveLength(10);
    expect(await by(codes[0])).toHaveProperty("cookies");
    expect(await by(codes[0])).toHaveProperty("sentence");
    const renewed = await renewRecoveryCodes(account, password, database.from(session));
    expect(await by(codes[1])).toHaveProperty("sentence");
    expect(await by("codes" in renewed ? renewed.codes[0] : "")).toHaveProperty("cookies");
  });

  it("ends the try after five wrong codes, whatever comes then", async () => {
    const { who, codes } = await enrolled();
    const first = await signIn(who, database.from());
    const half = "cookies" in first ? database.carrying(first.cookies) : new Headers();
    for (let place = 0; place < 5; place += 1) await signInSecond("000000", database.from(half));
    expect(await signInSecond(codes[0] ?? "", database.from(half))).toHaveProperty("sentence");
  });

  it("is kept so that the database alone tells neither secret nor codes", async () => {
    const { secret, codes } = await enrolled();
    const { rows } = await pool().query("select secret, backup_codes from two_factors");
    const kept = JSON.stringify(rows);
    for (const one of [secret, ...codes]) expect(kept).not.toContain(one);
  });

  it("is taken away by an administrator where the device is lost, with every session", async () => {
    const { who, id, session } = await enrolled();
    expect(await takeSecondFactor(people, id)).toHaveProperty("done");
    expect(await viewerOf(session)).toBeNull();
    expect(await signIn(who, database.from())).not.toHaveProperty("second");
  });
});

/** A clinical lead with a second factor. */
async function enrolled() {
  const { who, id, viewer: account } = await database.person("clinical-lead", password);
  const here = await database.signedIn(who);
  expect(await beginSecondFactor(account, "not this", database.from(here))).toHaveProperty("wrong");
  const begun = await beginSecondFactor(account, password, database.from(here));
  if ("wrong" in begun) throw new Error(JSON.stringify(begun.wrong));
  expect((await viewerOf(here))?.due).toBe("second factor");
  const { codes, secret: shown, qr } = begun.enrolment;
  expect(qr.path).toMatch(/^M4 4h1v1h-1z/);
  const secret = fromBase32(shown.replaceAll(" ", ""));
  const wrong = await confirmSecondFactor("000000", database.from(here));
  expect(wrong).toHaveProperty("wrong.code");
  const done = await confirmSecondFactor(await codeOf(secret), database.from(here));
  if ("wrong" in done) throw new Error(JSON.stringify(done.wrong));
  const session = database.carrying(done.cookies);
  return { who, id, account, secret, codes, session, viewer: await viewerOf(session) };
}
