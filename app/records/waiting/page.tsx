import { Link } from "@/app/_parts/link";
import { currentViewer } from "@/lib/reports/viewer";
import { waitingList } from "@/lib/reports/waiting-list";
import { AnsweringForm } from "../../_parts/answering-form";
import { NothingToShow } from "../../_parts/nothing-to-show";
import { PageHead } from "../../_parts/page-head";
import { Section } from "../../_parts/section";
import { within } from "../../_parts/within";
import { BeingLooked } from "./_page/being-looked";
import { WaitingFile } from "./_page/waiting-file";
import { bringWaitingAct } from "./acts";

export const metadata = { title: "Files that wait" };

export default async function WaitingPage(props: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { import: begun } = await props.searchParams;
  const { files, looking } = await within("/records/waiting", async () =>
    waitingList(await currentViewer()),
  );
  const ready = files.filter((file) => file.ready);
  const importId = typeof begun === "string" && /^\d{1,9}$/.test(begun) ? begun : undefined;
  return (
    <>
      <PageHead
        over={<Link href="/records">Back to records</Link>}
        title="Files that wait"
        lead="Files of other systems that no mapping knows yet. A mapping is made once; from then on such files are read as they come."
        actions={<Link href="/records/mappings">Kept mappings</Link>}
      />
      {importId ? (
        <p role="status">
          The other files are being brought in:{" "}
          <Link href={`/records/imports/${importId}`}>import {importId}</Link>.
        </p>
      ) : null}
      {files.length === 0 ? (
        <NothingToShow what="No file waits.">
          <p>
            Bring files in on the page <Link href="/records">Records</Link>; those that no mapping
            knows come here.
          </p>
        </NothingToShow>
      ) : (
        <Section
          id="files"
          title="Files"
          note="They lie on this machine until they are brought in or deleted."
        >
          {looking ? <BeingLooked path="/records/waiting" /> : null}
          {files.map((file) => (
            <WaitingFile key={file.id} file={file} />
          ))}
        </Section>
      )}
      {ready.length > 0 ? (
        <Section
          id="bring"
          title="Bring in together"
          note="In one import, each by its mapping, which is kept for the next time."
        >
          <AnsweringForm
            act={bringWaitingAct}
            button="Bring in"
            kind="main"
            label="Bring files in together"
          >
            {ready.map((file) => (
              <label key={file.id} className="tick">
                <input type="checkbox" name="file" value={file.id} defaultChecked />
                <span>{file.name}</span>
              </label>
            ))}
          </AnsweringForm>
        </Section>
      ) : null}
    </>
  );
}
