"use client";

import type { Act } from "@/app/_parts/answer";
import { EditorPart } from "@/app/protocol/_editor/editor-part";
import { canonicalJson } from "@/lib/views/canonical-json";
import type { MappingDraft } from "@/lib/views/mapping/draft";
import type { EditorView } from "@/lib/views/mapping/editor-view";
import { unusedColumns } from "@/lib/views/mapping/missing";
import { questionsOf } from "@/lib/views/mapping/questions";
import { sendable } from "@/lib/views/mapping/sendable";
import { stillToDo } from "@/lib/views/mapping/still-to-do";
import { BringPart } from "./bring-part";
import { idAt, MappingContext } from "./editor-tools";
import { FeedsList } from "./feeds-list";
import { FirstRows } from "./first-rows";
import { KeepChanged } from "./keep-changed";
import { MoreTables } from "./more-tables";
import { NamePart } from "./name-part";
import { QuestionsPart } from "./questions-part";
import { StillToDo } from "./still-to-do";
import { TablePart } from "./table-part";
import { TestPart } from "./test-part";
import { useDraft } from "./use-draft";
import { usePreview } from "./use-preview";
import { useTest } from "./use-test";

/** Makes a mapping: of a file that waits, whose rows it shows as one goes; or of none, where a kept one is changed. */
export function MappingEditor(props: {
  view: EditorView;
  bring: Act;
  keepOnly: Act;
  keepChanged: Act;
}) {
  const { view } = props;
  const { history, change, undo, redo } = useDraft(view.draft);
  const draft = history.now;
  const fileId = view.file?.id ?? null;
  const sent = JSON.stringify(sendable(draft));
  const preview = usePreview(fileId, sent, view.preview);
  const test = useTest(fileId, readsAs(sendable(draft)), view.test);
  const questions = questionsOf(draft, view.columns, view.terms);
  const open = stillToDo(draft, view.terms, questions, view.decimalUnsettled !== null);
  const isTested = test.isOfThis && test.view.state === "done";
  const running = test.isOfThis && test.view.state === "running";
  const todo = [
    ...open.map(({ words, at }) => ({ words, id: idAt(at) })),
    ...(isTested ? [] : [{ words: "Test it on the whole file", id: "m-test" }]),
  ];
  const unused = unusedColumns(draft, draft.columns);
  return (
    <MappingContext
      value={{ fileId, columns: view.columns, terms: view.terms, reasons: view.reasons, change }}
    >
      <div className="mapping">
        {preview.view ? (
          <EditorPart title="The first rows of the file" id="first">
            <FirstRows first={preview.view.first} />
          </EditorPart>
        ) : null}
        {questions.length > 0 ? (
          <EditorPart title="Questions" id="questions">
            <QuestionsPart draft={draft} questions={questions} preview={preview.view} />
          </EditorPart>
        ) : null}
        <EditorPart title="What it feeds" id="feeds">
          <FeedsList draft={draft} preview={preview.view} />
        </EditorPart>
        <div className="mapping-bar row">
          <button type="button" onClick={undo} disabled={history.past.length === 0}>
            Undo
          </button>
          <button type="button" onClick={redo} disabled={history.future.length === 0}>
            Redo
          </button>
          {fileId === null ? null : (
            <span role="status" className="small soft">
              {preview.wrong ? "" : preview.waiting ? "Being kept …" : "Everything is kept."}
            </span>
          )}
        </div>
        {preview.wrong || preview.view?.wrong ? (
          <p role="status" className="form-error">
            {preview.wrong || preview.view?.wrong}
          </p>
        ) : null}
        {draft.tables.map((table, place) => (
          <TablePart
            // biome-ignore lint/suspicious/noArrayIndexKey: a table may be fed twice; its place tells the two apart.
            key={`${place} ${table.table}`}
            place={place}
            table={table}
            preview={preview.view?.tables[place]}
          />
        ))}
        <EditorPart title="What else" id="more">
          <div className="stack">
            <MoreTables draft={draft} />
            <p>
              {unused.length === 0
                ? "Every column of the file is read."
                : `Nothing reads these columns, and they are not kept: ${unused.join(", ")}.`}
            </p>
          </div>
        </EditorPart>
        <EditorPart title="Name" id="name">
          <NamePart draft={draft} zones={view.zones} kept={view.kept} />
        </EditorPart>
        {fileId === null ? (
          <EditorPart title="Keep it" id="keep">
            {open.length > 0 ? (
              <StillToDo todo={open.map(({ words, at }) => ({ words, id: idAt(at) }))} />
            ) : (
              <KeepChanged act={props.keepChanged} json={sent} />
            )}
          </EditorPart>
        ) : (
          <EditorPart title="Test it, and bring the file in" id="bring">
            <div className="stack">
              <p>
                The test reads the whole file and stores nothing. Rows that belong to a visit of
                another file find it when both are in.
              </p>
              <div>
                <button
                  id="m-test"
                  type="button"
                  disabled={running}
                  onClick={() => test.begin(sent)}
                >
                  {running ? "Testing …" : "Test on the whole file"}
                </button>
              </div>
              <TestPart test={test.view} isOfThis={test.isOfThis} />
              {todo.length > 0 ? (
                <StillToDo todo={todo} />
              ) : (
                <BringPart
                  fileId={fileId}
                  keep={preview.keep}
                  bring={props.bring}
                  keepOnly={props.keepOnly}
                />
              )}
            </div>
          </EditorPart>
        )}
      </div>
    </MappingContext>
  );
}

/** All of a draft but what it is called. */
function readsAs({ name: _, says: __, ...rest }: MappingDraft): string {
  return canonicalJson(rest);
}
