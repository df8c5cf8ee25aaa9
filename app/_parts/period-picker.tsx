import { Link } from "@/app/_parts/link";
import type { PeriodChoices } from "@/lib/views/period-choices";

/** A practice that can be chosen. */
export type PracticeChoice = { readonly code: string; readonly name: string };

/**
 * Chooses the period and, where several can be seen, the practice. A plain form: the address carries both
 * (?period=2026-Q3&practice=NORTH) and it works without JavaScript.
 *
 * @param props.path the page's own path
 * @param props.practices those within reach; the filter is not shown for fewer than two
 * @param props.practice the chosen one; undefined is all of them
 * @param props.keep further parameters of the address to carry along
 */
export function PeriodPicker(props: {
  path: string;
  periods: PeriodChoices;
  practices?: readonly PracticeChoice[];
  practice?: string | undefined;
  keep?: Readonly<Record<string, string>>;
}) {
  const { chosen, previous, next, all } = props.periods;
  const practices = props.practices ?? [];
  const address = (period: string) =>
    `${props.path}?${new URLSearchParams({
      period,
      ...(props.practice ? { practice: props.practice } : {}),
      ...props.keep,
    })}`;
  return (
    <form className="picker" action={props.path} method="get" aria-label="Period and practice">
      {Object.entries(props.keep ?? {}).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <div className="form-row">
        <div>
          <label htmlFor="picker-period">Period</label>
          <select id="picker-period" name="period" defaultValue={chosen.name} key={chosen.name}>
            {all.map((one) => (
              <option key={one.name} value={one.name}>
                {one.words}
              </option>
            ))}
          </select>
        </div>
        {practices.length > 1 ? (
          <div>
            <label htmlFor="picker-practice">Practice</label>
            <select
              id="picker-practice"
              name="practice"
              defaultValue={props.practice ?? ""}
              key={props.practice ?? ""}
            >
              <option value="">All practices</option>
              {practices.map((one) => (
                <option key={one.code} value={one.code}>
                  {one.name}
                </option>
              ))}
            </select>
          </div>
        ) : null}
        <button type="submit">Show</button>
        <nav className="row" aria-label="Neighbouring periods">
          {previous ? (
            <Link href={address(previous.name)} rel="prev">
              ← {previous.words}
            </Link>
          ) : null}
          {next ? (
            <Link href={address(next.name)} rel="next">
              {next.words} →
            </Link>
          ) : null}
        </nav>
      </div>
    </form>
  );
}
