import Link from "next/link";
import { currentViewer } from "@/lib/reports/viewer";
import { waitingList } from "@/lib/reports/waiting-files";
import { AnsweringForm } from "../../_parts/answering-form";
import { PageHead } from "../../_parts/page-head";
import { Section } from "../../_parts/section";
import { within } from "../../_parts/within";
import { bringWaitingAct, dropWaitingAct } from "./acts";

export const metadata = { title: "Files that wait" };

export default async function WaitingPage(props: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { import: begun } = await props.searchParams;
  const files = await within(async () => waitingList(await currentViewer()));
  const ready = files.filter((file) => file.ready);
  const importId = typeof begun === "string" && /^\d{1,9}$/.test(begun) ? begun : undefined;
  return (
    <>
      <PageHead
        over={<Link href="/records">Back to records</Link>}
        title="Files that wait"
        lead="Files of other systems that no mapping knows yet. A mapping is made once; from then on such files are read as they come."
      />
      {importId ? (
        <p role="status">
          The other files are being brought in:{" "}
          <Link href={`/records/imports/${importId}`}>import {importId}</Link>.
        </p>
      ) : null}
      <Section
        id="files"
        title="Files"
        note="They lie on this machine until they are brought in or deleted."
      >
        {files.length === 0 ? (
          <p>
            No file waits. Bring files in on the page <Link href="/records">Records</Link>.
          </p>
        ) : (
          <ul className="stack">
            {files.map((file) => (
              <li key={file.id} className="stack-tight">
                <h3>
                  <Link href={`/records/waiting/${file.id}`}>{file.name}</Link>
                </h3>
                <p className="soft">
                  Brought {file.at} by {file.by}. {file.says}
                </p>
                <AnsweringForm
                  act={dropWaitingAct}
                  button="Delete this file"
                  kind="plain"
                  row
                  label={`Delete ${file.name}`}
                  hidden={{ file: String(file.id) }}
                />
              </li>
            ))}
          </ul>
        )}
      </Section>
      {ready.length > 0 ? (
        <Section
          id="bring"
          title="Bring them in"
          note="All in one import, each by its mapping, which is kept for the next time."
        >
          <AnsweringForm act={bringWaitingAct} button="Bring in" label="Bring files in">
            {ready.map((file) => (
              <label key={file.id} className="row">
                <input type="checkbox" name="file" value={file.id} defaultChecked />{" "}
                <span>{file.name}</span>
              </label>
            ))}
          </AnsweringForm>
        </Section>
      ) : null}
    </>
  );
}
