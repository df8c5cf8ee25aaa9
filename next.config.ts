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
  experimental: { authInterrupts: true },
  headers: async () => [{ source: "/:path*", headers: everyAnswer }],
  // Nobody is led to the sign-in with the address they wanted; whoever has a cookie is asked by the page itself.
  redirects: async () => [
    {
      source: "/:to((?!sign-in|sign-out|api/|_next/|favicon|icon).*)",
      missing: [
        { type: "cookie", key: "canal-audit.session_token" },
        { type: "cookie", key: "__Secure-canal-audit.session_token" },
      ],
      destination: "/sign-in?to=/:to",
      permanent: false,
    },
  ],
};

const everyAnswer = [
  { key: "X-Content-Type-Options", value: "nosniff" },
  { key: "Referrer-Policy", value: "same-origin" },
  {
    key: "Content-Security-Policy",
    value: "frame-ancestors 'none'; base-uri 'self'; form-action 'self'; object-src 'none'",
  },
  { key: "Permissions-Policy", value: "camera=(), microphone=(), geolocation=()" },
];

export default config;
