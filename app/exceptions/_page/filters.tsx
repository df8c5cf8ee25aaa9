import type { ExceptionsPage } from "@/lib/reports/exceptions-page";

/** Narrows the list; a plain form, the address carries it all. */
export function Filters(props: { of: Pick<ExceptionsPage, "filters" | "keep"> }) {
  const { filters, keep } = props.of;
  return (
    <form action="/exceptions#list" method="get" aria-label="Which exceptions" className="form-row">
      {Object.entries(keep).map(([name, value]) =>
        value ? <input key={name} type="hidden" name={name} value={value} /> : null,
      )}
      {filters.map((one) => (
        <div key={one.name}>
          <label htmlFor={`filter-${one.name}`}>{one.label}</label>
          <select
            id={`filter-${one.name}`}
            name={one.name}
            defaultValue={one.chosen}
            key={one.chosen}
          >
            <option value="">{one.all}</option>
            {one.choices.map((choice) => (
              <option key={choice.name} value={choice.name}>
                {choice.words}
              </option>
            ))}
          </select>
        </div>
      ))}
      <button type="submit">Show</button>
    </form>
  );
}
