import { roles } from "@/lib/access/role";
import { roleMeaning, roleWords } from "../_parts/role-words";
import { Section } from "../_parts/section";

/** What each role may see. */
export function RoleMeanings() {
  return (
    <Section id="roles" title="What a role may see">
      <dl className="facts">
        {roles.map((role) => (
          <div key={role} className="fact">
            <dt>{roleWords[role]}</dt>
            <dd>{roleMeaning[role]}</dd>
          </div>
        ))}
      </dl>
    </Section>
  );
}
