import { notFound } from "next/navigation";
import { AnsweringForm } from "@/app/_parts/answering-form";
import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";
import { within } from "@/app/_parts/within";
import { lookPage } from "@/lib/reports/audits/pages";
import { currentViewer } from "@/lib/reports/viewer";
import type { LookItem } from "@/lib/views/audits/look-view";
import { unbroken } from "@/lib/views/unbroken";
import { AuditFrame } from "../../_page/audit-frame";
import { Written } from "../../_page/written";
import { endLookAct } from "../../acts";

export const metadata = { title: "Audit: closer look" };

export default async function LookPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const page = await within("/audits/[id]/look", async () => lookPage(await currentViewer(), id), {
    audit: id,
  });
  if (!page) notFound();
  const { head, items } = page;
  return (
    <AuditFrame
      head={head}
      step="look"
      lead="What was flagged, in this order: the records, the cases, the equipment, the way of working, and only then the person. End it as soon as a step explains it."
    >
      {items.length === 0 ? (
        <Section id="none" title="Nothing to look at">
          <p>Nothing in this audit lies beyond what chance easily gives.</p>
        </Section>
      ) : (
        items.map((item) => <Item key={item.id} audit={head.id} open={head.open} of={item} />)
      )}
    </AuditFrame>
  );
}

function Item(props: { audit: number; open: boolean; of: LookItem }) {
  const { audit, open, of } = props;
  const going = open && of.ended === null;
  const hidden = { audit: String(audit), flag: of.id };
  const shown = of.steps.filter((step) => (going ? step.open : step.field.text !== ""));
  return (
    <Section
      id={of.id.replaceAll(/[^\w-]+/g, "-")}
      title={of.title}
      note={of.ended ?? "Not ended yet."}
    >
      <p>
        {unbroken(of.words)} <Link href={of.href}>See the figure and its records</Link>
      </p>
      {shown.map((step) => (
        <div key={step.step} className="look-step">
          <Written audit={audit} of={step.field} open={going} rows={2} />
        </div>
      ))}
      {going ? (
        <AnsweringForm
          act={endLookAct}
          button="End the look here"
          row
          label={`End the look at ${of.title}`}
          hidden={hidden}
          fields={[
            {
              label: "It ended at",
              name: "step",
              defaultValue: of.upTo ?? "",
              options: [
                { value: "", words: "choose the step" },
                ...of.steps.map(({ step, title }) => ({ value: step, words: title.toLowerCase() })),
              ],
            },
          ]}
        />
      ) : null}
      {open && of.ended ? (
        <AnsweringForm
          act={endLookAct}
          button="Take it up again"
          row
          label={`Take up again: ${of.title}`}
          hidden={{ ...hidden, step: "" }}
        />
      ) : null}
    </Section>
  );
}
