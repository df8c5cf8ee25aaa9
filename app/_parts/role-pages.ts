import type { Role } from "@/lib/access/role";

/** One entry of the head of the page. */
export type RolePage = { readonly path: string; readonly name: string };

const exceptions: RolePage = { path: "/exceptions", name: "Exceptions" };
const safety: RolePage = { path: "/safety", name: "Safety" };
const upkeep: RolePage = { path: "/upkeep", name: "Upkeep" };

/** The protocol is read by everyone whom it concerns. */
const protocol: RolePage = { path: "/protocol", name: "Protocol" };

/** The pages of each role as the head lists them; the first is the role's home. */
export const rolePages: Record<Role, readonly [RolePage, ...RolePage[]]> = {
  "clinical-lead": [
    { path: "/lead", name: "This quarter" },
    { path: "/audits", name: "Audits" },
    exceptions,
    safety,
    upkeep,
    protocol,
  ],
  clinician: [
    { path: "/clinician", name: "My quarter" },
    { path: "/clinician/audits", name: "My audits" },
    exceptions,
    safety,
    protocol,
  ],
  "quality-officer": [{ path: "/quality", name: "Adherence" }, safety, upkeep, protocol],
  "record-keeper": [
    { path: "/records", name: "Records" },
    { path: "/records/waiting", name: "Files that wait" },
    { path: "/records/mappings", name: "Mappings" },
    { path: "/records/held", name: "Held rows" },
    { path: "/records/corrections", name: "Corrections" },
    { path: "/records/coverage", name: "Coverage" },
    { path: "/records/format", name: "Format" },
  ],
  administrator: [
    { path: "/administration", name: "People" },
    { path: "/administration/practices", name: "Practices" },
    { path: "/administration/levels", name: "Levels" },
    { path: "/administration/log", name: "Log" },
    protocol,
  ],
};

/** The pages of several roles, each once, in the order of the roles. */
export function pagesOf(held: readonly Role[]): RolePage[] {
  return [
    ...new Map(held.flatMap((role) => rolePages[role]).map((one) => [one.path, one])).values(),
  ];
}
