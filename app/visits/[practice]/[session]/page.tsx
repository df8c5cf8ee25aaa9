import { notFound } from "next/navigation";
import { Cautions } from "@/app/_parts/cautions";
import { fromAddress } from "@/app/_parts/from-address";
import { PageHead } from "@/app/_parts/page-head";
import { Section } from "@/app/_parts/section";
import { within } from "@/app/_parts/within";
import { currentViewer } from "@/lib/reports/viewer";
import { visitView } from "@/lib/reports/visit";
import { Criteria } from "./_page/criteria";
import { Lanes } from "./_page/lanes";
import { Sources } from "./_page/sources";

export const metadata = { title: "One visit" };

export default async function VisitPage(props: {
  params: Promise<{ practice: string; session: string }>;
}) {
  const { practice, session } = await props.params;
  const view = await within(
    "/visits/[practice]/[session]",
    async () => visitView(await currentViewer(), fromAddress(practice), fromAddress(session)),
    { practice: fromAddress(practice), session: fromAddress(session) },
  );
  if (!view) notFound();
  return (
    <>
      <PageHead title={`Visit ${view.sessionId}`} over={view.where} />
      <Section id="facts" title="The visit">
        <dl className="facts">
          {view.facts.map((fact) => (
            <div key={fact.term} style={{ display: "contents" }}>
              <dt>{fact.term}</dt>
              <dd>{fact.words}</dd>
            </div>
          ))}
        </dl>
      </Section>
      {view.held.length > 0 ? (
        <Section
          id="held"
          title="Held rows"
          note="They name this visit and count in no figure until they are mended or let go."
        >
          <ul className="notes">
            {view.held.map((row) => (
              <li key={row.id} className="note-look">
                {row.sentences.join(" ")}
                <span className="small soft">
                  {" "}
                  ({row.table}, {row.key}; {row.source.file}, line {row.source.line})
                </span>
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
      <Section
        id="canals"
        title="Canals along one line of time"
        note="Preparation, deliveries and instruments of each canal on one scale."
      >
        <Lanes of={view.timeLine} />
      </Section>
      <Section id="criteria" title="Criteria" note="What became of each unit and what it rests on.">
        <Criteria of={view.criteria} />
      </Section>
      <Section
        id="sources"
        title="Where it comes from"
        note="The file and line each row was first seen in, and where it was seen again."
      >
        {view.corrections.length > 0 ? (
          <ul className="notes">
            {view.corrections.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        ) : null}
        <Sources of={view.sources} />
      </Section>
      <Cautions />
    </>
  );
}
