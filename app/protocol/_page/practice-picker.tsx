/** Chooses whose protocol is shown, where several can be; a plain form, the address carries the choice. */
export function PracticePicker(props: {
  path: string;
  practices: readonly { readonly code: string; readonly name: string }[];
  practice: string;
}) {
  if (props.practices.length < 2) return null;
  return (
    <form className="picker" action={props.path} method="get" aria-label="Practice">
      <div className="form-row">
        <div>
          <label htmlFor="protocol-practice">Practice</label>
          <select
            id="protocol-practice"
            name="practice"
            defaultValue={props.practice}
            key={props.practice}
          >
            {props.practices.map(({ code, name }) => (
              <option key={code} value={code}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <button type="submit">Show</button>
      </div>
    </form>
  );
}
