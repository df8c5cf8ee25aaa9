import { type NextRequest, NextResponse } from "next/server";

/**
 * Gives every page its Content-Security-Policy, with a nonce of this one answer: Next reads it from the request's own
 * headers and puts it on each of its scripts. Named and placed as Next demands; who may see what is asked by the pages
 * themselves. Answers without scripts (under /api, and files) have a policy without a nonce: next.config.ts.
 */
export function proxy(request: NextRequest): NextResponse {
  const policy = policyWith(
    Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString("base64"),
  );
  const headers = new Headers(request.headers);
  headers.set("content-security-policy", policy);
  const answer = NextResponse.next({ request: { headers } });
  answer.headers.set("content-security-policy", policy);
  return answer;
}

export const config = {
  // An upload passes by unread: what a proxy lets through is cut off at ten megabytes.
  matcher: "/((?!api/|_next/static/|icon).*)",
};

/** What a page may do. The order is that of the names, so that a change is easy to see. */
function policyWith(nonce: string): string {
  const allowed = {
    "default-src": "'none'",
    "base-uri": "'none'",
    "connect-src": "'self'",
    "font-src": "'self'",
    "form-action": "'self'",
    "frame-ancestors": "'none'",
    "img-src": "'self'",
    "manifest-src": "'self'",
    "object-src": "'none'",
    // Only what bears the nonce and what such a script loads: no inline code, no eval, no host by its name.
    "script-src": `'nonce-${nonce}' 'strict-dynamic'`,
    "script-src-attr": "'none'",
    "style-src": "'self'",
    // The chart library and the lanes of a visit place things by style attributes, which can run nothing and, with
    // every source of the page its own, fetch nothing from elsewhere.
    "style-src-attr": "'unsafe-inline'",
  };
  return Object.entries(allowed)
    .map(([name, value]) => `${name} ${value}`)
    .join("; ");
}
