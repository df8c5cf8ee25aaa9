import { roles } from "@/lib/access/role";
import type { Grant, Viewer } from "@/lib/access/viewer";
import { prisma } from "@/lib/store/database";
import { dueOf } from "@/lib/store/sign-in/due";
import { liveSession } from "@/lib/store/sign-in/live-session";
import { asSigningIn } from "../wall/as-whom";
import { keptClinicianKey } from "./clinician-keys";

/**
 * The person whose session the headers carry; null where there is none or it has ended. Needs no reach: it makes the
 * viewer. Whoever has something to do first is given no role until it is done, so that no door has to ask.
 */
export async function viewerOf(headers: Headers): Promise<Viewer | null> {
  return asSigningIn(async () => {
    const session = await liveSession(headers);
    return session && viewerWith(session.user);
  });
}

/** The person of an account, for what goes on in their name without them; null where the account is gone. */
export async function viewerNumbered(userId: string): Promise<Viewer | null> {
  return asSigningIn(async () => {
    const user = await prisma().user.findFirst({ where: { id: userId } });
    return user && viewerWith(user);
  });
}

async function viewerWith(user: { id: string; name: string; email: string }): Promise<Viewer> {
  const rows = await prisma().grant.findMany({
    where: { userId: user.id },
    orderBy: { id: "asc" },
  });
  const { id, name, email } = user;
  const due = await dueOf(
    id,
    rows.map(({ role }) => role),
  );
  if (due) return { userId: id, name, email, grants: [], due };
  const grants: Grant[] = [];
  for (const { role: text, practice, clinicianKey } of rows) {
    const role = roles.find((one) => one === text);
    // Records that came later may say whose a code is: figures are then kept under the person.
    const key = clinicianKey && (await keptClinicianKey(clinicianKey));
    if (role) grants.push({ role, practice, clinicianKey: key });
  }
  return { userId: id, name, email, grants };
}
