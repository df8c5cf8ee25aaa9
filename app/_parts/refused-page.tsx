import { Link } from "@/app/_parts/link";
import { PageHead } from "./page-head";

/** What stands in place of a page that the viewer may not see. */
export function RefusedPage(props: { sentence: string }) {
  return (
    <>
      <PageHead over="Refused" title="Not open to you" lead={props.sentence} />
      <p>
        What you may see follows from your roles, which an administrator gives.{" "}
        <Link href="/">Go to your own pages</Link>
      </p>
    </>
  );
}
