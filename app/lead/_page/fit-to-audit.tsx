import { CompletenessTable } from "@/app/_parts/completeness-table";
import { Link } from "@/app/_parts/link";
import type { LeadQuarter } from "@/lib/views/lead-quarter";
import { WeekTable } from "./week-table";

/** Records got by chair and week, completeness, held rows, and values that disagree. */
export function FitToAudit(props: { view: LeadQuarter }) {
  const { weeks, completeness, held, disagreeing } = props.view;
  return (
    <>
      <h3>Visits by chair and week</h3>
      <WeekTable grid={weeks} />
      <h3>Completeness of each measure</h3>
      <CompletenessTable lines={completeness} />
      <h3>Held rows</h3>
      <p>{held}</p>
      <h3 id="disagreeing">Values that disagree</h3>
      <p>{disagreeing.words}</p>
      {disagreeing.canals.length > 0 ? (
        <ul>
          {disagreeing.canals.map((one) => (
            <li key={one.id}>
              <Link href={one.href}>{one.words}</Link>
            </li>
          ))}
        </ul>
      ) : null}
    </>
  );
}
