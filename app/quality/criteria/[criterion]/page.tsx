import { AskedWrong } from "@/app/_parts/asked-wrong";
import { Cautions } from "@/app/_parts/cautions";
import { fromAddress } from "@/app/_parts/from-address";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { PeriodPicker } from "@/app/_parts/period-picker";
import { rightly } from "@/app/_parts/rightly";
import { within } from "@/app/_parts/within";
import { qualityCriterion } from "@/lib/reports/quality-criterion";
import { currentViewer } from "@/lib/reports/viewer";
import { titleAt } from "@/lib/views/measure-words";
import { periodWords } from "@/lib/views/period-words";
import { CriterionHistory } from "../../_page/criterion-history";

type Props = {
  params: Promise<{ criterion: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
};

export async function generateMetadata(props: Props) {
  const id = fromAddress((await props.params).criterion);
  return { title: titleAt(`criterion/${id}`) ?? "A criterion" };
}

/** One criterion in the period and over the last quarters. */
export default async function QualityCriterionPage(props: Props) {
  const [{ criterion }, address] = await Promise.all([props.params, props.searchParams]);
  const view = await within(
    "/quality/criteria/[criterion]",
    async () => {
      const viewer = await currentViewer();
      return rightly(() => qualityCriterion(viewer, fromAddress(criterion), address));
    },
    { criterion: fromAddress(criterion) },
  );
  if ("wrong" in view) return <AskedWrong title="A criterion" wrong={view.wrong} path="/quality" />;
  const { id, title } = view.of.criterion;
  const asked = new URLSearchParams({
    period: view.period.name,
    ...(view.practice ? { practice: view.practice } : {}),
  });
  return (
    <>
      <PageHead
        title={title}
        over={<Link href={`/quality?${asked}`}>Adherence, {periodWords(view.period)}</Link>}
        actions={
          <>
            <Link className="button" href={`/units/criterion/${id}?${asked}`}>
              Its units
            </Link>
            <Link className="button" href={`/protocol/${id}`}>
              What it demands
            </Link>
          </>
        }
      />
      <PeriodPicker
        path={`/quality/criteria/${id}`}
        periods={view.periods}
        practices={view.practices}
        practice={view.practice}
      />
      <CriterionHistory of={view} />
      <Cautions />
    </>
  );
}
