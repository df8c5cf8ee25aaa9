import { notFound } from "next/navigation";
import { fromAddress } from "@/app/_parts/from-address";
import { within } from "@/app/_parts/within";
import { explanation } from "@/lib/reports/explanation";
import { currentViewer } from "@/lib/reports/viewer";
import { Explained } from "../../../../../_page/explained";

export const metadata = { title: "Why it counts so" };

/** Why a chair's day counts as it does. */
export default async function ChairDayExplanation(props: {
  params: Promise<{ criterion: string; practice: string; chair: string; day: string }>;
}) {
  const { criterion, practice, chair, day } = await props.params;
  const view = await within(
    "/explanations/[criterion]/[practice]/chair/[chair]/[day]",
    async () =>
      explanation(await currentViewer(), {
        criterion: fromAddress(criterion),
        practice: fromAddress(practice),
        chair: fromAddress(chair),
        day: fromAddress(day),
      }),
    {
      criterion: fromAddress(criterion),
      practice: fromAddress(practice),
      chair: fromAddress(chair),
      day,
    },
  );
  if (!view) notFound();
  return <Explained of={view} />;
}
