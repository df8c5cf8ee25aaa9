import type { NextConfig } from "next";

const config: NextConfig = {
  poweredByHeader: false,
  // These find files of their own beside them or keep one connection pool a process: Node loads them, unbundled.
  serverExternalPackages: ["pg", "pg-copy-streams", "@prisma/adapter-pg", "@prisma/client"],
  // `npm test` checks types; checking them again would double the time of the first start.
  typescript: { ignoreBuildErrors: true },
  // A lock file further up must not make Next take that folder for the project.
  turbopack: { root: import.meta.dirname },
  outputFileTracingRoot: import.meta.dirname,
  // What is refused answers with status 403: app/_parts/within.ts.
  experimental: {
    authInterrupts: true,
    // No form of a page sends more; files come in by a route that counts as it reads.
    serverActions: { bodySizeLimit: "1mb" },
    // What goes through proxy.ts is held in memory up to this, and cut off there: above the limit before, which answers.
    proxyClientMaxBodySize: "2mb",
  },
  headers: async () => [
    { source: "/:path*", headers: everyAnswer },
    // Pages have theirs from proxy.ts.
    { source: "/api/:path*", headers: [noScripts, notKept] },
    { source: "/:icon(icon.*)", headers: [noScripts] },
    // Files under this address are named by their contents; nobody's records are among them.
    { source: "/:page((?!api/|_next/static/|icon).*)", headers: [notKept] },
    // Behind whatever ends TLS; over plain HTTP browsers must not be told and would not listen.
    {
      source: "/:path*",
      has: [{ type: "header", key: "x-forwarded-proto", value: "https" }],
      headers: [{ key: "Strict-Transport-Security", value: "max-age=31536000" }],
    },
  ],
  // Nobody is led to the sign-in with the address they wanted; whoever has a cookie is asked by the page itself.
  redirects: async () => [
    {
      source: "/:to((?!sign-in|sign-out|api/|_next/|favicon|icon).*)",
      missing: [
        { type: "cookie", key: "canal-audit.session_token" },
        { type: "cookie", key: "__Host-canal-audit.session_token" },
      ],
      destination: "/sign-in?to=/:to",
      permanent: false,
    },
  ],
};

const everyAnswer = [
  { key: "X-Content-Type-Options", value: "nosniff" },
  { key: "Referrer-Policy", value: "same-origin" },
  { key: "Cross-Origin-Opener-Policy", value: "same-origin" },
  { key: "Cross-Origin-Resource-Policy", value: "same-origin" },
  {
    key: "Permissions-Policy",
    value:
      "camera=(), microphone=(), geolocation=(), payment=(), usb=(), serial=(), bluetooth=(), hid=(), midi=()",
  },
];
const noScripts = {
  key: "Content-Security-Policy",
  value: "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
};
/** What is read for somebody stays in no store, neither the browser's nor one on the way. */
const notKept = { key: "Cache-Control", value: "private, no-store" };

export default config;
