import { holderReach } from "@/lib/access/reach";
import { byCommand } from "@/lib/reports/log/by-command";
import { type Kept, retentionRun, retentionShown } from "@/lib/reports/retention/retention";
import { setRetentions } from "@/lib/reports/retention/set-retention";
import { readOptions } from "./read-options";
import { CannotDo, type Done } from "./verb";

const today = () => new Date().toISOString().slice(0, 10);

/** `retention --show`, `retention --set records=120 --set notes=never`, `retention --run`. */
export async function retention(args: string[]): Promise<Done> {
  const { flags, many } = readOptions(args, [], { flags: ["show", "run"], many: ["set"] });
  const set = many.set ?? [];
  if (Number(flags.has("show")) + Number(flags.has("run")) + Number(set.length > 0) !== 1)
    throw new CannotDo(
      "Say one of: `retention --show`, `retention --set records=120`, `retention --run`.",
    );
  if (flags.has("run"))
    return told(
      await byCommand("canal-audit retention --run", {}, (home) =>
        retentionRun(holderReach(), home, today()),
      ),
      "deleted",
    );
  if (set.length > 0) {
    const kept = await byCommand("canal-audit retention --set", {}, async () => {
      const wrong = await setRetentions(holderReach().people, set);
      if (wrong) throw new CannotDo(wrong);
      return retentionShown(holderReach(), today());
    });
    return told(kept, "older, to be deleted by --run");
  }
  const kept = await byCommand("canal-audit retention --show", {}, () =>
    retentionShown(holderReach(), today()),
  );
  return told(kept, "older, to be deleted by --run");
}

function told(kept: readonly Kept[], words: string): Done {
  const lines = kept.map(({ what, months, from, older }) =>
    months === null
      ? `${what}: kept for good`
      : `${what}: kept ${months} months, from ${from} on; ${older} ${words}`,
  );
  return {
    text: [...lines, "Signed audits are kept whatever is set."].join("\n"),
    json: { retention: kept },
  };
}
