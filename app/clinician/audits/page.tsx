import { Link } from "@/app/_parts/link";
import { NothingToShow } from "@/app/_parts/nothing-to-show";
import { PageHead } from "@/app/_parts/page-head";
import { Section } from "@/app/_parts/section";
import { within } from "@/app/_parts/within";
import { ActionList } from "@/app/audits/_page/action-list";
import { sharedAuditsPage } from "@/lib/reports/audits/shared";
import { currentViewer } from "@/lib/reports/viewer";

export const metadata = { title: "My audits" };

export default async function MyAuditsPage() {
  const { audits, actions } = await within("/clinician/audits", async () =>
    sharedAuditsPage(await currentViewer()),
  );
  return (
    <>
      <PageHead
        title="My audits"
        lead="Audits with your records in them: what you are asked to confirm, and your own figures in each."
      />
      <Section id="audits" title="Audits" note="The newest first.">
        {audits.length === 0 ? (
          <NothingToShow what="No audit with your records in it has been shared yet.">
            <p>It appears here when the clinical lead asks for your confirmation, or signs.</p>
          </NothingToShow>
        ) : (
          <ul className="notes">
            {audits.map((one) => (
              <li key={one.id} className={one.asked ? "note-look" : undefined}>
                <Link href={`/clinician/audits/${one.id}`}>{one.name}</Link>
                <div className="small soft">{one.state}</div>
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section id="actions" title="My actions" note="What was agreed that you see to.">
        <ActionList actions={actions} tells unlinked />
      </Section>
    </>
  );
}
