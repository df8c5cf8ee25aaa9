import { Link } from "@/app/_parts/link";
import { protocolPage } from "@/lib/reports/protocol/protocol-page";
import { currentViewer } from "@/lib/reports/viewer";
import { AskedWrong } from "../_parts/asked-wrong";
import { NothingToShow } from "../_parts/nothing-to-show";
import { PageHead } from "../_parts/page-head";
import { rightly } from "../_parts/rightly";
import { Section } from "../_parts/section";
import { within } from "../_parts/within";
import { CriterionList } from "./_page/criterion-list";
import { PracticePicker } from "./_page/practice-picker";
import { Terms } from "./_page/terms";

export const metadata = { title: "Protocol" };

export default async function ProtocolPage(props: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const address = await props.searchParams;
  const page = await within("/protocol", async () => {
    const viewer = await currentViewer();
    return rightly(() => protocolPage(viewer, address));
  });
  if ("wrong" in page) return <AskedWrong title="Protocol" wrong={page.wrong} path="/protocol" />;
  const { practices, shown } = page;
  if (!shown)
    return (
      <>
        <PageHead title="Protocol" />
        <NothingToShow what="There is no practice yet.">
          <p>Practices come with the first records that name them.</p>
        </NothingToShow>
      </>
    );
  const { practice, view, terms, mayChange } = shown;
  const lists = { practice: practice.code };
  return (
    <>
      <PageHead
        title="Protocol"
        over={practice.name}
        lead="What the practice asks of itself. Each criterion says what counts, what is left out, and since when; a change holds from its day on and alters no past figure."
        actions={
          mayChange ? (
            <Link
              className="button"
              href={`/protocol/new?practice=${encodeURIComponent(practice.code)}`}
            >
              Add a criterion
            </Link>
          ) : null
        }
      />
      <PracticePicker path="/protocol" practices={practices} practice={practice.code} />
      <Section id="in-force" title="In force" note={`${view.inForce.length} criteria, today.`}>
        {view.inForce.length > 0 ? (
          <CriterionList label="Criteria in force" lines={view.inForce} {...lists} />
        ) : (
          <NothingToShow what="None of the criteria known from the start is in force." />
        )}
      </Section>
      <Section id="own" title="The practice's own">
        {view.own.length > 0 ? (
          <CriterionList label="Criteria of the practice's own" lines={view.own} {...lists} />
        ) : (
          <p className="soft">None in force.</p>
        )}
      </Section>
      {view.notInForce.length > 0 ? (
        <Section id="not-in-force" title="Not in force" note="They count in no figure of today.">
          <CriterionList label="Criteria not in force" lines={view.notInForce} {...lists} />
        </Section>
      ) : null}
      <Section
        id="terms"
        title="Own terms"
        note="Words for what the practice records beyond the usual. Records keep a term's code, whatever it is called."
      >
        {terms.map((group) => (
          <Terms
            key={group.kind}
            group={group}
            practice={practice.code}
            mayChange={mayChange}
            several={shown.changesSeveral}
          />
        ))}
      </Section>
      {mayChange ? null : (
        <p className="note">A practice's protocol is changed by its clinical lead.</p>
      )}
    </>
  );
}
