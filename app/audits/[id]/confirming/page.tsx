import { notFound } from "next/navigation";
import { AnsweringForm } from "@/app/_parts/answering-form";
import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";
import { TableBox } from "@/app/_parts/table-box";
import { within } from "@/app/_parts/within";
import { confirmingPage } from "@/lib/reports/audits/pages";
import { currentViewer } from "@/lib/reports/viewer";
import { AuditFrame } from "../../_page/audit-frame";
import { answerDisputeAct, closeWindowAct, openWindowAct } from "../../acts";

export const metadata = { title: "Audit: confirming" };

export default async function ConfirmingPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const page = await within(
    "/audits/[id]/confirming",
    async () => confirmingPage(await currentViewer(), id),
    { audit: id },
  );
  if (!page) notFound();
  const { head, view } = page;
  const hidden = { audit: String(head.id) };
  return (
    <AuditFrame
      head={head}
      step="confirming"
      lead="Each clinician confirms that the records are theirs and right, or says which are not. Disputes stand beside the figures."
    >
      <Section id="window" title="The window">
        <p>{view.window}</p>
        {head.open ? (
          <AnsweringForm
            act={openWindowAct}
            button={view.until ? "Open until that day" : "Open the window"}
            {...(view.until ? {} : { kind: "main" as const })}
            row
            label="Window for confirming"
            hidden={hidden}
            fields={[
              {
                label: "Last day",
                name: "until",
                type: "date",
                defaultValue: view.until,
                required: true,
              },
            ]}
          />
        ) : null}
        {head.open && view.open ? (
          <AnsweringForm
            act={closeWindowAct}
            button="Close it now"
            row
            label="Close the window"
            hidden={hidden}
          />
        ) : null}
      </Section>
      <Section
        id="clinicians"
        title="Clinicians"
        note="What somebody noted for themselves is theirs alone."
      >
        <p>{view.summary}</p>
        <TableBox label="Clinicians of this audit">
          <table className="fold">
            <thead>
              <tr>
                <th scope="col">Clinician</th>
                <th scope="col">Confirmed</th>
                <th scope="col">Read their page</th>
                <th scope="col">Disputed visits</th>
                <th scope="col">Their answer</th>
              </tr>
            </thead>
            <tbody>
              {view.clinicians.map((one) => (
                <tr key={one.key}>
                  <th scope="row">{one.name}</th>
                  <td data-label="Confirmed">{one.confirmed}</td>
                  <td data-label="Read their page">{one.read}</td>
                  <td data-label="Disputed visits">{one.disputes}</td>
                  <td data-label="Their answer">{one.answer || "none"}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      </Section>
      <Section id="disputes" title="Disputes" note="The figures count these records as they stand.">
        {view.disputes.length === 0 ? <p className="missing">None.</p> : null}
        {view.disputes.map((one) => (
          <div key={one.id} className="stack-tight">
            <p>
              <strong>{one.clinician}</strong>, <Link href={one.href}>{one.visit}</Link>.{" "}
              {one.words}
            </p>
            {one.answer ? <p className="soft">Answered: {one.answer}</p> : null}
            {head.open ? (
              <AnsweringForm
                act={answerDisputeAct}
                button={one.answer ? "Answer anew" : "Answer"}
                row
                label={`Answer on ${one.visit}`}
                hidden={{ ...hidden, dispute: String(one.id) }}
                fields={[{ label: "Answer", name: "answer", required: true, maxLength: 1000 }]}
              />
            ) : null}
          </div>
        ))}
      </Section>
    </AuditFrame>
  );
}
