import type { ReactNode } from "react";

/**
 * The head of a page: its title, one sentence on what it answers, and what can be done from here.
 *
 * @param props.over a short line above the title: where one is, or a way back
 */
export function PageHead(props: {
  title: string;
  over?: ReactNode;
  lead?: ReactNode;
  actions?: ReactNode;
}) {
  return (
    <header className="page-head">
      <div>
        {props.over ? <p className="page-over">{props.over}</p> : null}
        <h1>{props.title}</h1>
        {props.lead ? <p className="lead">{props.lead}</p> : null}
      </div>
      {props.actions ? <div className="row not-printed">{props.actions}</div> : null}
    </header>
  );
}
