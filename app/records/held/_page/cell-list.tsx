/** The cells that were changed: the old text struck through, the newer one beside it. */
export function CellList(props: {
  changes: readonly { readonly column: string; readonly old: string; readonly newer: string }[];
}) {
  return (
    <ul className="stack-tight">
      {props.changes.map((change) => (
        <li key={change.column}>
          <strong>{change.column}:</strong> <span className="only-heard">was </span>
          <del>{change.old}</del> <span aria-hidden="true">→</span>
          <span className="only-heard">, now </span> <ins>{change.newer}</ins>
        </li>
      ))}
    </ul>
  );
}
