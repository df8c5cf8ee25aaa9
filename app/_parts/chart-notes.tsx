/** What a reader of a drawing has to be told, under it. */
export function ChartNotes(props: { notes: readonly string[] }) {
  return props.notes.length > 0 ? <p className="small soft">{props.notes.join(" ")}</p> : null;
}
