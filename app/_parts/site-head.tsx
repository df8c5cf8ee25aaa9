import { Link } from "@/app/_parts/link";
import { roles } from "@/lib/access/role";
import type { Viewer } from "@/lib/access/viewer";
import { pagesOf } from "./role-pages";
import { SitePages } from "./site-pages";

/** The head of every page: the tool's name, the viewer's pages in the order of the roles, who is signed in. */
export function SiteHead(props: { viewer: Viewer | null }) {
  const { viewer } = props;
  const held = roles.filter((role) => viewer?.grants.some((grant) => grant.role === role));
  return (
    <>
      <a className="skip" href="#content">
        Skip to the content
      </a>
      <header className="site-head">
        <Link className="site-name" href="/">
          Canal Audit
        </Link>
        {held.length > 0 ? <SitePages pages={pagesOf(held)} /> : null}
        {viewer ? (
          <form className="site-person" action="/sign-out" method="post">
            <Link href="/account">{viewer.name}</Link>
            <button className="plain" type="submit">
              Sign out
            </button>
          </form>
        ) : null}
      </header>
    </>
  );
}
