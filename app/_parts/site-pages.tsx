"use client";

import { usePathname } from "next/navigation";
import { Link } from "@/app/_parts/link";
import type { RolePage } from "./role-pages";

/** The viewer's pages; the one that is open is marked. */
export function SitePages(props: { pages: readonly RolePage[] }) {
  const here = usePathname();
  const open = props.pages
    .filter((page) => here === page.path || here.startsWith(`${page.path}/`))
    .sort((one, other) => other.path.length - one.path.length)[0];
  return (
    <nav aria-label="Pages">
      <ul className="site-pages">
        {props.pages.map((page) => (
          <li key={page.path}>
            <Link href={page.path} aria-current={page === open ? "page" : undefined}>
              {page.name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
