import { redirect } from "next/navigation";
import { viewerOrNobody } from "@/lib/reports/viewer";
import { PageHead } from "../_parts/page-head";
import { SignInForm } from "./sign-in-form";
import { wantedAddress } from "./wanted-address";

export const metadata = { title: "Sign in" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function SignInPage(props: { searchParams: Address }) {
  const to = wantedAddress(await props.searchParams);
  if (await viewerOrNobody()) redirect(to);
  return (
    <>
      <PageHead
        title="Sign in"
        lead="Canal Audit shows what the records of motor-driven root-canal treatment say about it."
      />
      <SignInForm to={to} />
    </>
  );
}
