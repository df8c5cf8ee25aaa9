import { FunnelFigure } from "@/app/_parts/funnel-figure";
import { Section } from "@/app/_parts/section";
import type { ComparingView } from "@/lib/reports/measure-comparing";

/** The clinicians' rates on their funnel, what stands out from chance, and what the page promises. */
export function BeyondChance(props: { view: ComparingView }) {
  const { chance, funnel } = props.view;
  const { flags, promise, howToLook, notAssessable } = chance;
  return (
    <Section
      id="chance"
      title="Beyond chance?"
      note="What stands out after allowing for how many figures are compared. A prompt to look, never a verdict on a person."
    >
      {flags.length > 0 ? (
        <>
          <ul className="notes">
            {flags.map((flag) => (
              <li key={flag.words} className="note-look">
                {flag.words}
              </li>
            ))}
          </ul>
          <p>{howToLook}</p>
        </>
      ) : null}
      <p className="note">{promise}</p>
      {notAssessable ? <p>{notAssessable}</p> : null}
      <FunnelFigure chart={funnel} />
    </Section>
  );
}
