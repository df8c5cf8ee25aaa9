import { signOut } from "@/lib/reports/sign-in";

/** The form in the page's head posts here; it works without JavaScript. */
export async function POST(request: Request): Promise<Response> {
  const headers = await signOut(request.headers);
  const answer = new Response(null, { status: 303, headers: { location: "/sign-in" } });
  for (const cookie of headers.getSetCookie()) answer.headers.append("set-cookie", cookie);
  return answer;
}
