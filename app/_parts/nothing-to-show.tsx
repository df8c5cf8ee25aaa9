import type { ReactNode } from "react";

/** An empty state: what is not there, why, and what to do about it (links or a button as children). */
export function NothingToShow(props: { what: string; children?: ReactNode }) {
  return (
    <div className="empty">
      <p className="finding">{props.what}</p>
      {props.children ? <div className="stack-tight">{props.children}</div> : null}
    </div>
  );
}
