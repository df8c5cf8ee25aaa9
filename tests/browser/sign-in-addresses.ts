import type { Line } from "./address-line";
import { everybody } from "./everybody";

/** Everything to do with signing in and with one's own account. */
export function signInAddresses(): Line[] {
  // No such thing here, whatever the library behind the sign-in may know.
  const absent = [
    ...["sign-up/email", "change-password", "delete-user", "update-user", "list-sessions"],
    ...["get-session", "two-factor/enable", "two-factor/disable", "two-factor/verify-totp"],
    ...["two-factor/verify-backup-code", "two-factor/generate-backup-codes"],
  ].map((name) => ({
    ...{ of: "POST app/api/auth/[...all]/route.ts", address: `/api/auth/${name}`, form: {} },
    ...{ nobody: 404, answers: {}, others: 404 },
  }));
  const all = Object.fromEntries(everybody.map((who) => [who, 200]));
  return [
    ...["/sign-in", "/sign-in/second"].map((address) => ({
      of: `app${address}/page.tsx`,
      ...{ address, nobody: 200, answers: {}, others: "to /" as const },
    })),
    {
      of: "app/account/page.tsx",
      ...{ address: "/account", nobody: "to /sign-in", answers: all, others: 200 },
    },
    ...absent,
    {
      of: "POST app/sign-out/route.ts",
      address: "/sign-out",
      form: {},
      nobody: "to /sign-in",
      answers: {},
      others: "to /sign-in",
      endsSession: true,
    },
  ];
}
