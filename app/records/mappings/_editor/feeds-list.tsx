"use client";

import type { MappingDraft } from "@/lib/views/mapping/draft";
import type { PreviewView } from "@/lib/views/mapping/preview-view";
import { idAt, useMapping } from "./editor-tools";

/** The tables that the file feeds, each with what its first rows become, leading to its place on the page. */
export function FeedsList(props: { draft: MappingDraft; preview: PreviewView | null }) {
  const { terms } = useMapping();
  return (
    <ul>
      {props.draft.tables.map(({ table }, place) => {
        const found = props.preview?.tables[place];
        const made = found?.table === table ? found : undefined;
        const heading = idAt(["tables", place], "heading");
        return (
          <li key={heading}>
            <a href={`#${heading}`}>{terms.find(({ name }) => name === table)?.words ?? table}</a>
            {made ? (
              <>
                : {made.made} of the first {props.preview?.looked} rows feed it,{" "}
                {made.held === "0" ? "all right" : <strong>{made.held} would be held</strong>}
              </>
            ) : null}
          </li>
        );
      })}
    </ul>
  );
}
