import { Link } from "@/app/_parts/link";
import { coveragePage } from "@/lib/reports/coverage";
import { currentViewer } from "@/lib/reports/viewer";
import { AskedWrong } from "../../_parts/asked-wrong";
import { PageHead } from "../../_parts/page-head";
import { PeriodPicker } from "../../_parts/period-picker";
import { rightly } from "../../_parts/rightly";
import { Section } from "../../_parts/section";
import { within } from "../../_parts/within";
import { Coverage } from "../_page/coverage";

export const metadata = { title: "Coverage" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function CoveragePage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/records/coverage", async () => {
    const viewer = await currentViewer();
    return rightly(() => coveragePage(viewer, address));
  });
  if ("wrong" in view)
    return <AskedWrong title="Coverage" wrong={view.wrong} path="/records/coverage" />;
  const missing = view.chairs.filter((chair) => chair.missing.length > 0);
  return (
    <>
      <PageHead
        over={<Link href="/records">Back to records</Link>}
        title="Coverage"
        lead="What was expected of each chair against what came, so that a missing file is noticed before the audit."
        actions={<Link href="/records#bring">Bring files in</Link>}
      />
      <PeriodPicker
        path="/records/coverage"
        periods={view.periods}
        practices={view.practices}
        practice={view.practice}
      />
      <p role="status">{view.missing}</p>
      <Section
        id="missing"
        title="What is missing"
        note="There may be a good reason, as a holiday; the list only says what is unusual for the chair."
      >
        {missing.length === 0 ? (
          <p>Nothing in this period.</p>
        ) : (
          missing.map((chair) => (
            <details
              key={`${chair.practice}/${chair.chair}`}
              open={chair.missing.length <= 10 || missing.length === 1}
            >
              <summary>
                Chair {chair.chair} of {chair.practice} ({chair.missing.length})
              </summary>
              <ul>
                {chair.missing.map((one) => (
                  <li key={one.day}>{one.words}</li>
                ))}
              </ul>
            </details>
          ))
        )}
      </Section>
      <Section
        id="coverage"
        title="Day by day"
        note={
          <>
            The number is how many visits are in. – marks a quiet day: no visits where the same
            weekday had some in at least half of the eight weeks before. ! marks what is missing: a
            gap in visits, or in deliveries, instruments, upkeep or a device that at least half of
            the chair&apos;s days with treatments had, so long that by the chair&apos;s own habit no
            more than one in fifteen is. It is a rule of thumb.
          </>
        }
      >
        <Coverage chairs={view.chairs} />
      </Section>
    </>
  );
}
