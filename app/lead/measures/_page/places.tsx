import { FigureTable } from "@/app/_parts/figure-table";
import { IntervalFigure } from "@/app/_parts/interval-figure";
import { Section } from "@/app/_parts/section";
import type { MeasureView } from "@/lib/views/measure-page";

/** By practice and chair, with the whole below. */
export function Places(props: { places: MeasureView["places"] }) {
  return (
    <Section id="places" title="By practice and chair">
      <IntervalFigure chart={props.places.chart} tableBeside />
      <FigureTable
        label="Figures by practice and chair"
        first="Practice or chair"
        rows={props.places.rows}
      />
    </Section>
  );
}
