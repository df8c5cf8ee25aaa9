import { prisma } from "@/lib/store/database";
import { idleSeconds, noticedEvery } from "./session-limits";
import { signInService } from "./sign-in";

/**
 * The session that the headers carry; null where there is none, it was ended, its day is over or nobody used it for
 * too long. How long it may live at all is the sign-in's to say and never renewed; when it was used last is kept here.
 */
export async function liveSession(headers: Headers) {
  const found = await signInService().api.getSession({ headers });
  if (!found) return null;
  const { id, updatedAt } = found.session;
  const unused = (Date.now() - updatedAt.getTime()) / 1000;
  if (unused > idleSeconds) {
    await prisma().signIn.deleteMany({ where: { id } });
    return null;
  }
  if (unused > noticedEvery) {
    await prisma().signIn.updateMany({ where: { id }, data: { updatedAt: new Date() } });
  }
  return found;
}
