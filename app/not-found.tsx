import { Link } from "@/app/_parts/link";
import { PageHead } from "./_parts/page-head";

export const metadata = { title: "Not found" };

export default function NotFound() {
  return (
    <>
      <PageHead
        over="Not found"
        title="There is nothing at this address"
        lead="The address may be mistyped, or what it named was undone or renamed."
      />
      <p>
        <Link href="/">Go to your own pages</Link>
      </p>
    </>
  );
}
