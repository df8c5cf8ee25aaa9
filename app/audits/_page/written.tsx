import type { TextField } from "@/lib/views/audits/text-field";
import { SharedText } from "./shared-text";

/** A text of an audit: to be typed into while the audit is open, to be read after. */
export function Written(props: { audit: number; of: TextField; open: boolean; rows?: number }) {
  const { audit, of, open } = props;
  if (open)
    return (
      <SharedText
        key={of.key}
        audit={audit}
        of={of}
        {...(props.rows ? { rows: props.rows } : {})}
      />
    );
  return (
    <div className="stack-tight">
      <p className="label">{of.label}</p>
      {of.text === "" ? (
        <p className="missing">Nothing was written.</p>
      ) : (
        of.text.split(/\n\s*\n/).map((paragraph) => <p key={paragraph}>{paragraph}</p>)
      )}
    </div>
  );
}
