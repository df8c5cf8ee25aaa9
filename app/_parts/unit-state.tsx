import { Link } from "@/app/_parts/link";
import type { UnitLine } from "@/lib/views/unit-lines";

/** What became of a unit; of a criterion it leads to the page that says why. */
export function UnitState(props: { of: UnitLine }) {
  const { mark, state, why } = props.of;
  const look = mark ? `mark mark-${mark}` : undefined;
  return why ? (
    <Link href={why} className={look}>
      {state}
    </Link>
  ) : (
    <span className={look}>{state}</span>
  );
}
