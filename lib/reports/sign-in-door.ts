import { parseSetCookieHeader } from "better-auth/cookies";
import { signInService } from "@/lib/store/sign-in/sign-in";
import { whoseAttempt } from "@/lib/store/sign-in/whose-attempt";
import { asSigningIn } from "@/lib/store/wall/as-whom";
import { noteFailedSignIn } from "./log/failed-sign-in";

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

/** Asks the sign-in by the same door as a direct request, so that limits and origin checks hold. */
export async function askSignIn(
  path: string,
  body: Readonly<Record<string, unknown>>,
  from: Headers,
): Promise<Response> {
  // The origin is checked only where there is a cookie header, be it empty.
  const headers = new Headers({ "content-type": "application/json", cookie: "" });
  for (const name of ["cookie", "origin", "x-forwarded-for", "user-agent"]) {
    const value = from.get(name);
    if (value) headers.set(name, value);
  }
  const service = signInService();
  const address = new URL(`/api/auth${path}`, service.options.baseURL);
  return knock(new Request(address, { method: "POST", headers, body: JSON.stringify(body) }));
}

/** The door itself: whatever fails at it leaves a line in the log, whichever way somebody came. */
export function knock(request: Request): Promise<Response> {
  return asSigningIn(() => answered(request));
}

async function answered(request: Request): Promise<Response> {
  const { pathname } = new URL(request.url);
  const second = pathname.includes("/two-factor/verify");
  if (!second && !pathname.endsWith("/sign-in/email")) return signInService().handler(request);
  const email = second ? null : await emailIn(request.clone());
  // Asked before the answer, which may end what the second step's cookie stands for; and always, so that time tells nothing.
  const person = await whoseAttempt(email, request.headers);
  const answer = await signInService().handler(request);
  // 403: the form is of another site, and nothing was tried. Whoever has no cookie of the first step only sets a second factor up.
  if (answer.ok || answer.status === 403 || (second && person === null)) return answer;
  await noteFailedSignIn(answer.status, person, second);
  return answer;
}

async function emailIn(request: Request): Promise<string> {
  const body: unknown = await request.json().catch(() => null);
  const email = body && typeof body === "object" && "email" in body ? body.email : null;
  return typeof email === "string" ? email : "";
}

/** The cookies that an answer sets or takes back. */
export function cookiesOf(answer: Response): Cookie[] {
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
