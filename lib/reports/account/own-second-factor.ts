import { z } from "zod";
import { notesReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { ownSecondFactor } from "@/lib/store/sign-in/own-account";
import type { Wrong } from "../read-input";
import { askSignIn, type Cookie, cookiesOf } from "../sign-in-door";
import { withPassword } from "./own-password";
import { qrPath } from "./qr-path";

/** What is told once and never again, for the authenticator and for a safe place. */
export type Enrolment = {
  readonly secret: string;
  readonly codes: readonly string[];
  readonly qr: { readonly size: number; readonly path: string };
};

const begun = z.object({ totpURI: z.string(), backupCodes: z.array(z.string()) });
const renewed = z.object({ backupCodes: z.array(z.string()) });

/** Makes a secret; it asks for nothing until a code of it was given. Begun again, the secret before is gone. */
export async function beginSecondFactor(
  viewer: Viewer,
  password: string,
  from: Headers,
): Promise<{ readonly enrolment: Enrolment } | { readonly wrong: Wrong }> {
  if ((await ownSecondFactor(notesReach(viewer))).on)
    return { wrong: { form: "You have a second factor already." } };
  const asked = await withPassword(viewer, () =>
    askSignIn("/two-factor/enable", { password }, from),
  );
  if ("wrong" in asked) return asked;
  const { totpURI, backupCodes } = begun.parse(await asked.answer.json());
  const secret = new URL(totpURI).searchParams.get("secret") ?? "";
  return { enrolment: { secret: inFours(secret), codes: backupCodes, qr: qrPath(totpURI) } };
}

/** The first code of the new secret: from now on it is asked for at every sign-in. */
export async function confirmSecondFactor(
  code: string,
  from: Headers,
): Promise<{ readonly cookies: readonly Cookie[] } | { readonly wrong: Wrong }> {
  const plain = code.replaceAll(/\s/g, "");
  const answer = await askSignIn("/two-factor/verify-totp", { code: plain }, from);
  if (answer.ok) return { cookies: cookiesOf(answer) };
  if (answer.status === 429) return { wrong: { code: "Too many attempts. Wait a minute." } };
  return {
    wrong: {
      code: "This is not the code of now. Is the clock of the device right? Wait for the next one.",
    },
  };
}

/** Takes one's own second factor away, as before changing to another device. */
export async function endSecondFactor(
  viewer: Viewer,
  password: string,
  from: Headers,
): Promise<{ readonly cookies: readonly Cookie[] } | { readonly wrong: Wrong }> {
  const asked = await withPassword(viewer, () =>
    askSignIn("/two-factor/disable", { password }, from),
  );
  return "wrong" in asked ? asked : { cookies: cookiesOf(asked.answer) };
}

/** Makes new recovery codes; those before open nothing any more. */
export async function renewRecoveryCodes(
  viewer: Viewer,
  password: string,
  from: Headers,
): Promise<{ readonly codes: readonly string[] } | { readonly wrong: Wrong }> {
  const asked = await withPassword(viewer, () =>
    askSignIn("/two-factor/generate-backup-codes", { password }, from),
  );
  if ("wrong" in asked) return asked;
  return { codes: renewed.parse(await asked.answer.json()).backupCodes };
}

function inFours(secret: string): string {
  return secret.match(/.{1,4}/g)?.join(" ") ?? "";
}
