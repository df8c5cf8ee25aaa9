import Link from "next/link";
import { NothingToShow } from "./nothing-to-show";
import { PageHead } from "./page-head";

/** What stands in place of a page whose address asks for what there is not. */
export function AskedWrong(props: { title: string; wrong: string; path: string }) {
  return (
    <>
      <PageHead title={props.title} />
      <NothingToShow what={props.wrong}>
        <Link href={props.path}>Open the page without it</Link>
      </NothingToShow>
    </>
  );
}
