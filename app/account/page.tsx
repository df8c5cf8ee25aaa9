import { currentViewer } from "@/lib/reports/viewer";
import { PageHead } from "../_parts/page-head";
import { roleName } from "../_parts/role-words";
import { Section } from "../_parts/section";

export const metadata = { title: "Your account" };

export default async function AccountPage() {
  const viewer = await currentViewer();
  return (
    <>
      <PageHead title="Your account" lead={`${viewer.name}, signs in as ${viewer.email}.`} />
      <Section id="roles" title="Your roles" note="An administrator gives and takes them.">
        {viewer.grants.length === 0 ? (
          <p className="missing">None, so nothing can be seen.</p>
        ) : (
          <ul>
            {viewer.grants.map(({ role, practice, clinicianKey }) => (
              <li key={`${role} ${practice} ${clinicianKey}`}>
                {roleName(role)}, {clinicianKey ?? practice ?? "the whole group"}
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section
        id="data"
        title="What is kept about you"
        note="Account, roles, notes, reflections, what you confirmed, disputed, answered and entered, and the log's lines of you: one JSON file. Your treatment records are not in it; they are patients' records."
      >
        <p>
          <a href="/api/own-data" download>
            Download what is kept about you
          </a>
        </p>
      </Section>
    </>
  );
}
