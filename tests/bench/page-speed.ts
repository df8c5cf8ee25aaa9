export type PageRun = { page: string; p50: number; p95: number; worst: number };

/** Signs in and asks for each page so many times, one after the other; milliseconds to the last byte of the server's answer. */
export async function pageSpeed(
  url: string,
  account: { email: string; password: string },
  pages: readonly string[],
  times: number,
): Promise<PageRun[]> {
  const cookie = await signedIn(url, account);
  const runs: PageRun[] = [];
  for (const page of pages) {
    const taken: number[] = [];
    for (let time = 0; time < times + 3; time += 1) {
      const started = performance.now();
      const answer = await fetch(url + page, { headers: { cookie } });
      await answer.text();
      if (answer.status !== 200) throw new Error(`${page} answered ${answer.status}`);
      // The first three warm the server up.
      if (time >= 3) taken.push(performance.now() - started);
    }
    taken.sort((a, b) => a - b);
    const at = (share: number) => Math.round(taken[Math.ceil(share * taken.length) - 1] ?? 0);
    runs.push({ page, p50: at(0.5), p95: at(0.95), worst: at(1) });
  }
  return runs;
}

export async function signedIn(
  url: string,
  account: { email: string; password: string },
): Promise<string> {
  const answer = await fetch(`${url}/api/auth/sign-in/email`, {
    method: "POST",
    headers: { "content-type": "application/json", origin: url },
    body: JSON.stringify(account),
  });
  if (!answer.ok) throw new Error(`signing in answered ${answer.status}`);
  return answer.headers
    .getSetCookie()
    .map((cookie) => cookie.split(";")[0])
    .join("; ");
}
