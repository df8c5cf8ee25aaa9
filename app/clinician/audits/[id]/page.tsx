import { notFound } from "next/navigation";
import { Cautions } from "@/app/_parts/cautions";
import { Definition } from "@/app/_parts/definition";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { Section } from "@/app/_parts/section";
import { within } from "@/app/_parts/within";
import { sharedAuditPage } from "@/lib/reports/audits/shared";
import { currentViewer } from "@/lib/reports/viewer";
import { unbroken } from "@/lib/views/unbroken";
import { Confirming } from "../_page/confirming";
import { OwnText } from "../_page/own-text";
import { answerAuditAct, reflectAct } from "../acts";

export const metadata = { title: "My audit" };

export default async function MyAuditPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const view = await within(
    "/clinician/audits/[id]",
    async () => sharedAuditPage(await currentViewer(), id),
    { audit: id },
  );
  if (!view) notFound();
  return (
    <>
      <PageHead
        over={<Link href="/clinician/audits">My audits</Link>}
        title={view.name}
        lead="Your own figures, and nobody else's. They are a prompt to look, never a verdict on you."
        actions={
          <Link className="button" href={`/clinician/audits/${view.id}/summary`}>
            My summary
          </Link>
        }
      />
      <p className="note">{view.state}</p>
      <Section id="confirming" title="Are these records mine and right?">
        <Confirming of={view} />
      </Section>
      <Section
        id="control"
        title="Within your control"
        note="Few and specific: the ones with the most units."
      >
        {view.control.length === 0 ? (
          <p>No criterion of yours has a unit that was not met or not recorded.</p>
        ) : (
          <ul>
            {view.control.map((words) => (
              <li key={words}>{unbroken(words)}</li>
            ))}
          </ul>
        )}
        <p>
          <Link href={`/clinician?period=${encodeURIComponent(view.quarter)}`}>My quarter</Link>{" "}
          lists every unit behind these.
        </p>
      </Section>
      <Section
        id="figures"
        title="Your figures"
        note="Beside those of the practice without you, where enough others stand behind them."
      >
        {view.figures.map((one) => (
          <div key={one.measure} className="stack-tight">
            <h3>{one.title}</h3>
            <p>{unbroken([one.finding, one.comparison].filter(Boolean).join(" "))}</p>
            <p className="small soft">
              {unbroken([one.interval, one.note].filter(Boolean).join(" "))}
            </p>
            <Definition of={one.title}>
              <p>{one.definition}</p>
            </Definition>
          </div>
        ))}
        {view.tooFew.length > 0 ? (
          <details>
            <summary>Too few units to tell: {view.tooFew.length} measures</summary>
            <ul>
              {view.tooFew.map((words) => (
                <li key={words}>{unbroken(words)}</li>
              ))}
            </ul>
          </details>
        ) : null}
      </Section>
      <Section id="answer" title="Your answer" note="The clinical lead reads it.">
        <OwnText
          act={answerAuditAct}
          audit={view.id}
          of={view.answer}
          label="What you say to this"
          button="Keep the answer"
        />
      </Section>
      <Section
        id="reflection"
        title="Your reflection"
        note="Yours alone: nobody else can read it. The lead sees only that you opened this page."
      >
        <OwnText
          act={reflectAct}
          audit={view.id}
          of={view.reflection}
          label="What you take from this"
          button="Keep the reflection"
        />
      </Section>
      <Cautions />
    </>
  );
}
