import { Link } from "@/app/_parts/link";
import { mendsPage } from "@/lib/reports/mends";
import { currentViewer } from "@/lib/reports/viewer";
import { PageHead } from "../../../_parts/page-head";
import { Section } from "../../../_parts/section";
import { within } from "../../../_parts/within";
import { ActsTable } from "../_page/acts-table";

export const metadata = { title: "What was mended" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function MendsPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/records/held/mends", async () =>
    mendsPage(await currentViewer(), address),
  );
  return (
    <>
      <PageHead
        over={<Link href="/records/held">Back to the held rows</Link>}
        title="What was mended"
        lead="Every act on held rows, by whom and when. Taking one back puts its rows back as they were; a mapping that it joined stays."
      />
      <Section id="acts" title="Acts">
        <p>{view.found}</p>
        {view.mends.length > 0 ? <ActsTable acts={view.mends} /> : null}
        <nav className="row" aria-label="Pages of acts">
          {view.previous ? <Link href={view.previous}>← Before</Link> : null}
          {view.next ? <Link href={view.next}>Further →</Link> : null}
        </nav>
      </Section>
    </>
  );
}
