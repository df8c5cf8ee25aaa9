import { type BetterAuthOptions, betterAuth } from "better-auth";
import { prismaAdapter } from "better-auth/adapters/prisma";
import { twoFactor } from "better-auth/plugins/two-factor";
import { prisma } from "@/lib/store/database";
import { writeLines } from "../log/write-lines";
import { attemptsPerAccount, keepAttemptsFor } from "./attempts-per-account";
import { loopbackTwins } from "./loopback-twins";
import { longestPassword, shortestPassword } from "./password-rules";
import { longestSeconds } from "./session-limits";

/** Email and password, sessions in the database, no sign-up: people are added by an administrator. */
export type SignInService = ReturnType<typeof make>;

/** Next reloads modules in development and tests change databases: one service for each client. */
const kept = globalThis as { canalAuditSignIn?: { client: unknown; service: SignInService } };

/** The service that checks passwords and keeps sessions. @throws Error where the environment lacks its settings */
export function signInService(): SignInService {
  const client = prisma();
  if (kept.canalAuditSignIn?.client !== client) {
    kept.canalAuditSignIn = { client, service: make(client) };
  }
  return kept.canalAuditSignIn.service;
}

function make(client: ReturnType<typeof prisma>) {
  return betterAuth(options(client));
}

async function loggedSignIn(session: { readonly userId: string }): Promise<void> {
  await writeLines([{ kind: "signed in", person: session.userId, what: "sign-in", about: "" }]);
}

function options(client: ReturnType<typeof prisma>) {
  const baseURL = process.env.BETTER_AUTH_URL ?? "http://127.0.0.1:3000";
  return {
    appName: "Canal Audit",
    baseURL,
    trustedOrigins: loopbackTwins(baseURL),
    secret: process.env.BETTER_AUTH_SECRET,
    database: prismaAdapter(client, { provider: "postgresql" }),
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      // The rules themselves are password-rules.ts; here in UTF-16 units, at most two a character.
      minPasswordLength: shortestPassword,
      maxPasswordLength: 2 * longestPassword,
    },
    user: { modelName: "user" },
    account: { modelName: "account" },
    verification: { modelName: "verification" },
    session: {
      modelName: "signIn",
      // From the sign-in on, never renewed; that it ends when nobody uses it is live-session.ts.
      expiresIn: longestSeconds,
      disableSessionRefresh: true,
    },
    rateLimit: {
      enabled: true,
      storage: "database",
      modelName: "rateLimit",
      customRules: {
        // By address. It can be evaded by whoever forges X-Forwarded-For, hence the limit by account as well.
        "/sign-in/email": { window: 60, max: 30 },
        "/two-factor/*": { window: 60, max: 20 },
        // The longest window named here is how long rows are kept, those of the limit by account too.
        "/sign-out": { window: keepAttemptsFor, max: 1000 },
      },
    },
    hooks: attemptsPerAccount,
    // By whatever door somebody came in, the log tells of it.
    databaseHooks: { session: { create: { after: loggedSignIn } } },
    plugins: [
      twoFactor({
        issuer: "Canal Audit",
        accountLockout: { enabled: true, maxFailedAttempts: 10, durationSeconds: keepAttemptsFor },
        // Minutes to find the code, then the password is asked for again.
        twoFactorCookieMaxAge: 300,
      }),
    ],
    advanced: {
      ...cookies(baseURL),
      // Said outright, since under a test runner the origin is not checked unless asked for.
      disableOriginCheck: false,
    },
    telemetry: { enabled: false },
    logger: { level: "error" },
  } satisfies BetterAuthOptions;
}

/**
 * No script reads a cookie, no other site sends one with a form. Over https it goes over nothing else, and by its name
 * a browser takes it from this very host alone, for every path.
 */
function cookies(baseURL: string) {
  const secure = baseURL.startsWith("https://");
  return {
    cookiePrefix: secure ? "__Host-canal-audit" : "canal-audit",
    // The name above says it already; the library would put another prefix before it.
    useSecureCookies: false,
    defaultCookieAttributes: { secure, httpOnly: true, sameSite: "lax", path: "/" },
  } as const;
}
