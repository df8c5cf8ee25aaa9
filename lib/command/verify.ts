import { holderReach } from "@/lib/access/reach";
import { verifyAudit } from "@/lib/reports/audits/verify-audit";
import { byCommand } from "@/lib/reports/log/by-command";
import { readOptions } from "./read-options";
import { CannotDo, type Done } from "./verb";

/** `verify AUDIT`: every signed version against its fingerprint and against what today's records come to. */
export async function verify(args: string[]): Promise<Done> {
  const { positionals } = readOptions(args, [], { words: true });
  const [id = ""] = positionals;
  if (positionals.length !== 1 || !/^\d{1,9}$/.test(id))
    throw new CannotDo("Say which audit by its number, as its address has it: verify 12.");
  return byCommand("canal-audit verify", { audit: id }, async () => {
    const found = await verifyAudit(holderReach().figures, Number(id));
    if (!found) throw new CannotDo(`There is no audit ${id}.`);
    if (found.versions.length === 0) throw new CannotDo(`${found.name} was never signed.`);
    return {
      text: [
        found.name,
        ...found.versions.flatMap((one) => [
          ...one.lines,
          `  SHA-256 of what was signed    ${one.sha256}`,
          `  SHA-256 of the figures then   ${one.computedSha256}`,
          `  SHA-256 of the figures now    ${one.computedNow}`,
        ]),
      ].join("\n"),
      json: found,
    };
  });
}
