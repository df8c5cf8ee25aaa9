import { Link } from "@/app/_parts/link";
import type { SchedulesView } from "@/lib/views/audits/schedules-view";
import type { Act } from "./answer";
import { AnsweringForm } from "./answering-form";
import { Section } from "./section";

/** What is prepared by itself when a quarter ends: what was made, what is arranged, and a form to arrange more. */
export function Schedules(props: {
  of: SchedulesView;
  add: Act;
  end: Act;
  /** Files come in a format. */
  withFormat?: boolean;
}) {
  const { schedules, prepared, practices, formats } = props.of;
  return (
    <>
      <Section id="prepared" title="Prepared" note="The newest first.">
        {prepared.length === 0 ? (
          <p className="missing">Nothing yet: it is made when a quarter ends.</p>
        ) : (
          <ul>
            {prepared.map((one) => (
              <li key={one.id}>
                {props.withFormat ? (
                  <a href={one.href} download>
                    {one.words}
                  </a>
                ) : (
                  <Link href={one.href}>{one.words}</Link>
                )}
                {one.sha256 ? (
                  <div className="small soft kept-as">
                    SHA-256 <code>{one.sha256}</code>
                  </div>
                ) : null}
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section
        id="schedules"
        title="Arranged"
        note="Made once a quarter, when somebody whom it concerns opens their page after the quarter has ended, or by the command canal-audit prepare."
      >
        {schedules.length === 0 ? <p className="missing">Nothing is arranged.</p> : null}
        {schedules.map((one) => (
          <div key={one.id} className="stack-tight">
            <p>{one.words}</p>
            <AnsweringForm
              act={props.end}
              button="End it"
              row
              label={`End: ${one.words}`}
              hidden={{ schedule: String(one.id) }}
            />
          </div>
        ))}
        <AnsweringForm
          act={props.add}
          button="Arrange"
          label="Arrange"
          fields={[
            { label: "Of", name: "practice", options: practices },
            ...(props.withFormat
              ? [{ label: "As", name: "format", options: formats, defaultValue: "pdf" }]
              : []),
          ]}
        />
      </Section>
    </>
  );
}
