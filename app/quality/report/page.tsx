import { Link } from "@/app/_parts/link";
import { qualityReport } from "@/lib/reports/quality-report";
import { currentViewer } from "@/lib/reports/viewer";
import { exportFormats } from "@/lib/views/export-format";
import { AskedWrong } from "../../_parts/asked-wrong";
import { Cautions } from "../../_parts/cautions";
import { OverallScores } from "../../_parts/overall-scores";
import { PageHead } from "../../_parts/page-head";
import { PeriodPicker } from "../../_parts/period-picker";
import { rightly } from "../../_parts/rightly";
import { Section } from "../../_parts/section";
import { TableBox } from "../../_parts/table-box";
import { within } from "../../_parts/within";
import { ReportedCriterion } from "./reported-criterion";

export const metadata = { title: "Adherence report" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function ReportPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/quality/report", async () => {
    const viewer = await currentViewer();
    return rightly(() => qualityReport(viewer, address));
  });
  if ("wrong" in view)
    return <AskedWrong title="Adherence report" wrong={view.wrong} path="/quality/report" />;
  const { report } = view;
  const asked = new URLSearchParams({
    period: view.period.name,
    ...(view.practice ? { practice: view.practice } : {}),
  });
  return (
    <>
      <PageHead
        over={<Link href={`/quality?${asked}`}>Back to adherence</Link>}
        title="Adherence report"
        lead={`${report.period.words}, ${report.scope}`}
        actions={
          // Plain links: a file is made, and the export kept, when it is asked for and not before.
          Object.entries(view.noFile ? {} : exportFormats).map(([format, name]) => (
            <a
              key={format}
              className={format === "csv" ? "button main" : "button"}
              href={`/api/quality/adherence?${asked}&format=${format}`}
              download
            >
              Export as {name}
            </a>
          ))
        }
      />
      <PeriodPicker
        path="/quality/report"
        periods={view.periods}
        practices={view.practices}
        practice={view.practice}
      />
      <Section id="about" title="About this report">
        <dl className="facts">
          <dt>Period</dt>
          <dd>{report.period.words}</dd>
          <dt>Scope</dt>
          <dd>{report.scope}</dd>
          <dt>Records as of</dt>
          <dd>{report.cutOffWords}, when files were last brought in</dd>
          <dt>Software</dt>
          <dd>{report.software}</dd>
        </dl>
        <p>
          Every record of the period is counted; nothing is sampled. A rate is the units met, of
          those eligible and not excepted; what is not recorded is among them and stands apart from
          what was not met. “In these records” says whether the target was reached; “beyond chance”
          whether that is settled at this number of units.
        </p>
        <p>
          Masked is what rests on fewer than 5 patients or clinicians, and as much beside it as
          keeps it from being worked out from the reports of all practices, months, quarters and
          years together.
        </p>
        {view.noFile ? <p className="note">{view.noFile}</p> : null}
        {report.people.length > 0 ? (
          <TableBox label="People behind the records">
            <table className="fold">
              <thead>
                <tr>
                  <th scope="col">Practice</th>
                  <th scope="col" className="num">
                    Patients
                  </th>
                  <th scope="col" className="num">
                    Clinicians
                  </th>
                </tr>
              </thead>
              <tbody>
                {report.people.map((one) => (
                  <tr key={one.practice}>
                    <th scope="row">{one.practice}</th>
                    <td className="num" data-label="Patients">
                      {one.patientWords}
                    </td>
                    <td className="num" data-label="Clinicians">
                      {one.clinicianWords}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableBox>
        ) : null}
      </Section>
      {/* One landscape run on paper: a table never stands on another sheet than its title. */}
      <div className="wide">
        {report.criteria.map((one) => (
          <ReportedCriterion key={one.criterion.id} of={one} />
        ))}
        <Section id="overall" title="Overall" note="Two scores over all criteria at a visit.">
          <OverallScores of={report.overall} first="Where" spelledOut />
        </Section>
        <Cautions />
      </div>
    </>
  );
}
