import { AnsweringForm } from "../../../_parts/answering-form";
import { lookAnewAct } from "../acts";

/** Asks whether the only mark in the file's numbers is that of the decimals. */
export function DecimalQuestion(props: { fileId: number; example: string }) {
  const { example } = props;
  const mark = /[.,]/.exec(example)?.[0] ?? ".";
  return (
    <section className="editor-part" aria-label="A question about the numbers">
      <AnsweringForm
        act={lookAnewAct}
        button="That is so"
        hidden={{ file: String(props.fileId), question: "decimal" }}
        label="What the mark in numbers means"
      >
        <fieldset className="mapping-question" id="m-decimal-question">
          <legend>What is “{example}” in this file?</legend>
          <p>All its numbers can be read in both ways.</p>
          <label className="tick">
            <input type="radio" name="mark" value={`decimal ${mark}`} required />
            {example.replace(mark, ".")}: decimals stand after the mark
          </label>
          <label className="tick">
            <input type="radio" name="mark" value={`thousands ${mark}`} />
            {example.replaceAll(mark, "")}: the mark parts thousands
          </label>
          <p className="field-error">Not answered yet.</p>
        </fieldset>
      </AnsweringForm>
    </section>
  );
}
