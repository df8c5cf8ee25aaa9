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
};

export default config;
