import type { FiguresReach } from "@/lib/access/reach";
import type { LookStep } from "@/lib/records/audit-work";
import { inOpenAudit } from "./audits";

/** Ends the closer look at a flag at a step, or, with null, takes it up again. False where the audit is not open. */
export async function endLook(
  reach: FiguresReach,
  audit: number,
  flag: string,
  step: LookStep | null,
): Promise<boolean> {
  return inOpenAudit(reach, audit, async (client) => {
    await client.query("delete from audit_looks where audit_id = $1 and flag = $2", [audit, flag]);
    if (step)
      await client.query(
        "insert into audit_looks (audit_id, flag, step, by) values ($1, $2, $3, $4)",
        [audit, flag, step, reach.by],
      );
  });
}
