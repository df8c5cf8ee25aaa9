import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { z } from "zod";

const accounts = z.array(z.object({ email: z.string(), password: z.string(), role: z.string() }));

/**
 * Lines on who can sign in: the demo's accounts while the home keeps them in `demo-accounts.json`, else
 * how the first administrator is added.
 */
export async function whoCanSignIn(folder: string): Promise<string[]> {
  const text = await readFile(join(folder, "demo-accounts.json"), "utf8").catch(() => null);
  const demo = text === null ? [] : accounts.parse(JSON.parse(text));
  if (demo.length === 0) {
    return [
      "Sign in with your account. The first administrator is added with:",
      "  npm run -s canal-audit -- people add --role administrator --email you@example.org",
    ];
  }
  const width = (key: "role" | "email") => Math.max(...demo.map((account) => account[key].length));
  return [
    "The demo's people can sign in (invented; not for real records):",
    ...demo.map(
      ({ role, email, password }) =>
        `  ${role.padEnd(width("role"))}   ${email.padEnd(width("email"))}   ${password}`,
    ),
  ];
}
