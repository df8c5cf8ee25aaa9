import { notFound } from "next/navigation";
import { AnsweringForm } from "@/app/_parts/answering-form";
import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";
import { within } from "@/app/_parts/within";
import { signaturePage } from "@/lib/reports/audits/pages";
import { currentViewer } from "@/lib/reports/viewer";
import { AuditFrame } from "../../_page/audit-frame";
import { Written } from "../../_page/written";
import { leaveAsSignedAct, putAsideAct, reAuditAct, restateAct, signAct } from "../../acts";

export const metadata = { title: "Audit: signature" };

export default async function SignaturePage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const page = await within(
    "/audits/[id]/signature",
    async () => signaturePage(await currentViewer(), id),
    { audit: id },
  );
  if (!page) notFound();
  const { head, missing } = page;
  const hidden = { audit: String(head.id) };
  return (
    <AuditFrame
      head={head}
      step="signature"
      lead="What is signed is frozen with its figures, its texts and the versions of its records, and kept under a fingerprint."
    >
      <Section id="summary" title="In short">
        <Written audit={head.id} of={page.summary} open={head.open} rows={5} />
        <Written audit={head.id} of={page.recommendation} open={head.open} />
      </Section>
      {head.open ? (
        <Section id="sign" title={page.restating ? "Sign the restated version" : "Sign"}>
          {missing.length > 0 ? (
            <>
              <p>Still missing:</p>
              <ul className="notes">
                {missing.map((one) => (
                  <li key={one.words} className="note-look">
                    {one.words} <Link href={`/audits/${head.id}/${one.step}`}>Go there</Link>
                  </li>
                ))}
              </ul>
              <p className="small soft">Load this page again once that is done.</p>
            </>
          ) : null}
          <AnsweringForm
            act={signAct}
            button="Sign"
            kind="main"
            label="Sign the audit"
            hidden={hidden}
          >
            <label className="tick">
              <input type="checkbox" name="sure" value="yes" /> I have read the results and the
              report, and sign this audit.
            </label>
          </AnsweringForm>
          {page.restating ? (
            <AnsweringForm
              act={leaveAsSignedAct}
              button="Leave it as it was signed"
              row
              label="Leave as signed"
              hidden={hidden}
            />
          ) : null}
        </Section>
      ) : null}
      {head.signed && !head.open ? (
        <>
          <Section id="next" title="Re-audit" note="The same scope, the quarter that follows.">
            <AnsweringForm
              act={reAuditAct}
              button="Re-audit the next quarter"
              kind="main"
              row
              label="Re-audit"
              hidden={hidden}
            />
          </Section>
          <Section
            id="restate"
            title="Restate"
            note="Where later records would have changed what was signed. The signed version stays as it is."
          >
            <p>
              <Link href={`/audits/${head.id}/history`}>The history</Link> says whether today&apos;s
              records still come to what was signed.
            </p>
            <AnsweringForm
              act={restateAct}
              button="Open for a restated version"
              label="Restate"
              hidden={hidden}
              fields={[{ label: "Why", name: "reason", required: true, maxLength: 500 }]}
            />
          </Section>
        </>
      ) : null}
      {!head.signed ? (
        <Section id="aside" title={page.aside ? "Set aside" : "Set aside instead"}>
          <AnsweringForm
            act={putAsideAct}
            button={page.aside ? "Take it up again" : "Set this audit aside"}
            row
            label="Set aside"
            hidden={{ ...hidden, aside: page.aside ? "no" : "yes" }}
          />
        </Section>
      ) : null}
    </AuditFrame>
  );
}
