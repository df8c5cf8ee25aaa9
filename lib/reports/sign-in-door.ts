import { parseSetCookieHeader } from "better-auth/cookies";
import { signInService } from "@/lib/store/sign-in/sign-in";
import { asSigningIn } from "@/lib/store/wall/as-whom";

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
  const asked = new Request(address, { method: "POST", headers, body: JSON.stringify(body) });
  return asSigningIn(() => service.handler(asked));
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
