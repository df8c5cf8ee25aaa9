import { cookies } from "next/headers";
import type { Cookie } from "@/lib/reports/sign-in-door";

/** Sets in the browser what the sign-in answered. */
export async function setCookies(given: readonly Cookie[]): Promise<void> {
  const jar = await cookies();
  for (const { name, value, attributes } of given) jar.set(name, value, attributes);
}
