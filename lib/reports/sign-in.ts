import { signInService } from "@/lib/store/sign-in/sign-in";
import { asSigningIn } from "@/lib/store/wall/as-whom";
import { askSignIn, type Cookie, cookiesOf, knock } from "./sign-in-door";
import { textWithin } from "./text-within";

/**
 * Signed in with these cookies (`second`: they only say that the password was right, a code is asked for next), or a
 * sentence that says why not; it never tells whether an account exists.
 */
export type SignedIn =
  | { readonly cookies: readonly Cookie[]; readonly second?: true }
  | { readonly sentence: string };

/** Checks email and password. */
export async function signIn(
  who: { email: string; password: string },
  from: Headers,
): Promise<SignedIn> {
  const body = { email: who.email, password: who.password };
  const answer = await askSignIn("/sign-in/email", body, from);
  if (!answer.ok) return { sentence: sentenceFor(answer.status) };
  const { twoFactorRedirect } = (await answer.clone().json()) as { twoFactorRedirect?: boolean };
  return { cookies: cookiesOf(answer), ...(twoFactorRedirect ? { second: true } : {}) };
}

/** Checks the second factor of whoever gave the right password: six digits, or one of the recovery codes. */
export async function signInSecond(code: string, from: Headers): Promise<SignedIn> {
  const plain = code.replaceAll(/\s/g, "");
  const path = /^\d{6}$/.test(plain) ? "verify-totp" : "verify-backup-code";
  const answer = await askSignIn(`/two-factor/${path}`, { code: plain }, from);
  if (answer.ok) return { cookies: cookiesOf(answer) };
  return { sentence: secondSentenceFor(answer.status) };
}

/** Ends the session of these headers. @returns the answer's own headers, which take the cookie back */
export async function signOut(headers: Headers): Promise<Headers> {
  const answer = await asSigningIn(() =>
    signInService().api.signOut({ headers, asResponse: true }),
  );
  return answer.headers;
}

/**
 * What the sign-in answers under /api/auth; anything but these two does not exist here. What it says of itself (a
 * session's token among it) stays here: a script of the page shall not read what its cookie hides from it.
 */
export async function answerSignIn(request: Request): Promise<Response> {
  const paths = ["/api/auth/sign-in/email", "/api/auth/sign-out"];
  if (!paths.includes(new URL(request.url).pathname)) return new Response(null, { status: 404 });
  const body = await textWithin(request, longest);
  if (body === null) return new Response(null, { status: 413 });
  const { url, method, headers: asked } = request;
  const answer = await knock(new Request(url, { method, headers: asked, body }));
  const headers = new Headers();
  for (const cookie of answer.headers.getSetCookie()) headers.append("set-cookie", cookie);
  return Response.json({ ok: answer.ok }, { status: answer.status, headers });
}

/** Bytes of an email and a password, amply. */
const longest = 10_000;

function sentenceFor(status: number): string {
  if (status === 429) {
    return "Too many attempts. Wait a quarter of an hour, then try again; an administrator can set a new password.";
  }
  if (status === 403) {
    return "This address is not the one the tool was set up for. Open it at the address it printed when it started.";
  }
  return "That email and password do not belong together. Check both, or ask the administrator for a new password.";
}

function secondSentenceFor(status: number): string {
  if (status === 429) return "Too many attempts. Wait a quarter of an hour, then try again.";
  return "This code is not the one of now, was used already, or took too long. Wait for the next one; after five tries or five minutes begin again with your password.";
}
