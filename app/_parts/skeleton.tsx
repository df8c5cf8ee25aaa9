const widths = ["38%", "72%", "64%", "90%", "83%", "88%", "55%", "79%"];

/** Grey lines in place of what is on its way; a reader of the screen hears that it is loading. */
export function Skeleton(props: { lines?: number; what?: string }) {
  const lines = Array.from({ length: props.lines ?? 8 }, (_, place) => place);
  return (
    <div role="status">
      <span className="only-heard">Loading {props.what ?? "this page"} …</span>
      {lines.map((place) => (
        <div
          key={place}
          className="skeleton-line"
          style={{ width: widths[place % widths.length] }}
        />
      ))}
    </div>
  );
}
