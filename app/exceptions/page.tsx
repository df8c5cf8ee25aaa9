import { Link } from "@/app/_parts/link";
import { exceptionsPage } from "@/lib/reports/exceptions-page";
import { currentViewer } from "@/lib/reports/viewer";
import { AskedWrong } from "../_parts/asked-wrong";
import { Cautions } from "../_parts/cautions";
import { PageHead } from "../_parts/page-head";
import { PeriodPicker } from "../_parts/period-picker";
import { rightly } from "../_parts/rightly";
import { within } from "../_parts/within";
import { List } from "./_page/list";
import { OpenQuestions } from "./_page/open-questions";
import { Rates } from "./_page/rates";

export const metadata = { title: "Exceptions" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function ExceptionsPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/exceptions", async () => {
    const viewer = await currentViewer();
    return rightly(() => exceptionsPage(viewer, address));
  });
  if ("wrong" in view)
    return <AskedWrong title="Exceptions" wrong={view.wrong} path="/exceptions" />;
  const lead = view.as === "lead";
  return (
    <>
      <PageHead
        title={lead ? "Exceptions" : "My exceptions"}
        over={view.period.words}
        lead={
          lead
            ? "Where a criterion was rightly not met, why, and how often by whom."
            : "Where a criterion was rightly not met in your own work, and why."
        }
      />
      <PeriodPicker
        path="/exceptions"
        periods={view.periods}
        practices={view.practices}
        practice={view.practice}
        {...(view.keep.view ? { keep: { view: view.keep.view } } : {})}
      />
      <OpenQuestions of={view.open} />
      {view.rates ? <Rates of={view.rates} /> : null}
      <List of={view} />
      {lead ? null : (
        <p className="note">
          To enter one, open the visit from <Link href="/clinician#criteria">my criteria</Link> and
          choose the criterion there.
        </p>
      )}
      <Cautions />
    </>
  );
}
