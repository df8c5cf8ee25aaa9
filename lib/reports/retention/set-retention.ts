import type { PeopleReach } from "@/lib/access/reach";
import { type Retained, retained } from "@/lib/records/retention";
import { setRetention } from "@/lib/store/retention/periods";

const longest = 1200;

/** Reads `records=120` or `notes=never`; undefined where it is neither. */
function readOne(text: string): { what: Retained; months: number | null } | undefined {
  const [name, value = ""] = text.split("=");
  const what = retained.find((one) => one === name);
  if (!what) return undefined;
  if (value === "never") return { what, months: null };
  const months = /^\d{1,4}$/.test(value) ? Number(value) : 0;
  return months >= 1 && months <= longest ? { what, months } : undefined;
}

/** Sets how long things are kept, all of them or none. Answers the sentence that says what is wrong, or null. */
export async function setRetentions(
  reach: PeopleReach,
  texts: readonly string[],
): Promise<string | null> {
  const read = texts.map((text) => ({ text, one: readOne(text) }));
  const wrong = read.find(({ one }) => !one);
  if (wrong)
    return `"${wrong.text}" sets nothing: write ${retained.join(", ")} with months from 1 to ${longest}, as records=120, or never, as records=never.`;
  for (const { one } of read) if (one) await setRetention(reach, one.what, one.months);
  return null;
}
