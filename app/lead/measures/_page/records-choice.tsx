import { Link } from "@/app/_parts/link";
import type { MeasureRecords } from "@/lib/reports/measure-records";

/** Narrows the records to a clinician and an outcome, of one chair where a chair led here; a plain form, the address carries both. */
export function RecordsChoice(props: {
  path: string;
  records: MeasureRecords;
  keep: Readonly<Record<string, string | undefined>>;
}) {
  const { records } = props;
  return (
    <form
      action={`${props.path}#records`}
      method="get"
      aria-label="Which records"
      className="form-row"
    >
      {Object.entries(props.keep).map(([name, value]) =>
        value ? <input key={name} type="hidden" name={name} value={value} /> : null,
      )}
      {records.chair ? (
        <div>
          <input type="hidden" name="chair" value={records.chair.code} />
          <p>
            Chair {records.chair.code} alone. <Link href={records.chair.all}>Every chair</Link>
          </p>
        </div>
      ) : null}
      {records.clinicians.length > 0 ? (
        <div>
          <label htmlFor="records-clinician">Clinician</label>
          <select
            id="records-clinician"
            name="clinician"
            defaultValue={records.clinician ?? ""}
            key={records.clinician ?? ""}
          >
            <option value="">All clinicians</option>
            {records.clinicians.map((one) => (
              <option key={one.name} value={one.name}>
                {one.words}
              </option>
            ))}
          </select>
        </div>
      ) : null}
      <div>
        <label htmlFor="records-outcome">Outcome</label>
        <select
          id="records-outcome"
          name="outcome"
          defaultValue={records.outcome ?? ""}
          key={records.outcome ?? ""}
        >
          <option value="">All outcomes</option>
          {records.outcomes.map((one) => (
            <option key={one.name} value={one.name}>
              {one.words}
            </option>
          ))}
        </select>
      </div>
      <button type="submit">Show</button>
    </form>
  );
}
