import { notFound } from "next/navigation";
import { Cautions } from "@/app/_parts/cautions";
import { Link } from "@/app/_parts/link";
import { OverallScores } from "@/app/_parts/overall-scores";
import { Section } from "@/app/_parts/section";
import { TableBox } from "@/app/_parts/table-box";
import { within } from "@/app/_parts/within";
import { AdherenceMatrix } from "@/app/lead/_page/adherence-matrix";
import { BeyondChance } from "@/app/lead/_page/beyond-chance";
import { Families } from "@/app/lead/_page/families";
import { resultsPage } from "@/lib/reports/audits/pages";
import { currentViewer } from "@/lib/reports/viewer";
import { unbroken } from "@/lib/views/unbroken";
import { AuditFrame } from "../../_page/audit-frame";
import { Written } from "../../_page/written";

export const metadata = { title: "Audit: results" };

export default async function ResultsPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const page = await within(
    "/audits/[id]/results",
    async () => resultsPage(await currentViewer(), id),
    { audit: id },
  );
  if (!page) notFound();
  const { head, view, since } = page;
  return (
    <AuditFrame
      head={head}
      step="results"
      lead="What the records come to. Figures are a prompt to look, never a verdict on a person."
    >
      <Section id="words" title="In words">
        <p className={page.disputed ? "note note-look" : "note"}>
          {page.confirming}{" "}
          <Link href={`/audits/${head.id}/confirming#disputes`}>
            {page.disputed ? "See the disputes" : "See who confirmed"}
          </Link>
        </p>
        <Written audit={head.id} of={page.results} open={head.open} />
      </Section>
      {since ? (
        <Section
          id="since"
          title="Since the audit before"
          note={`What earlier actions were about: ${since.words}.`}
        >
          {since.lines.length === 0 ? (
            <p>No earlier action was about a measure that both audits have.</p>
          ) : (
            <TableBox label="Before and after">
              <table className="fold">
                <thead>
                  <tr>
                    <th scope="col">Action</th>
                    <th scope="col">Measure</th>
                    <th scope="col">Before</th>
                    <th scope="col">Now</th>
                    <th scope="col">Difference</th>
                  </tr>
                </thead>
                <tbody>
                  {since.lines.map((one) => (
                    <tr key={one.id}>
                      <th scope="row">{one.action}</th>
                      <td data-label="Measure">
                        {one.measure}, {one.about}
                      </td>
                      <td data-label="Before">{unbroken(one.before)}</td>
                      <td data-label="Now">{unbroken(one.now)}</td>
                      <td data-label="Difference">{unbroken(one.change)}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </TableBox>
          )}
        </Section>
      ) : null}
      <Section
        id="chance"
        title="Beyond chance?"
        note="Clinicians' rates, after allowing for how many are compared."
      >
        <BeyondChance view={view.chance} />
      </Section>
      <Section
        id="criteria"
        title="Criteria"
        note="Each cell leads to the records as they are now."
      >
        <AdherenceMatrix of={view.matrix} />
      </Section>
      <Section id="overall" title="Overall" note="Over all criteria in force, whatever the scope.">
        <OverallScores of={view.overall} first="Whose" />
      </Section>
      <Section id="across" title="Across clinicians" note="In the order of their codes.">
        <Families families={view.families} />
      </Section>
      <Cautions />
    </AuditFrame>
  );
}
