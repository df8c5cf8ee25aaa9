import { redirect } from "next/navigation";
import { roles } from "@/lib/access/role";
import { currentViewer } from "@/lib/reports/viewer";
import { NothingToShow } from "./_parts/nothing-to-show";
import { PageHead } from "./_parts/page-head";
import { rolePages } from "./_parts/role-pages";

/** Leads to the home of the viewer's first role. */
export default async function Home() {
  const viewer = await currentViewer();
  const first = roles.find((role) => viewer.grants.some((grant) => grant.role === role));
  if (first) redirect(rolePages[first][0].path);
  return (
    <>
      <PageHead title={`Good day, ${viewer.name}`} />
      <NothingToShow what="You have no role yet, so there is nothing you may see.">
        <p>Ask the administrator to give you one; then load this page again.</p>
      </NothingToShow>
    </>
  );
}
