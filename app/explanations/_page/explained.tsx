import { Cautions } from "@/app/_parts/cautions";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { Section } from "@/app/_parts/section";
import type { ExplanationView } from "@/lib/views/explanation";
import { Clause } from "./clause";

/** Why one unit counts as it does: the outcome, what settled it, and every step with its values and where they came from. */
export function Explained(props: { of: ExplanationView }) {
  const { of } = props;
  return (
    <>
      <PageHead
        title={of.criterion.title}
        over={of.where}
        lead={of.criterion.statement}
        actions={
          <>
            <Link className="button" href={`/protocol/${of.criterion.id}`}>
              The criterion
            </Link>
            {of.exceptionHref ? (
              <Link className="button" href={of.exceptionHref}>
                Exception
              </Link>
            ) : null}
          </>
        }
      />
      <p className="finding">
        {of.visitHref ? <Link href={of.visitHref}>{of.unit}</Link> : of.unit}:{" "}
        <span className={`mark mark-${of.mark}`}>{of.outcome}</span>
      </p>
      <p>{of.because}</p>
      <Section
        id="steps"
        title="Step by step"
        note="In the order in which it is judged. The step that settled it is marked."
      >
        <ol className="steps">
          {of.steps.map((step) => (
            <li key={step.id} id={step.id} className={step.settled ? "settles" : undefined}>
              <h3>
                {step.title} {step.settled ? <span className="small">This settled it.</span> : null}
              </h3>
              <p>{step.says}</p>
              {step.clauses.map((clause) => (
                <Clause key={clause.words} of={clause} />
              ))}
            </li>
          ))}
        </ol>
      </Section>
      <Cautions />
    </>
  );
}
