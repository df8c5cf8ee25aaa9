import type { ReactNode } from "react";

/** A part of the editor under its title. */
export function EditorPart(props: { id: string; title: string; children: ReactNode }) {
  const heading = `editor-${props.id}`;
  return (
    <section className="editor-part" aria-labelledby={heading}>
      <h2 id={heading}>{props.title}</h2>
      {props.children}
    </section>
  );
}
