import { peopleReach } from "@/lib/access/reach";
import { listPeople } from "@/lib/reports/people";
import { secondFactorRule } from "@/lib/reports/second-factor-rule";
import { currentViewer } from "@/lib/reports/viewer";
import { AnsweringForm } from "../_parts/answering-form";
import { PageHead } from "../_parts/page-head";
import { Section } from "../_parts/section";
import { TableBox } from "../_parts/table-box";
import { within } from "../_parts/within";
import { addPersonAct } from "./acts";
import { PersonRow } from "./person-row";
import { roleFields } from "./role-fields";
import { RoleMeanings } from "./role-meanings";
import { SecondFactorRule } from "./second-factor-rule";

export const metadata = { title: "People" };

export default async function PeoplePage() {
  const viewer = await currentViewer();
  const [view, rule] = await within("/administration", async () => {
    const reach = peopleReach(viewer);
    return [await listPeople(reach), await secondFactorRule(reach)] as const;
  });
  return (
    <>
      <PageHead
        title="People"
        lead="Who can sign in, and what each of them may see. Roles are given here and nowhere else."
      />
      <Section
        id="people"
        title="Who can sign in"
        note="A name leads to what can be changed. Whoever administers one practice sees its people only."
      >
        <TableBox label="People and their roles">
          <table className="fold">
            <thead>
              <tr>
                <th scope="col">Name</th>
                <th scope="col">Email</th>
                <th scope="col">Roles</th>
                <th scope="col">Last sign-in</th>
              </tr>
            </thead>
            <tbody>
              {view.people.map((person) => (
                <PersonRow key={person.id} person={person} />
              ))}
            </tbody>
          </table>
        </TableBox>
      </Section>
      <Section
        id="add"
        title="Add a person"
        note="Without a password one is made and shown once; pass it on in person."
      >
        <AnsweringForm
          act={addPersonAct}
          button="Add the person"
          kind="main"
          fields={[
            { label: "Name", name: "name", autoComplete: "off", required: true },
            { label: "Email", name: "email", type: "email", autoComplete: "off", required: true },
            {
              label: "Password",
              name: "password",
              type: "password",
              autoComplete: "new-password",
              hint: "At least 15 characters, or nothing: then one is made, to be changed at the first sign-in.",
            },
            ...roleFields(view),
          ]}
        />
      </Section>
      <SecondFactorRule {...rule} />
      <RoleMeanings />
    </>
  );
}
