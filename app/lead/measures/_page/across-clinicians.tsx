import { FigureTable } from "@/app/_parts/figure-table";
import { IntervalFigure } from "@/app/_parts/interval-figure";
import { Section } from "@/app/_parts/section";
import type { MeasureView } from "@/lib/views/measure-page";

/** Every clinician, in the order of their codes; or that the measure is not told apart by clinician. */
export function AcrossClinicians(props: { view: MeasureView }) {
  const { across, clinicians } = props.view;
  return (
    <Section
      id="across"
      title="Across clinicians"
      note="In the order of their codes, never ranked."
    >
      {across ? (
        <>
          <IntervalFigure chart={across} tableBeside />
          <FigureTable label="Figures by clinician" first="Clinician" rows={clinicians} />
        </>
      ) : (
        <p>
          What staff and equipment do together is shown by practice and chair, not by clinician.
        </p>
      )}
    </Section>
  );
}
