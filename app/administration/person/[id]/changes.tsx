import type { PeopleView, PersonView } from "@/lib/reports/people";
import { AnsweringForm } from "../../../_parts/answering-form";
import { roleName } from "../../../_parts/role-words";
import { Section } from "../../../_parts/section";
import {
  giveRoleAct,
  leavePersonAct,
  removePersonAct,
  resetPasswordAct,
  takeRoleAct,
  takeSecondFactorAct,
} from "../../acts";
import { roleFields } from "../../role-fields";

/** Everything that can be changed about a person. */
export function Changes(props: { person: PersonView; view: PeopleView }) {
  const { person, view } = props;
  const hidden = { person: person.id };
  return (
    <>
      <Section id="roles" title="Roles">
        {person.grants.length === 0 ? (
          <p className="missing">None, so nothing can be seen.</p>
        ) : null}
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
        <AnsweringForm
          act={giveRoleAct}
          hidden={hidden}
          fields={roleFields(view)}
          button="Give the role"
        />
      </Section>
      <Section
        id="password"
        title="Password"
        note="For whoever forgot theirs. Pass it on in person; it has to be changed at the next sign-in."
      >
        <AnsweringForm act={resetPasswordAct} hidden={hidden} button="Make a new password" />
      </Section>
      <Section
        id="data"
        title="What is kept about them"
        note="For a person who asks. That there are private notes and reflections stands in it, not what they say: with their own account they have that themselves."
      >
        <p>
          <a href={`/api/person-data?person=${encodeURIComponent(person.id)}`} download>
            Download it as one JSON file
          </a>
        </p>
      </Section>
      <Section id="leave" title="Has left">
        <AnsweringForm
          act={leavePersonAct}
          hidden={hidden}
          button="Remove the account and the name"
          label="Has left"
        >
          <p>
            Sessions, roles, private notes and reflections go, and the name where it stands beside
            what was done; figures stay under the code. Signed audits stay as they were signed.
          </p>
          <label className="tick">
            <input type="checkbox" name="sure" value="yes" />
            {person.name} has left for good
          </label>
        </AnsweringForm>
      </Section>
      {person.secondFactor ? (
        <Section
          id="second-factor"
          title="Second factor"
          note="For whoever lost the device and the recovery codes. Make sure that it is they who ask."
        >
          <AnsweringForm
            act={takeSecondFactorAct}
            hidden={hidden}
            button="Take the second factor away"
          />
        </Section>
      ) : null}
      <Section id="remove" title="Remove">
        <AnsweringForm act={removePersonAct} hidden={hidden} button={`Remove ${person.name}`}>
          <p>Their sessions end and their private notes are deleted. Records and figures stay.</p>
        </AnsweringForm>
      </Section>
    </>
  );
}
