import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { beginSecondFactor, confirmSecondFactor } from "@/lib/reports/account/own-second-factor";
import { answerSignIn, signIn, signInSecond } from "@/lib/reports/sign-in";
import { pool } from "@/lib/store/database";
import { linesWithin } from "@/lib/store/log/read-lines";
import { lineView } from "@/lib/views/log/log-words";
import { codeOf, fromBase32 } from "../account/codes";
import { type SignInDatabase, signInDatabase } from "../account/sign-in-database";

// Expected values are the project's own rules: a failed sign-in leaves a line of whose account it was, whoever tries learns nothing of it,
// and nothing of what was typed is kept.

let database: SignInDatabase;
beforeAll(async () => {
  database = await signInDatabase();
});
afterAll(async () => database.drop());
const password = "seven otters under a tin roof";
const wrong = "eight otters under a tin roof";
const { people } = holderReach();

/** The lines since the last time, oldest first, as kind, person and what. */
let read = 0;
async function newLines() {
  const lines = (await linesWithin(people, { limit: 1000 })).filter(({ id }) => id > read);
  read = lines[0]?.id ?? read;
  return lines.reverse().map(({ kind, person, what }) => [kind, person, what]);
}

test("a wrong password is a line of the account; of no account, a line an hour that names none", async () => {
  const { who, id } = await database.person("quality-officer", password);
  await newLines();
  const known = await signIn({ email: who.email.toUpperCase(), password: wrong }, database.from());
  expect(await newLines()).toEqual([["refused", id, "wrong password"]]);
  const unknown = await signIn({ email: "nobody@here.example", password }, database.from());
  expect(unknown).toEqual(known);
  await signIn({ email: "nobody-else@here.example", password }, database.from());
  expect(await newLines()).toEqual([["refused", "no such account", "wrong password"]]);
  await database.signedIn(who);
  expect(await newLines()).toEqual([["signed in", id, "sign-in"]]);
});

test("so it is by the other door", async () => {
  const { who, id } = await database.person("quality-officer", password);
  const headers = database.from();
  headers.set("content-type", "application/json");
  headers.set("cookie", "");
  const asked = new Request("http://localhost:3000/api/auth/sign-in/email", {
    ...{ method: "POST", headers },
    body: JSON.stringify({ email: who.email, password: wrong }),
  });
  expect((await answerSignIn(asked)).status).toBe(401);
  expect(await newLines()).toEqual([["refused", id, "wrong password"]]);
});

test("the eleventh attempt is one past the limit, and leaves one line an hour", async () => {
  const { who, id } = await database.person("quality-officer", password);
  await newLines();
  for (let attempt = 1; attempt <= 13; attempt += 1)
    await signIn({ ...who, password: wrong }, database.from());
  expect(await newLines()).toEqual([
    ...Array.from({ length: 10 }, () => ["refused", id, "wrong password"]),
    ["refused", id, "too many attempts"],
  ]);
});

test("a wrong second factor is a line of whoever gave the right password", async () => {
  const { who, id, viewer } = await database.person("clinical-lead", password);
  const session = await database.signedIn(who);
  const begun = await beginSecondFactor(viewer, password, database.from(session));
  if ("wrong" in begun) throw new Error(JSON.stringify(begun.wrong));
  const secret = fromBase32(begun.enrolment.secret.replaceAll(" ", ""));
  await newLines();
  // Setting one up is no sign-in.
  await confirmSecondFactor("000000", database.from(session));
  expect(await newLines()).toEqual([]);
  await confirmSecondFactor(await codeOf(secret), database.from(session));
  const first = await signIn(who, database.from());
  const half = "cookies" in first ? database.carrying(first.cookies) : new Headers();
  await newLines();
  expect(await signInSecond("000000", database.from(half))).toHaveProperty("sentence");
  expect(await signInSecond("no-code-of-recovery", database.from(half))).toHaveProperty("sentence");
  const wrongSecond = ["refused", id, "wrong second factor"];
  expect(await newLines()).toEqual([wrongSecond, wrongSecond]);
});

test("nothing of what was typed stands in the log, and each line has words", async () => {
  const { rows } = await pool().query(
    "select concat_ws(' ', kind, person, what, about) as line from log_lines",
  );
  const all = rows.map(({ line }) => line).join("\n");
  expect(rows.length).toBeGreaterThan(10);
  for (const typed of [password, wrong, "000000", "no-code", "nobody", "here.example", "person-"])
    expect(all).not.toContain(typed);
  for (const line of await linesWithin(people, { limit: 1000 }))
    expect(lineView(line, "UTC").what).not.toBe(line.what);
});
