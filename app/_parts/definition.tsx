import type { ReactNode } from "react";

/** What a name means, one click from the name; stays shut in print. */
export function Definition(props: { of: string; children: ReactNode }) {
  return (
    <details className="definition">
      <summary>
        What is this?<span className="only-heard"> ({props.of})</span>
      </summary>
      <div className="stack-tight">{props.children}</div>
    </details>
  );
}
