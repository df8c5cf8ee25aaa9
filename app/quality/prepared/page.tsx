import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { Schedules } from "@/app/_parts/schedules";
import { within } from "@/app/_parts/within";
import { schedulesOf } from "@/lib/reports/audits/schedules";
import { currentViewer } from "@/lib/reports/viewer";
import { endReportScheduleAct, scheduleReportAct } from "../acts";

export const metadata = { title: "Prepared reports" };

export default async function PreparedPage() {
  const view = await within("/quality/prepared", async () =>
    schedulesOf(await currentViewer(), "report"),
  );
  return (
    <>
      <PageHead
        over={<Link href="/quality">Back to adherence</Link>}
        title="Prepared reports"
        lead="Adherence reports that are made by themselves when a quarter ends."
      />
      <Schedules of={view} add={scheduleReportAct} end={endReportScheduleAct} withFormat />
    </>
  );
}
