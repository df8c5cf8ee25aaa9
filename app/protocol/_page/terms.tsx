import type { TermGroup, TermLine } from "@/lib/views/protocol/term-lines";
import { AnsweringForm } from "../../_parts/answering-form";
import { addTermAct, retireTermAct, rewordTermAct } from "../acts";

type Props = {
  group: TermGroup;
  practice: string;
  mayChange: boolean;
  /** May it be added to further practices at once. */
  several: boolean;
};

/** A practice's own terms of a kind: added, reworded, retired. */
export function Terms(props: Props) {
  const { group, practice, mayChange } = props;
  return (
    <div className="stack-tight">
      <h3>{group.title}</h3>
      <p className="small soft">{group.says}</p>
      {group.lines.length > 0 ? (
        <ul>
          {group.lines.map((line) => (
            <li key={line.code}>
              {line.words} <code>{line.code}</code>
              {line.retired ? <span className="tag">retired</span> : null}
              {mayChange ? <TermForms group={group} practice={practice} line={line} /> : null}
            </li>
          ))}
        </ul>
      ) : (
        <p className="soft">None.</p>
      )}
      {mayChange ? <AddTerm {...props} /> : null}
    </div>
  );
}

function TermForms(props: { group: TermGroup; practice: string; line: TermLine }) {
  const { group, practice, line } = props;
  const hidden = { kind: group.kind, practice, code: line.code };
  return (
    <details className="not-printed">
      <summary>
        Change<span className="only-heard">: {line.words}</span>
      </summary>
      <AnsweringForm
        act={rewordTermAct}
        button="Reword"
        row
        label={`Reword ${line.words}`}
        hidden={hidden}
        fields={[
          {
            label: "In other words",
            name: "words",
            defaultValue: line.words,
            maxLength: 80,
            required: true,
          },
        ]}
      />
      <AnsweringForm
        act={retireTermAct}
        button={line.retired ? "Offer again" : "Retire"}
        kind="plain"
        row
        label={`${line.retired ? "Offer again" : "Retire"}: ${line.words}`}
        hidden={{ ...hidden, retired: line.retired ? "no" : "yes" }}
      />
    </details>
  );
}

function AddTerm({ group, practice, several }: Props) {
  return (
    <AnsweringForm
      act={addTermAct}
      button="Add"
      row
      label={`Add a ${group.one}`}
      hidden={{ kind: group.kind, practice }}
      fields={[
        { label: `A ${group.one} more, in words`, name: "words", maxLength: 80, required: true },
        ...(several
          ? [
              {
                label: "Where",
                name: "where",
                options: [
                  { value: "here", words: "here only" },
                  { value: "everywhere", words: "in every practice of mine" },
                ],
              },
            ]
          : []),
      ]}
    />
  );
}
