import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { z } from "zod";
import { projectFolder } from "@/lib/store/home/project-folder";

const found = z.object({
  vulnerabilities: z.record(
    z.string(),
    z.object({ severity: z.string(), range: z.string().optional() }),
  ),
});
const grave = ["high", "critical"];

/**
 * Asks the registry for what is known against the packages that the pages and the command run on. Fails on what is
 * high or critical. Where nobody answers (no network, a registry that keeps no such list) it says so and is no failure:
 * the tests have to pass on a machine without a network.
 */
export async function advisories(): Promise<boolean> {
  const answer = found.safeParse(json(await audit()));
  if (!answer.success) {
    console.log(
      "Not known: the registry did not answer. Run `npm audit --omit=dev` where it does.",
    );
    return true;
  }
  const all = Object.entries(answer.data.vulnerabilities);
  for (const [name, { severity, range }] of all) console.log(`${name} ${range ?? ""}: ${severity}`);
  console.log(`${all.length} known against what the tool runs on`);
  return !all.some(([, { severity }]) => grave.includes(severity));
}

/** Its exit code says whether there are any; what it prints says which. */
async function audit(): Promise<string> {
  const words = ["audit", "--omit=dev", "--json", "--fetch-retries=0", "--fetch-timeout=20000"];
  const options = { cwd: projectFolder, timeout: 60_000, maxBuffer: 64 * 1024 * 1024 };
  return promisify(execFile)("npm", words, { ...options, shell: process.platform === "win32" })
    .then(({ stdout }) => stdout)
    .catch((error: { stdout?: string }) => error.stdout ?? "");
}

function json(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
