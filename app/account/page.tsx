import { ownAccount } from "@/lib/reports/account/own-account";
import { askedWith, asWhoAsks, ownViewer } from "@/lib/reports/viewer";
import { AnsweringForm } from "../_parts/answering-form";
import { PageHead } from "../_parts/page-head";
import { Section } from "../_parts/section";
import { changePasswordAct } from "./acts";
import { SecondFactor } from "./second-factor";
import { Sessions } from "./sessions";

export const metadata = { title: "Your account" };

const first = {
  password: "Your password was made by another. Change it first; then everything of yours is open.",
  "second factor":
    "Your role needs a second factor. Set it up first; then everything of yours is open.",
};

export default async function AccountPage() {
  const viewer = await ownViewer();
  const view = await asWhoAsks(async () => ownAccount(viewer, await askedWith()), viewer);
  return (
    <>
      <PageHead title="Your account" lead={`You sign in as ${viewer.email}.`} />
      {view.due ? <p className="note note-look">{first[view.due]}</p> : null}
      <Section
        id="password"
        title="Password"
        note="Every other session of yours ends when it is changed."
      >
        <AnsweringForm
          act={changePasswordAct}
          button="Change the password"
          label="Change the password"
          fields={[
            {
              ...{ label: "Password now", name: "current", type: "password", required: true },
              autoComplete: "current-password",
            },
            {
              ...{ label: "New password", name: "next", type: "password", required: true },
              autoComplete: "new-password",
              hint: "At least 15 characters of any kind, spaces too. Pasting is fine. Not one that many people have.",
            },
          ]}
        />
      </Section>
      <SecondFactor on={view.second.on} required={view.second.required} />
      <Sessions sessions={view.sessions} />
      {view.due ? null : (
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
      )}
    </>
  );
}
