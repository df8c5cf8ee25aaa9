import { Link } from "@/app/_parts/link";
import type { UnitsPage } from "@/lib/reports/units";

/** Narrows the units to an outcome; links, so that each has an address. */
export function OutcomeChoice(props: { of: UnitsPage; path: string }) {
  const { of, path } = props;
  const address = (outcome?: string) =>
    `${path}?${new URLSearchParams({
      period: of.period.name,
      ...(of.practice ? { practice: of.practice } : {}),
      ...(outcome ? { outcome } : {}),
    })}`;
  return (
    <nav className="row choices" aria-label="Outcome">
      <Link href={address()} aria-current={of.outcome === undefined ? "true" : undefined}>
        all
      </Link>
      {of.outcomes.map((one) => (
        <Link
          key={one.name}
          href={address(one.name)}
          aria-current={of.outcome === one.name ? "true" : undefined}
        >
          {one.words}
        </Link>
      ))}
    </nav>
  );
}
