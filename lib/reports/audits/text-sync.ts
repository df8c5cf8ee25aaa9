import { z } from "zod";
import { leadReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { lookSteps } from "@/lib/records/audit-work";
import { auditWithin } from "@/lib/store/audits/audits";
import { type KeptText, keepText } from "@/lib/store/audits/texts";
import { workOf } from "@/lib/store/audits/work";
import { mergedText } from "@/lib/views/audits/merged-text";
import { textKeys } from "@/lib/views/audits/text-keys";

const longest = 20_000;
const typed = z.object({
  key: z.string().max(300).refine(isKey),
  begun: z.number().int().min(0),
  text: z
    .string()
    .max(longest)
    .regex(/^[^\0]*$/),
});

/** What a text of an audit now is, or why it was not kept. */
export type TextAnswer = KeptText | { readonly wrong: string };

/**
 * Keeps a text of an audit as it was typed and hands back what is in force, with what others typed meanwhile in it; null where there is
 * no such audit within the viewer's reach. @throws Refused
 */
export async function keepAuditText(
  viewer: Viewer,
  id: string,
  given: unknown,
): Promise<TextAnswer | null> {
  const reach = leadReach(viewer);
  const audit = numberOf(id);
  if (audit === null || !(await auditWithin(reach, audit))) return null;
  const read = typed.safeParse(given);
  if (!read.success)
    return {
      wrong: `This was not kept: a text has a place in the audit and no more than ${longest} characters.`,
    };
  const { key, ...text } = read.data;
  const kept = await keepText(reach, audit, key, text, mergedText);
  return (
    kept ?? {
      wrong:
        "This was not kept: the audit has been signed or set aside meanwhile. Copy what you typed and load the page again.",
    }
  );
}

/** Every text of an audit in force, by key, for whoever has it open; null where there is no such audit. @throws Refused */
export async function auditTexts(
  viewer: Viewer,
  id: string,
): Promise<Record<string, KeptText & { readonly by: string }> | null> {
  const audit = numberOf(id);
  const work = audit === null ? null : await workOf(leadReach(viewer), audit);
  return (
    work &&
    Object.fromEntries(
      work.texts.map(({ key, text, revision, by }) => [key, { text, revision, by }]),
    )
  );
}

function numberOf(id: string): number | null {
  return /^\d{1,9}$/.test(id) ? Number(id) : null;
}

function isKey(key: string): boolean {
  if (textKeys.some((one) => one === key)) return true;
  return key.startsWith("data/") || lookSteps.some((step) => key.startsWith(`look/${step}/`));
}
