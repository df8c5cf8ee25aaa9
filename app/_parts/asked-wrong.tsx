import { Link } from "@/app/_parts/link";
import { NothingToShow } from "./nothing-to-show";
import { PageHead } from "./page-head";

/** What stands in place of a page whose address asks for what there is not. */
export function AskedWrong(props: {
  title: string;
  wrong: string;
  path: string;
  /** Where the link leads, in words. */
  pathWords?: string;
}) {
  return (
    <>
      <PageHead title={props.title} />
      <NothingToShow what={props.wrong}>
        <Link href={props.path}>{props.pathWords ?? "Open the page as it usually opens"}</Link>
      </NothingToShow>
    </>
  );
}
