import { roles } from "@/lib/access/role";
import type { Grant, Viewer } from "@/lib/access/viewer";
import { prisma } from "@/lib/store/database";
import { signInService } from "@/lib/store/sign-in/sign-in";
import { keptClinicianKey } from "./clinician-keys";

/** The person whose session the headers carry; null where there is none or it has ended. Needs no reach: it makes the viewer. */
export async function viewerOf(headers: Headers): Promise<Viewer | null> {
  const session = await signInService().api.getSession({ headers });
  if (!session) return null;
  const rows = await prisma().grant.findMany({
    where: { userId: session.user.id },
    orderBy: { id: "asc" },
  });
  const grants: Grant[] = [];
  for (const { role: text, practice, clinicianKey } of rows) {
    const role = roles.find((one) => one === text);
    // Records that came later may say whose a code is: figures are then kept under the person.
    const key = clinicianKey && (await keptClinicianKey(clinicianKey));
    if (role) grants.push({ role, practice, clinicianKey: key });
  }
  const { id, name, email } = session.user;
  return { userId: id, name, email, grants };
}
