import type { SafetyItems } from "@/lib/reports/safety-page";

/** Narrows the items; a plain form, the address carries it all. */
export function Narrowing(props: { of: SafetyItems }) {
  const { kind, kinds, open, clinician, clinicians, keep } = props.of;
  return (
    <form action="/safety#items" method="get" aria-label="Which items" className="form-row">
      {Object.entries(keep).map(([name, value]) =>
        value ? <input key={name} type="hidden" name={name} value={value} /> : null,
      )}
      <div>
        <label htmlFor="items-kind">What</label>
        <select id="items-kind" name="kind" defaultValue={kind} key={kind}>
          <option value="">Everything</option>
          {kinds.map((one) => (
            <option key={one.name} value={one.name}>
              {one.words}
            </option>
          ))}
        </select>
      </div>
      {clinicians.length > 0 ? (
        <div>
          <label htmlFor="items-clinician">Clinician</label>
          <select id="items-clinician" name="clinician" defaultValue={clinician} key={clinician}>
            <option value="">All clinicians</option>
            {clinicians.map((one) => (
              <option key={one.name} value={one.name}>
                {one.words}
              </option>
            ))}
          </select>
        </div>
      ) : null}
      <label className="tick">
        <input type="checkbox" name="open" value="yes" defaultChecked={open} key={String(open)} />
        Open ones only
      </label>
      <button type="submit">Show</button>
    </form>
  );
}
