import type { AskedWhose } from "@/lib/reports/asked-whose";

/** Chooses whose line is drawn; works without JavaScript and keeps the rest of the address. */
export function WhosePicker(props: {
  path: string;
  asked: AskedWhose;
  keep: Readonly<Record<string, string | undefined>>;
}) {
  const { asked } = props;
  if (asked.options.length < 2) return null;
  return (
    <form
      className="form-row not-printed"
      action={`${props.path}#time`}
      method="get"
      aria-label="Choose a line"
    >
      {Object.entries(props.keep).map(([name, value]) =>
        value ? <input key={name} type="hidden" name={name} value={value} /> : null,
      )}
      <div>
        <label htmlFor="whose">Whose line</label>
        <select id="whose" name="whose" defaultValue={asked.name} key={asked.name}>
          {asked.options.map((one) => (
            <option key={one.value} value={one.value}>
              {one.words}
            </option>
          ))}
        </select>
      </div>
      <div>
        <button type="submit">Show</button>
      </div>
    </form>
  );
}
