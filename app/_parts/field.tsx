import type { InputHTMLAttributes, ReactNode } from "react";

type Shared = { label: string; name: string; error?: string | undefined; hint?: ReactNode };
type Input = Omit<InputHTMLAttributes<HTMLInputElement>, "name" | "children">;

/**
 * A labelled input with its hint and its error, tied together for those who hear the page. With `options` it is a
 * select.
 *
 * @param props.id needed where a page has the same name twice
 */
export function Field(
  props: Shared & Input & { options?: readonly { value: string; words: string }[] },
) {
  const { label, name, error, hint, options, id = `field-${name}`, defaultValue, ...input } = props;
  const told = [hint ? `${id}-hint` : "", error ? `${id}-error` : ""].filter(Boolean).join(" ");
  const common = {
    id,
    name,
    "aria-invalid": error ? true : undefined,
    "aria-describedby": told || undefined,
  } as const;
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      {hint ? (
        <p className="hint" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      {options ? (
        <select {...common} defaultValue={defaultValue} key={String(defaultValue)}>
          {options.map((one) => (
            <option key={one.value} value={one.value}>
              {one.words}
            </option>
          ))}
        </select>
      ) : (
        <input {...common} {...input} defaultValue={defaultValue} />
      )}
      {error ? (
        <p className="field-error" id={`${id}-error`}>
          {error}
        </p>
      ) : null}
    </div>
  );
}
