import { notFound } from "next/navigation";
import { Link } from "@/app/_parts/link";
import { peopleReach } from "@/lib/access/reach";
import { listPeople } from "@/lib/reports/people";
import { currentViewer } from "@/lib/reports/viewer";
import { PageHead } from "../../../_parts/page-head";
import { within } from "../../../_parts/within";
import { Changes } from "./changes";

export const metadata = { title: "A person" };

export default async function PersonPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const viewer = await currentViewer();
  const view = await within("/administration/person/[id]", () => listPeople(peopleReach(viewer)), {
    person: id,
  });
  const person = view.people.find((one) => one.id === id);
  if (!person) notFound();
  return (
    <>
      <PageHead
        over={<Link href="/administration">People</Link>}
        title={person.name}
        lead={`Signs in as ${person.email}.`}
      />
      {person.changeable ? (
        <Changes person={person} view={view} />
      ) : (
        <p className="note note-look">
          This person has a role outside the practices that you administer: only an administrator of
          the group can change anything here.
        </p>
      )}
    </>
  );
}
