import { AskedWrong } from "@/app/_parts/asked-wrong";
import { Cautions } from "@/app/_parts/cautions";
import { fromAddress } from "@/app/_parts/from-address";
import { Link } from "@/app/_parts/link";
import { NothingToShow } from "@/app/_parts/nothing-to-show";
import { PageHead } from "@/app/_parts/page-head";
import { PeriodPicker } from "@/app/_parts/period-picker";
import { rightly } from "@/app/_parts/rightly";
import { within } from "@/app/_parts/within";
import { unitsPage } from "@/lib/reports/units";
import { currentViewer } from "@/lib/reports/viewer";
import { titleAt } from "@/lib/views/measure-words";
import { OutcomeChoice } from "../_page/outcome-choice";
import { UnitTable } from "../_page/unit-table";

type Props = {
  params: Promise<{ measure: string[] }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
};

export async function generateMetadata(props: Props) {
  return { title: `Units: ${titleAt(await named(props)) ?? "a measure"}` };
}

/** The units behind a figure, by outcome, as far as the viewer may see them. */
export default async function UnitsPage(props: Props) {
  const [measure, address] = await Promise.all([named(props), props.searchParams]);
  const view = await within(
    "/units/[...measure]",
    async () => {
      const viewer = await currentViewer();
      return rightly(() => unitsPage(viewer, measure, address));
    },
    { measure, period: address.period, practice: address.practice, whose: address.whose },
  );
  if ("wrong" in view)
    return <AskedWrong title="Units" wrong={view.wrong} path="/" pathWords="Back to your page" />;
  const path = `/units/${view.measure}`;
  const asked = (page?: number) =>
    new URLSearchParams({
      period: view.period.name,
      ...(view.practice ? { practice: view.practice } : {}),
      ...(view.outcome ? { outcome: view.outcome } : {}),
      ...(page ? { page: String(page) } : {}),
    });
  return (
    <>
      <PageHead
        title={view.title}
        over={view.own ? `Your units, ${view.periodWords}` : `Units, ${view.periodWords}`}
        lead="Each leads to the page that says which clause put it where it is."
        actions={
          <a className="button" href={`/api${path}?${asked()}`}>
            Take these units as a file
          </a>
        }
      />
      <PeriodPicker
        path={path}
        periods={view.periods}
        practices={view.practices}
        practice={view.practice}
        keep={view.outcome ? { outcome: view.outcome } : {}}
      />
      <OutcomeChoice of={view} path={path} />
      <p className="soft">{view.words}</p>
      {view.lines.length > 0 ? (
        <UnitTable lines={view.lines} named={view.named} />
      ) : (
        <NothingToShow what={view.notInForce ?? "No unit is like this."}>
          <p>{view.notInForce ? "Choose another period." : "Choose another outcome or period."}</p>
        </NothingToShow>
      )}
      <nav className="row" aria-label="Pages of units">
        {view.page > 1 ? <Link href={`${path}?${asked(view.page - 1)}`}>← Later ones</Link> : null}
        {view.more ? <Link href={`${path}?${asked(view.page + 1)}`}>Earlier ones →</Link> : null}
      </nav>
      <Cautions />
    </>
  );
}

async function named(props: Props): Promise<string> {
  return (await props.params).measure.map((part) => fromAddress(part)).join("/");
}
