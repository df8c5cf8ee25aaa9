import { Link } from "@/app/_parts/link";
import { previewMend } from "@/lib/reports/mend-alike";
import { currentViewer } from "@/lib/reports/viewer";
import { AnsweringForm } from "../../../_parts/answering-form";
import { PageHead } from "../../../_parts/page-head";
import { Section } from "../../../_parts/section";
import { TableBox } from "../../../_parts/table-box";
import { within } from "../../../_parts/within";
import { CellList } from "../_page/cell-list";
import { mendAlikeAct } from "../acts";

export const metadata = { title: "What a mend would do" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function PreviewPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/records/held/preview", async () =>
    previewMend(await currentViewer(), address),
  );
  const over = <Link href={view.back}>Back to the rows</Link>;
  if ("wrong" in view)
    return (
      <>
        <PageHead over={over} title="What a mend would do" />
        <p className="form-error" role="alert">
          {Object.values(view.wrong).join(" ")}
        </p>
      </>
    );
  const { preview } = view;
  if (preview.rows === 0)
    return (
      <>
        <PageHead over={over} title="What a mend would do" lead={preview.what} />
        <p className="finding">No held row is concerned.</p>
      </>
    );
  return (
    <>
      <PageHead over={over} title="What a mend would do" lead={preview.what} />
      <p className="finding">{preview.outcome}</p>
      {preview.still.length > 0 ? (
        <Section
          id="still"
          title="Held still"
          note="They keep what is changed, and can be mended further."
        >
          <ul>
            {preview.still.map((one) => (
              <li key={one.id}>{one.words}</li>
            ))}
          </ul>
        </Section>
      ) : null}
      <Section id="do" title="Do it" note="Under your name; it can be taken back.">
        <AnsweringForm
          act={mendAlikeAct}
          button={preview.rows === 1 ? "Mend the row" : "Mend the rows"}
          kind="main"
          label="Mend the rows"
          hidden={view.hidden}
        >
          {view.rows.map((row) => (
            <input key={row} type="hidden" name="row" value={row} />
          ))}
          {view.mappings.length > 0 ? (
            <fieldset>
              <legend>For the next file</legend>
              <label className="tick">
                <input type="radio" name="join" value="" defaultChecked /> Only mend these rows
              </label>
              {view.mappings.map((name) => (
                <label className="tick" key={name}>
                  <input type="radio" name="join" value={name} /> Also write it into the mapping “
                  {name}”, so that the next file is right by itself
                </label>
              ))}
            </fieldset>
          ) : null}
        </AnsweringForm>
      </Section>
      <Section
        id="examples"
        title="Rows"
        note={preview.rows > preview.examples.length ? "The first of them." : null}
      >
        <TableBox label="Rows before and after">
          <table className="fold">
            <thead>
              <tr>
                <th scope="col">Row</th>
                <th scope="col">What would change</th>
                <th scope="col">What would become of it</th>
              </tr>
            </thead>
            <tbody>
              {preview.examples.map((row) => (
                <tr key={row.id}>
                  <th scope="row">
                    <span className="nowrap">{row.key}</span>{" "}
                    <span className="soft small">{row.place}</span>
                  </th>
                  <td data-label="What would change">
                    <CellList changes={row.changes} />
                  </td>
                  <td data-label="Becomes">{row.outcome}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      </Section>
    </>
  );
}
