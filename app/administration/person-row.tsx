import { Link } from "@/app/_parts/link";
import type { PersonView } from "@/lib/reports/people";
import { roleName } from "../_parts/role-words";

/** One person in the table of people; the name leads to what can be changed. */
export function PersonRow(props: { person: PersonView }) {
  const { person } = props;
  return (
    <tr>
      <th scope="row">
        <Link href={`/administration/person/${person.id}`}>{person.name}</Link>
      </th>
      <td data-label="Email">{person.email}</td>
      <td data-label="Roles">
        {person.grants.length === 0 ? <span className="missing">none</span> : null}
        {person.grants.map((grant) => (
          <div key={grant.id}>
            {roleName(grant.role)}, <span className="soft">{grant.where}</span>
          </div>
        ))}
      </td>
      <td data-label="Last sign-in">
        {person.lastSignIn ?? <span className="missing">none kept</span>}
      </td>
    </tr>
  );
}
