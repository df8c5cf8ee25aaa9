import type { Role } from "@/lib/access/role";

/** One entry of the head of the page. */
export type RolePage = { readonly path: string; readonly name: string };

/** The pages of each role as the head lists them; the first is the role's home. */
export const rolePages: Record<Role, readonly [RolePage, ...RolePage[]]> = {
  "clinical-lead": [{ path: "/lead", name: "This quarter" }],
  clinician: [{ path: "/clinician", name: "My quarter" }],
  "quality-officer": [{ path: "/quality", name: "Adherence" }],
  "record-keeper": [
    { path: "/records", name: "Records" },
    { path: "/records/held", name: "Held rows" },
    { path: "/records/format", name: "Format" },
  ],
  administrator: [
    { path: "/administration", name: "People" },
    { path: "/administration/practices", name: "Practices" },
    { path: "/administration/levels", name: "Levels" },
  ],
};
