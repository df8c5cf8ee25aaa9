import Link from "next/link";
import { notFound } from "next/navigation";
import { peopleReach } from "@/lib/access/reach";
import { listPeople } from "@/lib/reports/people";
import { currentViewer } from "@/lib/reports/viewer";
import { AnsweringForm } from "../../../_parts/answering-form";
import { PageHead } from "../../../_parts/page-head";
import { roleName } from "../../../_parts/role-words";
import { Section } from "../../../_parts/section";
import { within } from "../../../_parts/within";
import { giveRoleAct, removePersonAct, resetPasswordAct, takeRoleAct } from "../../acts";
import { roleFields } from "../../role-fields";

export const metadata = { title: "A person" };

export default async function PersonPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const viewer = await currentViewer();
  const view = await within(() => listPeople(peopleReach(viewer)));
  const person = view.people.find((one) => one.id === id);
  if (!person) notFound();
  const hidden = { person: id };
  return (
    <>
      <PageHead
        over={<Link href="/administration">People</Link>}
        title={person.name}
        lead={`Signs in as ${person.email}.`}
      />
      {person.changeable ? null : (
        <p className="note note-look">
          This person has a role outside the practices that you administer: only an administrator of the
          group can change anything here.
        </p>
      )}
      <Section id="roles" title="Roles">
        {person.grants.length === 0 ? <p className="missing">None, so nothing can be seen.</p> : null}
        {person.grants.map((grant) => (
          <AnsweringForm
            key={grant.id}
            row
            act={takeRoleAct}
            hidden={{ ...hidden, grant: String(grant.id) }}
            button="Take back"
            label={`${roleName(grant.role)}, ${grant.where}`}
          >
            <p>
              {roleName(grant.role)}, {grant.where}
            </p>
          </AnsweringForm>
        ))}
      </Section>
      <Section id="give" title="Give a role">
        <AnsweringForm act={giveRoleAct} hidden={hidden} fields={roleFields(view)} button="Give the role" />
      </Section>
      <Section id="password" title="Password" note="For whoever forgot theirs. Pass it on in person.">
        <AnsweringForm act={resetPasswordAct} hidden={hidden} button="Make a new password" />
      </Section>
      <Section id="remove" title="Remove">
        <AnsweringForm act={removePersonAct} hidden={hidden} button={`Remove ${person.name}`}>
          <p>Their sessions end and their private notes are deleted. Records and figures stay.</p>
        </AnsweringForm>
      </Section>
    </>
  );
}
