import { holderReach } from "@/lib/access/reach";
import { prepareDue } from "@/lib/reports/audits/prepare-due";
import { byCommand } from "@/lib/reports/log/by-command";
import { readOptions } from "./read-options";
import type { Done } from "./verb";

/** `prepare`: what schedules ask for of the quarter that ended last; for a machine's own timer. */
export async function prepare(args: string[]): Promise<Done> {
  readOptions(args, []);
  return byCommand("canal-audit prepare", {}, async () => {
    const today = new Date().toISOString().slice(0, 10);
    const { figures } = holderReach();
    const made = [
      ...(await prepareDue(figures, "audit", today)),
      ...(await prepareDue(figures, "report", today)),
    ];
    return {
      text:
        made.length === 0
          ? "Nothing is due: every schedule has what it asks for."
          : made.map(({ words }) => words).join("\n"),
      json: made,
    };
  });
}
