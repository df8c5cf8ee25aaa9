import type { ReactNode } from "react";

/** A part of a page: its title (and a short note) stand in the margin on a wide screen, above on a phone. */
export function Section(props: {
  id?: string;
  title: string;
  note?: ReactNode;
  children: ReactNode;
}) {
  const heading = props.id ? `${props.id}-title` : undefined;
  return (
    <section className="section" id={props.id} aria-labelledby={heading}>
      <div className="section-side">
        <h2 id={heading}>{props.title}</h2>
        {props.note ? <p className="small soft">{props.note}</p> : null}
      </div>
      <div className="section-main stack">{props.children}</div>
    </section>
  );
}
