import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { holderReach, notesReach } from "@/lib/access/reach";
import { ownAccount } from "@/lib/reports/account/own-account";
import { changeOwnPassword } from "@/lib/reports/account/own-password";
import { endOwnSessions } from "@/lib/reports/account/own-sessions";
import { resetPassword } from "@/lib/reports/change-person";
import { signIn } from "@/lib/reports/sign-in";
import { disconnect, pool } from "@/lib/store/database";
import { viewerOf } from "@/lib/store/people/viewer-of";
import { type SignInDatabase, signInDatabase } from "./sign-in-database";

// Expected values are the project's own limits (session-limits.ts, DEVELOPERS.md); the attributes of cookies and the
// prefix of their names are those of RFC 6265bis (published source).

let database: SignInDatabase;
beforeAll(async () => {
  database = await signInDatabase();
});
afterAll(async () => database.drop());
const password = "seven otters under a tin roof";

describe("a session", () => {
  it("lives twelve hours from its sign-in, and its cookie as long, unread by scripts", async () => {
    const { who } = await database.person("record-keeper", password);
    const answer = await signIn(who, database.from());
    const [cookie, ...others] = "cookies" in answer ? answer.cookies : [];
    expect(others).toEqual([]);
    expect(cookie).toMatchObject({
      name: "canal-audit.session_token",
      attributes: { path: "/", httpOnly: true, sameSite: "lax", maxAge: 43_200 },
    });
    const { rows } = await pool().query(
      "select extract(epoch from expires_at - created_at)::int as lives from sign_ins order by created_at desc limit 1",
    );
    expect(rows[0].lives).toBe(43_200);
  });

  it("goes over https alone where the tool is served by it, for this host alone", async () => {
    const { who } = await database.person("record-keeper", password);
    await disconnect();
    process.env.BETTER_AUTH_URL = "https://audit.example";
    try {
      const answer = await signIn(who, new Headers({ origin: "https://audit.example" }));
      const [cookie] = "cookies" in answer ? answer.cookies : [];
      expect(cookie).toMatchObject({
        name: "__Host-canal-audit.session_token",
        attributes: { path: "/", httpOnly: true, secure: true, sameSite: "lax" },
      });
      expect(cookie?.attributes).not.toHaveProperty("domain");
    } finally {
      await disconnect();
      process.env.BETTER_AUTH_URL = "http://localhost:3000";
    }
  });

  it("ends after an hour without a request, and not while it is used", async () => {
    const { who } = await database.person("record-keeper", password);
    const session = await database.signedIn(who);
    const aged = (minutes: number) =>
      pool().query(
        `update sign_ins set updated_at = now() - $2 * interval '1 minute'
         where user_id = (select id from users where email = $1)`,
        [who.email, minutes],
      );
    await aged(59);
    expect(await viewerOf(session)).not.toBeNull();
    // That was a use.
    const { rows } = await pool().query(
      "select sign_ins.updated_at > now() - interval '1 minute' as fresh from sign_ins join users u on u.id = user_id where u.email = $1",
      [who.email],
    );
    expect(rows).toEqual([{ fresh: true }]);
    await aged(61);
    expect(await viewerOf(session)).toBeNull();
    await aged(0);
    expect(await viewerOf(session)).toBeNull();
  });

  it("ends after twelve hours however busy", async () => {
    const { who } = await database.person("record-keeper", password);
    const session = await database.signedIn(who);
    vi.useFakeTimers({ toFake: ["Date"], now: Date.now() + 43_201_000 });
    try {
      await pool().query("update sign_ins set updated_at = now() + interval '12 hours'");
      expect(await viewerOf(session)).toBeNull();
    } finally {
      vi.useRealTimers();
    }
  });

  it("is ended by its owner, one or all, and by nobody else", async () => {
    const { who, viewer } = await database.person("record-keeper", password);
    const other = await database.person("record-keeper", password);
    const [first, second] = [await database.signedIn(who), await database.signedIn(who)];
    const { sessions } = await ownAccount(viewer, second);
    expect(sessions.map(({ here }) => here).sort()).toEqual([false, true]);
    const older = sessions.find(({ here }) => !here)?.id;
    expect(await endOwnSessions(notesReach(other.viewer), older)).toBe(0);
    expect(await endOwnSessions(notesReach(viewer), older)).toBe(1);
    expect(await viewerOf(first)).toBeNull();
    expect(await viewerOf(second)).not.toBeNull();
    expect(await endOwnSessions(notesReach(viewer))).toBe(1);
    expect(await viewerOf(second)).toBeNull();
  });
});

describe("one's own password", () => {
  it("is changed with the one before; every session ends but this one, which has a new token", async () => {
    const { who, viewer } = await database.person("record-keeper", password);
    const [here, elsewhere] = [await database.signedIn(who), await database.signedIn(who)];
    const next = "nine herons beside the weir";
    const asked = (current: string, to: string) =>
      changeOwnPassword(viewer, { current, next: to }, database.from(here));
    expect(await asked("not this one at all", next)).toHaveProperty("wrong.current");
    expect(await asked(password, "short")).toHaveProperty("wrong.next");
    expect(await asked(password, password)).toHaveProperty("wrong.next");
    const done = await asked(password, next);
    expect(done).toHaveProperty("done");
    expect(await viewerOf(here)).toBeNull();
    expect(await viewerOf(elsewhere)).toBeNull();
    const renewed = "cookies" in done ? database.carrying(done.cookies) : new Headers();
    expect(await viewerOf(renewed)).not.toBeNull();
    expect(await signIn(who, database.from())).toHaveProperty("sentence");
    expect(await signIn({ ...who, password: next }, database.from())).toHaveProperty("cookies");
  });

  it("cannot be guessed from a session: the eleventh try is not made", async () => {
    const { who, viewer } = await database.person("record-keeper", password);
    const session = await database.signedIn(who);
    const said: unknown[] = [];
    for (let place = 0; place < 11; place += 1) {
      const next = `nine herons beside weir ${place}`;
      said.push(
        await changeOwnPassword(viewer, { current: "a guess", next }, database.from(session)),
      );
    }
    expect(said[9]).toEqual({ wrong: { current: "This is not your password." } });
    expect(said[10]).toHaveProperty("wrong.current", expect.stringMatching(/^Too many/));
  });

  it("that another passed on opens nothing until it is changed", async () => {
    // Nobody may be left without an administrator.
    await database.person("administrator", password);
    const { who, id } = await database.person("quality-officer", password);
    const answer = await resetPassword(holderReach().people, id);
    const made = "password" in answer ? answer.password : "";
    const here = await database.signedIn({ ...who, password: made });
    const viewer = await viewerOf(here);
    expect(viewer).toMatchObject({ due: "password", grants: [] });
    if (!viewer) throw new Error("signed in");
    const done = await changeOwnPassword(
      viewer,
      { current: made, next: "nine herons beside the weir" },
      database.from(here),
    );
    const now = await viewerOf("cookies" in done ? database.carrying(done.cookies) : new Headers());
    expect(now?.due).toBeUndefined();
    expect(now?.grants).toHaveLength(1);
  });
});

describe("whether an account exists", () => {
  it("is told by neither the words nor the time of a refusal", async () => {
    const { who } = await database.person("record-keeper", password);
    const times: Record<string, number[]> = { there: [], none: [] };
    const said = new Set<string>();
    for (let place = 0; place < 9; place += 1) {
      for (const [kind, email] of [
        ["there", who.email],
        ["none", "nobody@example.org"],
      ] as const) {
        const from = performance.now();
        const answer = await signIn({ email, password: "a guess of some length" }, database.from());
        times[kind]?.push(performance.now() - from);
        said.add(JSON.stringify(answer));
      }
    }
    expect(said.size).toBe(1);
    const [there, none] = [middle(times.there ?? []), middle(times.none ?? [])];
    // Both hash a password once; without that one of them would take a twentieth of the other.
    expect(Math.min(there, none) / Math.max(there, none)).toBeGreaterThan(0.5);
  });
});

function middle(values: number[]): number {
  return values.sort((one, other) => one - other)[Math.floor(values.length / 2)] ?? 0;
}
