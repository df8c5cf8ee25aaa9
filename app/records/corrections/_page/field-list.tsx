import type { FieldDifference } from "@/lib/views/correction-differences";

/** The fields in which two versions differ: the old value struck through, the newer one beside it. */
export function FieldList(props: { fields: readonly FieldDifference[] }) {
  return (
    <ul className="stack-tight">
      {props.fields.map((field) => (
        <li key={field.column}>
          <strong>{field.column}:</strong> <span className="only-heard">was </span>
          <del>{field.old}</del> <span aria-hidden="true">→</span>
          <span className="only-heard">, now </span> <ins>{field.newer}</ins>
        </li>
      ))}
    </ul>
  );
}
