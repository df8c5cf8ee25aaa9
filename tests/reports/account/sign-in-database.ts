import { holderReach } from "@/lib/access/reach";
import type { Role } from "@/lib/access/role";
import type { Viewer } from "@/lib/access/viewer";
import { addPerson } from "@/lib/reports/people";
import { signIn } from "@/lib/reports/sign-in";
import type { Cookie } from "@/lib/reports/sign-in-door";
import { disconnect } from "@/lib/store/database";
import { freshDatabase } from "../../fresh-database";

export type SignInDatabase = Awaited<ReturnType<typeof signInDatabase>>;
type Who = { email: string; password: string };

/** A database in which people can be added and sign in; each request comes from an address of its own. */
export async function signInDatabase() {
  const { url, drop } = await freshDatabase();
  process.env.DATABASE_URL = url;
  process.env.BETTER_AUTH_URL = "http://localhost:3000";
  process.env.BETTER_AUTH_SECRET = "for-tests-alone-for-tests-alone-1234";
  let count = 0;
  /** Headers of a request of this tool's own page. */
  const from = (session = new Headers()): Headers => {
    const headers = new Headers(session);
    headers.set("origin", "http://localhost:3000");
    count += 1;
    headers.set("x-forwarded-for", `198.51.${100 + Math.floor(count / 250)}.${count % 250}`);
    return headers;
  };
  const carrying = (cookies: readonly Cookie[]): Headers =>
    new Headers({
      cookie: cookies
        .filter(({ attributes }) => attributes.maxAge !== 0)
        .map(({ name, value }) => `${name}=${encodeURIComponent(value)}`)
        .join("; "),
    });
  const person = async (role: Role, password: string) => {
    count += 1;
    const who: Who = { email: `person-${count}@example.org`, password };
    const name = "Some One";
    const given = { ...who, name, role, practice: null, clinicianKey: null };
    const answer = await addPerson(holderReach().people, given);
    if ("wrong" in answer) throw new Error(JSON.stringify(answer.wrong));
    const { id } = answer.added;
    const viewer: Viewer = { userId: id, name, email: who.email, grants: [] };
    return { who, id, viewer };
  };
  const signedIn = async (who: Who): Promise<Headers> => {
    const answer = await signIn(who, from());
    if ("sentence" in answer) throw new Error(answer.sentence);
    return carrying(answer.cookies);
  };
  const end = async (): Promise<void> => {
    await disconnect();
    await drop();
  };
  return { from, carrying, person, signedIn, drop: end };
}
