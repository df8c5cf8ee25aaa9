import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { Schedules } from "@/app/_parts/schedules";
import { within } from "@/app/_parts/within";
import { schedulesOf } from "@/lib/reports/audits/schedules";
import { currentViewer } from "@/lib/reports/viewer";
import { endAuditScheduleAct, scheduleAuditAct } from "../acts";

export const metadata = { title: "Prepared audits" };

export default async function PreparedPage() {
  const view = await within("/audits/prepared", async () =>
    schedulesOf(await currentViewer(), "audit"),
  );
  return (
    <>
      <PageHead
        over={<Link href="/audits">All audits</Link>}
        title="Prepared audits"
        lead="Audits that are begun by themselves when a quarter ends, with all criteria in force."
      />
      <Schedules of={view} add={scheduleAuditAct} end={endAuditScheduleAct} />
    </>
  );
}
