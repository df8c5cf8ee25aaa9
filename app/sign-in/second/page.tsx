import { redirect } from "next/navigation";
import { viewerOrNobody } from "@/lib/reports/viewer";
import { PageHead } from "../../_parts/page-head";
import { wantedAddress } from "../wanted-address";
import { SecondForm } from "./second-form";

export const metadata = { title: "Second step" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function SecondPage(props: { searchParams: Address }) {
  const to = wantedAddress(await props.searchParams);
  if (await viewerOrNobody()) redirect(to);
  return (
    <>
      <PageHead
        title="Second step"
        lead="The password was the first; the code of now is the second."
      />
      <SecondForm to={to} />
    </>
  );
}
