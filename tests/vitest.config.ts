import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL("..", import.meta.url));

export default defineConfig({
  root,
  resolve: {
    alias: {
      "@": root.replace(/\/$/, ""),
      "server-only": `${root}node_modules/server-only/empty.js`,
    },
  },
  test: {
    globalSetup: ["tests/database.ts"],
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/browser/**", "node_modules/**"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
