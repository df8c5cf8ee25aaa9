"use client";

/** One thing that is so or is not. */
export function Tick(props: {
  id: string;
  words: string;
  value: boolean;
  change: (value: boolean) => void;
}) {
  return (
    <label className="tick" htmlFor={props.id}>
      <input
        id={props.id}
        type="checkbox"
        checked={props.value}
        onChange={({ target }) => props.change(target.checked)}
      />
      <span>{props.words}</span>
    </label>
  );
}
