import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { beginSecondFactor } from "@/lib/reports/account/own-second-factor";
import { answerSignIn, signIn, signInSecond } from "@/lib/reports/sign-in";
import { disconnect } from "@/lib/store/database";
import { type SignInDatabase, signInDatabase } from "./sign-in-database";

// Expected values are the project's own rule: no secret is written down where others read.

let database: SignInDatabase;
beforeAll(async () => {
  database = await signInDatabase();
});
afterAll(async () => database.drop());

it("nothing that goes wrong at the sign-in writes a secret to the log", async () => {
  const password = "seven otters under a tin roof";
  const { who, viewer } = await database.person("record-keeper", password);
  const session = await database.signedIn(who);
  const said: string[] = [];
  const hear = (...words: unknown[]) => {
    said.push(
      words
        .map((word) => (word instanceof Error ? `${word.stack}` : JSON.stringify(word)))
        .join(" "),
    );
  };
  for (const name of ["log", "info", "warn", "error", "debug"] as const)
    vi.spyOn(console, name).mockImplementation(hear);
  const url = process.env.DATABASE_URL ?? "";
  try {
    await signIn({ ...who, password: `${password} not` }, database.from());
    await signIn(who, new Headers({ origin: "http://elsewhere.example" }));
    for (let place = 0; place < 12; place += 1) await signIn({ ...who, password }, database.from());
    await signInSecond("123456", database.from(session));
    await beginSecondFactor(viewer, "not this", database.from(session));
    await answerSignIn(
      new Request("http://localhost:3000/api/auth/sign-in/email", {
        method: "POST",
        headers: { "content-type": "application/json", cookie: session.get("cookie") ?? "" },
        body: `{"email":"${who.email}","password":"${password}"`,
      }),
    ).catch(hear);
    // A database that is away.
    await disconnect();
    process.env.DATABASE_URL = url.replace(/@[^/]+\//, "@127.0.0.1:9/");
    await signIn(who, database.from()).catch(hear);
  } finally {
    await disconnect();
    process.env.DATABASE_URL = url;
    vi.restoreAllMocks();
  }
  expect(said.length, "a silent log proves nothing").toBeGreaterThan(0);
  const log = said.join("\n");
  const cookie = session.get("cookie") ?? "";
  const token = decodeURIComponent(cookie.split("=").slice(1).join("=")).split(".")[0] ?? "";
  expect(token.length).toBeGreaterThan(20);
  const secrets = [
    password,
    token,
    cookie,
    process.env.BETTER_AUTH_SECRET ?? "",
    new URL(url).password,
  ];
  for (const secret of secrets.filter((one) => one !== "")) expect(log).not.toContain(secret);
  expect(log).not.toContain("postgres" + "ql://");
});
