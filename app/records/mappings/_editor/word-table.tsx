"use client";

import { TableBox } from "@/app/_parts/table-box";
import type { ColumnFeedDraft, WordDraft } from "@/lib/views/mapping/draft";
import type { FieldTerms } from "@/lib/views/mapping/terms";
import { withAnyNumber } from "@/lib/views/mapping/word-match";
import type { WordRow } from "@/lib/views/mapping/word-rows";
import type { Path } from "@/lib/views/protocol/edit/at-path";
import { idAt, useMapping } from "./editor-tools";
import { WordAlso } from "./word-also";
import { WordMeans } from "./word-means";

/** Each word of a column with how often it is there, what it means, and what else it fills. */
export function WordTable(props: {
  at: Path;
  field: FieldTerms;
  feed: ColumnFeedDraft;
  rows: readonly WordRow[];
  others: readonly FieldTerms[];
}) {
  const { at, field, feed } = props;
  const { change } = useMapping();
  const words = feed.words ?? [];
  const set = (row: WordRow, word: WordDraft | undefined, typing = false) => {
    if (row.place !== null) {
      const left = word === undefined && words.length === 1;
      if (left) change([...at, "words"], undefined);
      else change([...at, "words", row.place], word, { typing });
    } else if (word) change([...at, "words"], [...words, word]);
  };
  return (
    <TableBox label={`Words for ${field.words}`}>
      <table className="fold mapping-words">
        <thead>
          <tr>
            <th scope="col">Word in the file</th>
            <th scope="col" className="num">
              Cells
            </th>
            <th scope="col">Means</th>
            <th scope="col">And fills, too</th>
          </tr>
        </thead>
        <tbody>
          {props.rows.map((row, place) => {
            const id = idAt(at, `w${place}`);
            const shown = row.word === "" ? "empty cell" : row.word;
            const any = row.said?.word.includes("{number}") ? undefined : withAnyNumber(row.word);
            return (
              <tr key={row.word}>
                <th scope="row">
                  {row.word === "" ? (
                    <em>empty cell</em>
                  ) : (
                    row.word.replaceAll("{number}", "⟨any number⟩")
                  )}
                  {row.understood ? null : <span className="tag"> not understood yet</span>}
                </th>
                <td className="num" data-label="Cells">
                  {row.count}
                </td>
                <td data-label="Means">
                  <WordMeans
                    id={id}
                    word={shown}
                    field={field}
                    said={row.said}
                    set={(means, typing) =>
                      set(
                        row,
                        means === undefined ? undefined : { ...row.said, word: row.word, means },
                        typing,
                      )
                    }
                  />
                </td>
                <td data-label="And fills, too">
                  {row.said ? (
                    <WordAlso
                      id={`${id}-also`}
                      said={row.said}
                      fields={props.others.filter(({ name }) => name !== field.name)}
                      set={(also, typing) => {
                        const { also: _, ...rest } = row.said ?? { word: row.word, means: null };
                        const some = Object.keys(also).length > 0;
                        set(row, { ...rest, ...(some ? { also } : {}) }, typing);
                      }}
                    />
                  ) : null}
                  {row.said && any !== undefined ? (
                    <button
                      type="button"
                      className="plain"
                      onClick={() => row.said && set(row, { ...row.said, word: any })}
                    >
                      any number in “{row.word}” alike
                    </button>
                  ) : null}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </TableBox>
  );
}
