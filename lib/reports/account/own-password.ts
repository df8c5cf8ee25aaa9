import { notesReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { forgetAttempts, mayTryPassword } from "@/lib/store/sign-in/attempts-per-account";
import { passwordIsOwn } from "@/lib/store/sign-in/own-account";
import { passwordTrouble } from "@/lib/store/sign-in/password-rules";
import type { Wrong } from "../read-input";
import { askSignIn, type Cookie, cookiesOf } from "../sign-in-door";

/** Done with these cookies, or what is wrong. */
export type Changed =
  | { readonly done: string; readonly cookies: readonly Cookie[] }
  | { readonly wrong: Wrong };

/** Changes one's own password; every session ends but the one that asks, which gets a new token. */
export async function changeOwnPassword(
  viewer: Viewer,
  { current, next }: { readonly current: string; readonly next: string },
  from: Headers,
): Promise<Changed> {
  const trouble = passwordTrouble(next, [viewer.name, viewer.email]);
  if (trouble) return { wrong: { next: trouble } };
  if (next.normalize("NFKC") === current.normalize("NFKC"))
    return { wrong: { next: "This is the one you have." } };
  const body = { currentPassword: current, newPassword: next, revokeOtherSessions: true };
  const answer = await withPassword(viewer, () => askSignIn("/change-password", body, from));
  if ("wrong" in answer) return answer;
  await passwordIsOwn(notesReach(viewer));
  return {
    done: "The password is changed. Every other session has ended.",
    cookies: cookiesOf(answer.answer),
  };
}

/** Asks something that the sign-in does only for the right password; wrong ones count as they do at the sign-in. */
export async function withPassword(
  viewer: Viewer,
  ask: () => Promise<Response>,
): Promise<{ readonly answer: Response } | { readonly wrong: Wrong }> {
  if (!(await mayTryPassword(viewer.email)))
    return { wrong: { current: "Too many attempts. Wait a quarter of an hour." } };
  const answer = await ask();
  if (answer.status === 429) return { wrong: { current: "Too many attempts. Wait a minute." } };
  if (!answer.ok) return { wrong: { current: "This is not your password." } };
  await forgetAttempts(viewer.email);
  return { answer };
}
