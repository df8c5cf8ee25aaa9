import Link from "next/link";
import { notFound } from "next/navigation";
import { currentViewer } from "@/lib/reports/viewer";
import { waitingFilePage } from "@/lib/reports/waiting-file";
import { PageHead } from "../../../_parts/page-head";
import { Section } from "../../../_parts/section";
import { TableBox } from "../../../_parts/table-box";
import { within } from "../../../_parts/within";
import { MappingEditor } from "./_editor/mapping-editor";

export const metadata = { title: "A file that waits" };

export default async function WaitingFilePage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const view = await within(async () => waitingFilePage(await currentViewer(), Number(id)));
  if (!view) notFound();
  const over = <Link href="/records/waiting">Back to the files that wait</Link>;
  if (!view.mapping) return <PageHead over={over} title={view.name} lead={view.trouble ?? ""} />;
  return (
    <>
      <PageHead
        over={over}
        title={view.name}
        lead={`${view.rows} rows. Say which column feeds which field; what is proposed may be wrong.`}
      />
      <Section id="understood" title="How it is written" note="Found by looking at the whole file.">
        <ul>
          {view.understood.map(({ about, says, sure }) => (
            <li key={about}>
              <strong>{about}</strong> ({sure}). {says}
            </li>
          ))}
        </ul>
        <TableBox label="The first rows of the file">
          <table>
            <thead>
              <tr>
                {view.columns.map(({ name }) => (
                  <th key={name} scope="col">
                    {name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {view.firstRows.slice(0, 5).map((row, line) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: rows of a file have no other name than their place.
                <tr key={line}>
                  {row.map((cell, place) => (
                    <td key={view.columns[place]?.name}>{cell}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      </Section>
      <MappingEditor
        id={view.id}
        first={view.mapping}
        columns={view.columns}
        offers={view.offers}
        tables={view.tables}
        reasons={view.reasons}
      />
    </>
  );
}
