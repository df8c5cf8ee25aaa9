"use client";

import { useState } from "react";
import type { ColumnFeedDraft } from "@/lib/views/mapping/draft";
import type { FieldTerms } from "@/lib/views/mapping/terms";
import { notUnderstood, wordRows } from "@/lib/views/mapping/word-rows";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import { useMapping } from "./editor-tools";
import { MoreWord } from "./more-word";
import { useWords } from "./use-words";
import { WordTable } from "./word-table";

/** What the words of a column mean in a field. Open by itself where something has to be said of one. */
export function WordsPart(props: {
  at: Path;
  field: FieldTerms;
  feed: ColumnFeedDraft;
  others: readonly FieldTerms[];
}) {
  const { at, field, feed } = props;
  const { fileId, columns } = useMapping();
  const [opened, setOpened] = useState<boolean | null>(null);
  const said = feed.words?.length ?? 0;
  const [column = ""] = feed.columns;
  const isShort = field.choices.length > 0 || said > 0;
  const isPatient = field.type === "patient";
  const words = useWords(fileId, column, !isPatient && (isShort || opened === true));
  const [openedByItself, setOpenedByItself] = useState(false);
  // Nothing can be said word by word of numbers of visits and the like.
  const isEndless =
    fileId !== null && columns.find(({ name }) => name === column)?.different === null;
  if (isPatient || (isEndless && !isShort)) return null;
  const rows = wordRows(field, feed, words);
  const open = notUnderstood(rows);
  // Once open it stays so, although the last word is settled.
  if (isShort && open > 0 && !openedByItself && opened === null) setOpenedByItself(true);
  return (
    <details
      open={opened ?? openedByItself}
      onToggle={({ currentTarget }) => {
        if (currentTarget.open !== (opened ?? openedByItself)) setOpened(currentTarget.open);
      }}
    >
      <summary>
        Words of “{column}”<span className="only-heard"> for {field.words}</span>
        <span className="soft">{summary(said, open, words !== null)}</span>
      </summary>
      <div className="stack-tight">
        {words?.hidden ? (
          <p className="hint">This column seems to name patients; its words are not shown.</p>
        ) : null}
        {rows.length > 0 ? (
          <WordTable at={at} field={field} feed={feed} rows={rows} others={props.others} />
        ) : null}
        {words?.more ? <p className="hint">There are more words than are listed.</p> : null}
        {rows.length === 0 && words && !words.hidden ? (
          <p className="hint">Nothing has to be said of any.</p>
        ) : null}
        <MoreWord at={at} feed={feed} />
      </div>
    </details>
  );
}

function summary(said: number, open: number, known: boolean): string {
  if (open > 0) return `: ${open} not understood yet`;
  if (said > 0) return `: ${said} said`;
  return known ? ": taken as they stand" : "";
}
