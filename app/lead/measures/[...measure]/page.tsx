import { AskedWrong } from "@/app/_parts/asked-wrong";
import { Cautions } from "@/app/_parts/cautions";
import { Figure } from "@/app/_parts/figure";
import { fromAddress } from "@/app/_parts/from-address";
import { Link } from "@/app/_parts/link";
import { NothingToShow } from "@/app/_parts/nothing-to-show";
import { PageHead } from "@/app/_parts/page-head";
import { PeriodPicker } from "@/app/_parts/period-picker";
import { rightly } from "@/app/_parts/rightly";
import { Section } from "@/app/_parts/section";
import { within } from "@/app/_parts/within";
import { measurePage } from "@/lib/reports/measure-page";
import { currentViewer } from "@/lib/reports/viewer";
import { titleAt } from "@/lib/views/measure-words";
import { periodWords } from "@/lib/views/period-words";
import { AcrossClinicians } from "../_page/across-clinicians";
import { BeyondChance } from "../_page/beyond-chance";
import { CaseMix } from "../_page/case-mix";
import { Outcomes } from "../_page/outcomes";
import { OverTime } from "../_page/over-time";
import { Places } from "../_page/places";
import { RecordsBehind } from "../_page/records-behind";
import { SpanNote } from "../_page/span-note";
import { Strata } from "../_page/strata";

type Props = {
  params: Promise<{ measure: string[] }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
};

/** The measure's own name; what is no measure keeps the page's. */
export async function generateMetadata(props: Props) {
  const measure = (await props.params).measure.map((part) => fromAddress(part)).join("/");
  return { title: titleAt(measure) ?? "A measure" };
}

export default async function MeasurePage(props: Props) {
  const [{ measure }, address] = await Promise.all([props.params, props.searchParams]);
  const page = await within(
    "/lead/measures/[...measure]",
    async () => {
      const viewer = await currentViewer();
      return rightly(() =>
        measurePage(viewer, measure.map((part) => fromAddress(part)).join("/"), address),
      );
    },
    { measure: measure.map((part) => fromAddress(part)).join("/"), whose: address.whose },
  );
  if ("wrong" in page)
    return (
      <AskedWrong
        title="A measure"
        wrong={page.wrong}
        path="/lead"
        pathWords="Back to this quarter"
      />
    );
  const { view, period, practice, shown, span } = page;
  const path = `/lead/measures/${view.measure}`;
  return (
    <>
      <PageHead
        title={view.title}
        over={
          <>
            <Link href={`/lead?period=${period.name}${practice ? `&practice=${practice}` : ""}`}>
              This quarter
            </Link>
            {` · ${periodWords(shown)}, ${practice ? `practice ${practice}` : "all practices"}`}
          </>
        }
      />
      <PeriodPicker
        path={path}
        periods={page.periods}
        practices={page.practices}
        practice={practice}
        keep={span ? { span } : {}}
      />
      <SpanNote path={path} period={period} shown={shown} span={span} practice={practice} />
      <Section id="what" title="What it is">
        {view.whole ? (
          <Figure row={view.whole} is={view.wholeIs} />
        ) : view.notInForce ? null : (
          <p className="missing">No units in this period.</p>
        )}
        <dl className="facts">
          {view.facts.map((fact) => (
            <div key={fact.term} style={{ display: "contents" }}>
              <dt>{fact.term}</dt>
              <dd>{fact.words}</dd>
            </div>
          ))}
        </dl>
        {view.empty ? null : (
          <>
            <h3>Population and what is left out</h3>
            <ul>
              {view.population.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </>
        )}
      </Section>
      {view.empty ? (
        <NothingToShow
          what={view.notInForce ?? "There are no units of this measure in this period."}
        >
          <p>
            {view.notInForce
              ? "Choose another period."
              : "Choose another period, or ask the record keeper to bring its records in."}
          </p>
        </NothingToShow>
      ) : (
        <>
          {view.outcomes ? <Outcomes rows={view.outcomes} /> : null}
          {page.comparing ? <BeyondChance view={page.comparing} /> : null}
          {page.comparing?.caseMix ? <CaseMix view={page.comparing.caseMix} /> : null}
          {view.strata ? <Strata strata={view.strata} basis={view.basis ?? []} /> : null}
          <AcrossClinicians view={view} />
          <Places places={view.places} />
        </>
      )}
      <OverTime
        path={path}
        view={page.overTime}
        keep={{ period: period.name, practice, span }}
        form={{
          measure: view.measure,
          period: shown.name,
          practice: practice ?? "",
          whose: page.overTime.asked.name,
        }}
      />
      {view.empty ? null : (
        <RecordsBehind
          path={path}
          records={page.records}
          keep={{ period: period.name, practice, span }}
        />
      )}
      <Cautions />
    </>
  );
}
