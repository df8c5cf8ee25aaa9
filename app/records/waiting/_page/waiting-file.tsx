import { Link } from "@/app/_parts/link";
import type { WaitingLine } from "@/lib/views/mapping/waiting-line";
import { AnsweringForm } from "../../../_parts/answering-form";
import { dropWaitingAct, readByKeptAct } from "../acts";

/** A file that waits, and what can be done with it. */
export function WaitingFile(props: { file: WaitingLine }) {
  const { file } = props;
  const hidden = { file: String(file.id) };
  return (
    <section className="waiting-file stack-tight" aria-label={file.name}>
      <h3>
        {file.opens ? <Link href={`/records/waiting/${file.id}`}>{file.name}</Link> : file.name}
      </h3>
      <p className="small soft">{file.brought}</p>
      <p>{file.known}</p>
      {file.next ? <p className={file.ready ? "form-done" : undefined}>{file.next}</p> : null}
      <div className="form-row">
        {file.opens ? (
          <Link className="button" href={`/records/waiting/${file.id}`}>
            {file.begun ? "Go on with the mapping" : "Make a mapping"}
            <span className="only-heard"> of {file.name}</span>
          </Link>
        ) : null}
        <AnsweringForm
          act={dropWaitingAct}
          button="Delete it"
          row
          hidden={hidden}
          label={`Delete ${file.name}`}
        >
          <span className="only-heard">{file.name}, from this machine.</span>
        </AnsweringForm>
      </div>
      {file.fitting.length > 0 ? (
        <AnsweringForm
          act={readByKeptAct}
          button="Use it"
          row
          hidden={hidden}
          label={`Use a kept mapping for ${file.name}`}
          fields={[
            {
              label: "Kept mapping that could read it",
              name: "name",
              options: file.fitting,
              defaultValue: file.fitting[0]?.value,
            },
          ]}
        />
      ) : null}
    </section>
  );
}
