import Link from "next/link";
import { AskedWrongly } from "@/lib/reports/asked-period";
import { NothingToShow } from "./nothing-to-show";
import { PageHead } from "./page-head";

/** Reads what a page shows; an address that asks for what there is not becomes the sentence that says so. */
export async function rightly<View>(read: () => Promise<View>): Promise<View | { wrong: string }> {
  try {
    return await read();
  } catch (error) {
    if (error instanceof AskedWrongly) return { wrong: error.message };
    throw error;
  }
}

/** What stands in place of such a page. */
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
