"use client";

import { useActionState, useState } from "react";
import type { Mapping } from "@/lib/reports/waiting-file";
import { AnsweringForm } from "../../../../_parts/answering-form";
import { Section } from "../../../../_parts/section";
import { bringWaitingAct, tryMappingAct } from "../../acts";
import type { Around, TableFeed } from "./feed";
import { TableFields } from "./table-fields";
import { TriedView } from "./tried-view";

/** A mapping that is being made: what it feeds, what it makes of the file, and bringing the file in. */
export function MappingEditor(props: Around & { id: number; first: Mapping }) {
  const [drafts, setDrafts] = useState<readonly Mapping[]>([props.first]);
  const [answer, tryIt, waiting] = useActionState(tryMappingAct, {});
  const mapping = drafts[drafts.length - 1] ?? props.first;
  const change = (changed: Partial<Mapping>) =>
    setDrafts((before) => [...before.slice(-50), { ...mapping, ...changed }]);
  const setTable = (place: number, table: TableFeed | null) =>
    change({
      tables: mapping.tables.flatMap((one, at) => (at === place ? (table ? [table] : []) : [one])),
    });
  const others = props.tables.filter(({ name }) => name !== "people");
  return (
    <>
      {mapping.tables.map((table, place) => (
        <TableFields
          // biome-ignore lint/suspicious/noArrayIndexKey: a table may be fed twice; its place tells the two apart.
          key={place}
          {...props}
          table={table}
          onChange={(changed) => setTable(place, changed)}
          onRemove={mapping.tables.length > 1 ? () => setTable(place, null) : undefined}
        />
      ))}
      <Section id="more" title="More tables" note="One file may feed several.">
        <div className="form-row">
          <div>
            <label htmlFor="another">Feed another table</label>
            <select
              id="another"
              value=""
              onChange={(event) =>
                change({
                  tables: [
                    ...mapping.tables,
                    { table: event.currentTarget.value as TableFeed["table"], fields: {} },
                  ],
                })
              }
            >
              <option value="">choose …</option>
              {others.map(({ name, says }) => (
                <option key={name} value={name}>
                  {name}: {says}
                </option>
              ))}
            </select>
          </div>
          <button
            type="button"
            disabled={drafts.length < 2}
            onClick={() => setDrafts((before) => before.slice(0, -1))}
          >
            Undo the last change
          </button>
        </div>
      </Section>
      <Section
        id="try"
        title="Try it"
        note="Nothing is stored but the mapping as far as it is made."
      >
        <form action={tryIt} className="stack">
          <input type="hidden" name="id" value={props.id} />
          <input type="hidden" name="mapping" value={JSON.stringify(mapping)} />
          <div>
            <label htmlFor="mapping-name">Name of the mapping</label>
            <input
              id="mapping-name"
              value={mapping.name}
              maxLength={80}
              onChange={(event) => change({ name: event.currentTarget.value })}
            />
          </div>
          <div className="form-row">
            <button type="submit" name="whole" value="no" disabled={waiting}>
              Save, and look at the first rows
            </button>
            <button type="submit" name="whole" value="yes" className="main" disabled={waiting}>
              {waiting ? "Looking …" : "Save, and test the whole file"}
            </button>
          </div>
          <div role="status">
            {answer.wrong?.form ? <p className="form-error">{answer.wrong.form}</p> : null}
          </div>
          {answer.tried ? <TriedView tried={answer.tried} /> : null}
        </form>
      </Section>
      {answer.tried?.whole && answer.tried.missing.length === 0 && !answer.tried.wrong ? (
        <Section
          id="bring"
          title="Bring it in"
          note="The mapping is kept under its name; such files are read by it from now on."
        >
          <p>As it was tested last. Rows that are held can be mended or let go afterwards.</p>
          <AnsweringForm
            act={bringWaitingAct}
            button="Keep the mapping and bring the file in"
            hidden={{ file: String(props.id) }}
            label="Bring the file in"
          />
        </Section>
      ) : null}
    </>
  );
}
