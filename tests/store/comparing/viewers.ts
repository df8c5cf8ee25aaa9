import type { Role } from "@/lib/access/role";
import type { Viewer } from "@/lib/access/viewer";

/** Someone with one role, in one practice or in all. */
export function viewerAs(
  role: Role,
  practice: string | null = null,
  clinicianKey: string | null = null,
): Viewer {
  const grants = [{ role, practice, clinicianKey }];
  return { userId: role, name: `A ${role}`, email: `${role}@example.org`, grants };
}
