import { defineConfig } from "prisma/config";

/** For Prisma's own command; the address is only needed by those of its verbs that ask a database. */
export default defineConfig({
  schema: "schema.prisma",
  migrations: { path: "migrations" },
  datasource: { url: process.env.DATABASE_URL ?? "" },
});
