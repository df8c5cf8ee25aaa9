import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";
import type { OpenQuestion } from "@/lib/views/exception-open-question";
import { Asked } from "./asked";

/** What waits for an answer, or to be closed, whatever the period. */
export function OpenQuestions(props: { of: readonly OpenQuestion[] }) {
  if (props.of.length === 0) return null;
  return (
    <Section
      id="open"
      title="Open questions"
      note="Of every period. The lead asks, whoever did the work answers, the lead closes."
    >
      {props.of.map((one) => (
        <div key={one.id} className="stack-tight">
          <p>
            <Link href={one.href}>{one.about}</Link>
          </p>
          <Asked of={one} />
        </div>
      ))}
    </Section>
  );
}
