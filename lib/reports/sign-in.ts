import { parseSetCookieHeader } from "better-auth/cookies";
import { signInService } from "@/lib/store/sign-in/sign-in";

/** A cookie to be set in the browser. */
export type Cookie = {
  readonly name: string;
  readonly value: string;
  readonly attributes: Attributes;
};
type Attributes = {
  path?: string;
  maxAge?: number;
  httpOnly?: boolean;
  secure?: boolean;
  sameSite?: "lax" | "strict" | "none";
};

/** Signed in with these cookies, or a sentence that says why not; it never tells whether an account exists. */
export type SignedIn = { readonly cookies: readonly Cookie[] } | { readonly sentence: string };

/** Checks email and password by the same door as a direct request, so that limits and origin checks hold. */
export async function signIn(
  who: { email: string; password: string },
  from: Headers,
): Promise<SignedIn> {
  // The origin is checked only where there is a cookie header, be it empty.
  const headers = new Headers({ "content-type": "application/json", cookie: "" });
  for (const name of ["cookie", "origin", "x-forwarded-for", "user-agent"]) {
    const value = from.get(name);
    if (value) headers.set(name, value);
  }
  const service = signInService();
  const address = new URL("/api/auth/sign-in/email", service.options.baseURL);
  const body = JSON.stringify({ email: who.email, password: who.password });
  const answer = await service.handler(new Request(address, { method: "POST", headers, body }));
  return answer.ok ? { cookies: cookiesOf(answer) } : { sentence: sentenceFor(answer.status) };
}

/** Ends the session of these headers. @returns the answer's own headers, which take the cookie back */
export async function signOut(headers: Headers): Promise<Headers> {
  const answer = await signInService().api.signOut({ headers, asResponse: true });
  return answer.headers;
}

/** What the sign-in answers under /api/auth; anything but these three does not exist here. */
export async function answerSignIn(request: Request): Promise<Response> {
  const paths = ["/api/auth/sign-in/email", "/api/auth/sign-out", "/api/auth/get-session"];
  if (!paths.includes(new URL(request.url).pathname)) return new Response(null, { status: 404 });
  return signInService().handler(request);
}

function cookiesOf(answer: Response): Cookie[] {
  const cookies = parseSetCookieHeader(answer.headers.getSetCookie().join(", "));
  return [...cookies].map(([name, given]) => ({
    name,
    value: decodeURIComponent(given.value),
    attributes: {
      path: given.path ?? "/",
      maxAge: given["max-age"],
      httpOnly: given.httponly,
      secure: given.secure,
      sameSite: given.samesite,
    },
  }));
}

function sentenceFor(status: number): string {
  if (status === 429) {
    return "Too many attempts. Wait a quarter of an hour, then try again; an administrator can set a new password.";
  }
  if (status === 403) {
    return "This address is not the one the tool was set up for. Open it at the address it printed when it started.";
  }
  return "That email and password do not belong together. Check both, or ask the administrator for a new password.";
}
