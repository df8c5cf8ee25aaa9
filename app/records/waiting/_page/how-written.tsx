import type { WrittenView } from "@/lib/views/mapping/written-view";
import { AnsweringForm } from "../../../_parts/answering-form";
import { lookAnewAct } from "../acts";

/** How the file was understood and how sure that is; each part can be settled by hand, and the file looked at anew. */
export function HowWritten(props: { fileId: number; says: string; written: WrittenView }) {
  const { written, says } = props;
  return (
    <section className="editor-part stack" aria-labelledby="written-title">
      <h2 id="written-title">How it is written</h2>
      <p className="finding">{says.charAt(0).toUpperCase() + says.slice(1)}.</p>
      <ul>
        {written.parts
          .filter(({ why }) => why !== "")
          .map(({ name, words, why }) => (
            <li key={name}>
              <strong>{words}:</strong> {why}
            </li>
          ))}
      </ul>
      {written.ragged ? <p className="form-error">{written.ragged}</p> : null}
      {written.parts.length > 0 ? (
        <details>
          <summary>It is written in another way</summary>
          <AnsweringForm
            act={lookAnewAct}
            button="Look at it anew"
            hidden={{ file: String(props.fileId) }}
            label="How the file is written"
            row
            fields={written.parts.map(({ name, words, value, options }) => ({
              name,
              label: words,
              defaultValue: value,
              ...(options.length > 0
                ? { options }
                : { inputMode: "numeric" as const, autoComplete: "off", size: 5 }),
            }))}
          />
        </details>
      ) : null}
    </section>
  );
}
