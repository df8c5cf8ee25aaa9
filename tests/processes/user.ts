/** What became of one request: a status, or the line was lost. */
export type Asked = {
  readonly path: string;
  readonly at: number;
  readonly status: number | "lost";
};

/** Somebody with a browser, who is signed in. */
export type User = Awaited<ReturnType<typeof signedIn>>;

let count = 0;

/** Signs in at the door, as a form does. @param notes every request of theirs is noted here */
export async function signedIn(
  address: string,
  who: { readonly email: string; readonly password: string },
  notes: Asked[],
) {
  count += 1;
  const from = { origin: address, "x-forwarded-for": `198.51.100.${count % 250}` };
  const ask = async (path: string, init: RequestInit = {}): Promise<Response | null> => {
    const at = performance.now();
    try {
      const headers = { ...from, ...(init.headers as Record<string, string>) };
      const answer = await fetch(address + path, { redirect: "manual", ...init, headers });
      const text = await answer.text();
      notes.push({ path, at, status: answer.status });
      return new Response([204, 303, 307].includes(answer.status) ? null : text, answer);
    } catch {
      notes.push({ path, at, status: "lost" });
      return null;
    }
  };
  const answer = await ask("/api/auth/sign-in/email", {
    method: "POST",
    headers: { "content-type": "application/json", cookie: "" },
    body: JSON.stringify(who),
  });
  const cookie = (answer?.headers.getSetCookie() ?? []).map((one) => one.split(";")[0]).join("; ");
  return {
    isIn: answer?.status === 200 && cookie !== "",
    ask: (path: string, init: RequestInit = {}) =>
      ask(path, { ...init, headers: { ...(init.headers as Record<string, string>), cookie } }),
  };
}
