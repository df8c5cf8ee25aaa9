import { defineConfig } from "@playwright/test";
import { findChromium, NO_CHROMIUM } from "../find-chromium";

const chromium = process.env.CHROMIUM || findChromium();
if (!chromium) throw new Error(NO_CHROMIUM);
process.env.CHROMIUM = chromium;

export default defineConfig({
  testDir: ".",
  testMatch: "**/*.spec.ts",
  outputDir: "results",
  globalSetup: ["./running-app.ts", "./everybody-signed-in.ts"],
  tsconfig: "../../lib/command/tsconfig.json",
  workers: 2,
  fullyParallel: false,
  forbidOnly: true,
  retries: 0,
  // A busy machine is slow and not wrong; how quick pages are is the bench's to say.
  timeout: 120_000,
  expect: { timeout: 15_000 },
  reporter: process.env.PLAYWRIGHT_JSON_OUTPUT_FILE ? [["list"], ["json"]] : [["list"]],
  use: {
    baseURL: process.env.CANAL_AUDIT_URL,
    viewport: { width: 1440, height: 900 },
    locale: "en-GB",
    timezoneId: "Europe/London",
    trace: "retain-on-failure",
    launchOptions: {
      executablePath: chromium,
      args: [
        // Containers give neither a sandbox nor a graphics card nor much shared memory; nothing may call out.
        ...["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--disable-quic"],
        ...["--no-first-run", "--disable-background-networking", "--disable-component-update"],
        "--disable-sync",
      ],
    },
  },
});
