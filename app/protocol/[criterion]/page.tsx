import { notFound } from "next/navigation";
import { Link } from "@/app/_parts/link";
import { criterionPage } from "@/lib/reports/protocol/criterion-page";
import { currentViewer } from "@/lib/reports/viewer";
import { criterionAddress } from "@/lib/views/protocol/criterion-address";
import { AnsweringForm } from "../../_parts/answering-form";
import { AskedWrong } from "../../_parts/asked-wrong";
import { fromAddress } from "../../_parts/from-address";
import { PageHead } from "../../_parts/page-head";
import { rightly } from "../../_parts/rightly";
import { Section } from "../../_parts/section";
import { within } from "../../_parts/within";
import { Elsewhere } from "../_page/elsewhere";
import { PracticePicker } from "../_page/practice-picker";
import { Stated } from "../_page/stated";
import { Versions } from "../_page/versions";
import { endCriterionAct } from "../acts";

export const metadata = { title: "A criterion" };

export default async function CriterionPage(props: {
  params: Promise<{ criterion: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const [params, address] = await Promise.all([props.params, props.searchParams]);
  const id = fromAddress(params.criterion);
  const page = await within("/protocol/[criterion]", async () => {
    const viewer = await currentViewer();
    return rightly(async () => ({ found: await criterionPage(viewer, id, address) }));
  });
  if ("wrong" in page)
    return <AskedWrong title="A criterion" wrong={page.wrong} path="/protocol" />;
  const { found } = page;
  if (!found) notFound();
  if ("elsewhere" in found) return <Elsewhere id={id} of={found.elsewhere} />;
  const { practice } = found;
  return (
    <>
      <PageHead
        title={found.title}
        over={
          <>
            <Link href={`/protocol?practice=${encodeURIComponent(practice.code)}`}>Protocol</Link>
            {` · ${practice.name}`}
          </>
        }
        lead={found.statement}
        actions={
          found.mayChange ? (
            <Link className="button" href={criterionAddress(id, practice.code, "/change")}>
              {found.inForce ? "Change" : "Set up and put in force"}
            </Link>
          ) : null
        }
      />
      <PracticePicker
        path={criterionAddress(id, "")}
        practices={found.practices}
        practice={practice.code}
      />
      <p className="finding">{found.standing}</p>
      <Section id="states" title="What it states">
        <Stated page={found} />
      </Section>
      <Section
        id="versions"
        title="Versions"
        note="The one that begins last first. A period is judged by the version in force on each of its days."
      >
        <Versions page={found} />
      </Section>
      {found.mayChange && found.inForce ? (
        <Section id="end" title="Take out of force">
          <AnsweringForm
            act={endCriterionAct}
            button="Take out of force"
            label="Take out of force"
            hidden={{ practice: practice.code, id }}
            fields={[
              {
                label: "From",
                name: "from",
                type: "date",
                required: true,
                defaultValue: found.today,
                hint: "Today or later: its figures up to then stay as they are.",
              },
              {
                label: "Reason",
                name: "reason",
                required: true,
                maxLength: 500,
                hint: "It stands beside the version and is kept.",
              },
            ]}
          />
        </Section>
      ) : null}
    </>
  );
}
