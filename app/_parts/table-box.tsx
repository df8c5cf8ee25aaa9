import type { ReactNode } from "react";

/** Lets a wide table scroll inside its own box, by keyboard too; `label` says what the table is. */
export function TableBox(props: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keyboard (WCAG 2.1.1).
    <section className="table-box" aria-label={props.label} tabIndex={0}>
      {props.children}
    </section>
  );
}
