import { notFound } from "next/navigation";
import { fromAddress } from "@/app/_parts/from-address";
import { within } from "@/app/_parts/within";
import { explanation } from "@/lib/reports/explanation";
import { currentViewer } from "@/lib/reports/viewer";
import { Explained } from "../../../../_page/explained";

export const metadata = { title: "Why it counts so" };

/** Why a unit of a visit counts as it does: ?canal=MB1&seq=2 where the visit has several. */
export default async function VisitExplanation(props: {
  params: Promise<{ criterion: string; practice: string; session: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const [{ criterion, practice, session }, { canal, seq }] = await Promise.all([
    props.params,
    props.searchParams,
  ]);
  const view = await within(
    "/explanations/[criterion]/[practice]/visit/[session]",
    async () =>
      explanation(await currentViewer(), {
        criterion: fromAddress(criterion),
        practice: fromAddress(practice),
        sessionId: fromAddress(session),
        ...(typeof canal === "string" ? { canal } : {}),
        ...(typeof seq === "string" ? { seq } : {}),
      }),
    {
      criterion: fromAddress(criterion),
      practice: fromAddress(practice),
      session: fromAddress(session),
    },
  );
  if (!view) notFound();
  return <Explained of={view} />;
}
