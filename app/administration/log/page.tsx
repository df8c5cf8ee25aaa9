import { Link } from "@/app/_parts/link";
import { logPage } from "@/lib/reports/log/log-page";
import { currentViewer } from "@/lib/reports/viewer";
import { PageHead } from "../../_parts/page-head";
import { Section } from "../../_parts/section";
import { TableBox } from "../../_parts/table-box";
import { within } from "../../_parts/within";

export const metadata = { title: "Log" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function LogPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/administration/log", async () =>
    logPage(await currentViewer(), address),
  );
  return (
    <>
      <PageHead
        title="Log"
        lead="Who saw, changed, signed and took out what. A line is only ever added; each bears a hash of the one before."
      />
      <Section
        id="lines"
        title="Lines"
        note={`The newest first, times of ${view.zone}. What somebody saw stands once a person, page and hour. Visits are named by their number; no line names a patient.`}
      >
        <form method="get" aria-label="Which lines" className="form-row">
          <div>
            <label htmlFor="log-day">Day</label>
            <input id="log-day" name="day" type="date" defaultValue={view.day} />
          </div>
          <div>
            <label htmlFor="log-person">Person</label>
            <select
              id="log-person"
              name="person"
              defaultValue={view.person}
              key={`${view.day} ${view.person}`}
            >
              <option value="">Everybody</option>
              <option value="command line">The command line</option>
              {view.people.map(({ id, words }) => (
                <option key={id} value={id}>
                  {words}
                </option>
              ))}
            </select>
          </div>
          <button type="submit">Show</button>
        </form>
        {view.wrong ? <p className="form-error">{view.wrong}</p> : null}
        {view.lines.length === 0 ? (
          <p className="missing">No line.</p>
        ) : (
          <TableBox label="Lines of the log">
            <table className="fold">
              <thead>
                <tr>
                  <th scope="col">Line</th>
                  <th scope="col">When</th>
                  <th scope="col">Who</th>
                  <th scope="col">Did</th>
                  <th scope="col">What</th>
                  <th scope="col">About</th>
                </tr>
              </thead>
              <tbody>
                {view.lines.map((line) => (
                  <tr key={line.id}>
                    <th scope="row">{line.id}</th>
                    <td className="nowrap" data-label="When">
                      {line.at}
                    </td>
                    <td data-label="Who">{line.who}</td>
                    <td className="nowrap" data-label="Did">
                      {line.did}
                    </td>
                    <td data-label="What">{line.what}</td>
                    <td data-label="About">{line.about}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableBox>
        )}
        {view.older ? (
          <p>
            <Link href={view.older}>Older lines</Link>
          </p>
        ) : null}
      </Section>
    </>
  );
}
