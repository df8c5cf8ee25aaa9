import { notFound } from "next/navigation";
import { Cautions } from "@/app/_parts/cautions";
import { fromAddress } from "@/app/_parts/from-address";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { Section } from "@/app/_parts/section";
import { within } from "@/app/_parts/within";
import { WrittenForm } from "@/app/exceptions/_page/written-form";
import { enterExceptionAct } from "@/app/exceptions/acts";
import { exceptionUnit } from "@/lib/reports/exception-unit";
import { currentViewer } from "@/lib/reports/viewer";
import { There } from "./_page/there";

export const metadata = { title: "Exception" };

type Params = Promise<{ practice: string; session: string; criterion: string }>;
type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function ExceptionPage(props: { params: Params; searchParams: Address }) {
  const { practice, session, criterion } = await props.params;
  const { canal } = await props.searchParams;
  const at = {
    practice: fromAddress(practice),
    session: fromAddress(session),
    criterion: fromAddress(criterion),
  };
  const view = await within(
    "/exceptions/[practice]/[session]/[criterion]",
    async () => exceptionUnit(await currentViewer(), at, typeof canal === "string" ? canal : ""),
    {
      practice: fromAddress(practice),
      session: fromAddress(session),
      criterion: fromAddress(criterion),
    },
  );
  if (!view) notFound();
  return (
    <>
      <PageHead
        title={`Exception: ${view.title}`}
        over={view.where}
        actions={<Link href={view.visit.href}>{view.visit.words}</Link>}
      />
      {view.demand.length > 0 ? (
        <Section
          id="demand"
          title="The criterion"
          note="As it was in force on the day of the visit."
        >
          <dl className="facts">
            {view.demand.map((one) => (
              <div key={one.term} className="fact">
                <dt>{one.term}</dt>
                <dd>{one.words}</dd>
              </div>
            ))}
          </dl>
        </Section>
      ) : null}
      <Section
        id="there"
        title="Entered and recorded"
        note="What was entered here stands aside where the records hold one of the same unit."
      >
        {view.there.length === 0 ? (
          <p className="missing">No exception of this criterion is written down for this visit.</p>
        ) : (
          view.there.map((one) => <There key={one.id} of={one} at={view.key} />)
        )}
      </Section>
      {view.form ? (
        <Section
          id="enter"
          title="Enter one"
          note="For your own work. Another reason for the same unit takes the place of the one before."
        >
          <WrittenForm
            act={enterExceptionAct}
            button="Enter the exception"
            kind="main"
            label="Enter an exception"
            hidden={view.key}
            fields={[
              {
                label: "Unit",
                name: "canal",
                options: view.form.units,
                defaultValue: view.form.unit,
              },
              {
                label: "Reason",
                name: "reason",
                options: [{ value: "", words: "Choose a reason" }, ...view.form.reasons],
                defaultValue: "",
              },
            ]}
            text={{
              label: "Note, if one is needed",
              name: "note",
              hint: "Seen by you and the clinical lead alone, and never exported. It may still have to be disclosed: name nobody. 500 characters.",
              required: false,
            }}
          />
        </Section>
      ) : (
        <p className="note">{view.why}</p>
      )}
      <Cautions />
    </>
  );
}
