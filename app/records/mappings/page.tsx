import { Link } from "@/app/_parts/link";
import { mappingsPage } from "@/lib/reports/mappings-page";
import { currentViewer } from "@/lib/reports/viewer";
import { NothingToShow } from "../../_parts/nothing-to-show";
import { PageHead } from "../../_parts/page-head";
import { Section } from "../../_parts/section";
import { within } from "../../_parts/within";
import { BringMapping } from "./_page/bring-mapping";
import { MappingTable } from "./_page/mapping-table";

export const metadata = { title: "Mappings" };

export default async function MappingsPage() {
  const mappings = await within("/records/mappings", async () =>
    mappingsPage(await currentViewer()),
  );
  return (
    <>
      <PageHead
        over={<Link href="/records">Back to records</Link>}
        title="Mappings"
        lead="How files of other systems are read. A file whose column names are those of a mapping is read by it as it comes."
        actions={<Link href="/records/waiting">Files that wait</Link>}
      />
      {mappings.length === 0 ? (
        <NothingToShow what="No mapping is kept yet.">
          <p>
            Bring a file of another system in on the page <Link href="/records">Records</Link>; its
            mapping is made there.
          </p>
        </NothingToShow>
      ) : (
        <Section id="kept" title="Kept" note="The newest version of each.">
          <MappingTable mappings={mappings} />
        </Section>
      )}
      <Section
        id="share"
        title="Share"
        note="A mapping is a JSON file that another practice can use."
      >
        <BringMapping />
        <p>
          Somebody who writes one by hand or by a program finds its form in the{" "}
          <a href="/api/records/mapping-schema">JSON Schema of a mapping</a>; every name in it is
          explained there, and the README has a whole example. The command takes the file as it is:{" "}
          <code>import FILE --mapping mapping.json</code>.
        </p>
      </Section>
    </>
  );
}
