import { signedIn } from "../page-speed";

export type UsersRun = {
  readonly page: string;
  readonly answers: number;
  readonly p50: number;
  readonly p95: number;
  /** The longest first look of anybody at the page, which is not counted. */
  readonly first: number;
};

/** A person at work: an account and the pages that they go through. */
export type Person = {
  readonly account: { email: string; password: string };
  readonly pages: readonly string[];
};

/** Between two pages a person reads for as long, in seconds: an assumption. */
const reads = { least: 5, most: 15 };

/**
 * So many people at once go through their pages, each so many times, reading in between; milliseconds to the last byte of each
 * answer. The first round warms the server up and is not counted.
 */
export async function usersAtOnce(
  url: string,
  people: readonly Person[],
  rounds: number,
): Promise<UsersRun[]> {
  const taken = new Map<string, number[]>();
  const firsts = new Map<string, number>();
  await Promise.all(
    people.map(async ({ account, pages }, place) => {
      const cookie = await signedIn(url, account);
      for (let round = 0; round <= rounds; round += 1)
        for (const [at, page] of pages.entries()) {
          // Spread without chance, so that a run can be made again.
          const share = ((place * 7 + at * 3 + round * 5) % 10) / 10;
          await new Promise((go) =>
            setTimeout(go, (reads.least + share * (reads.most - reads.least)) * 1000),
          );
          const started = performance.now();
          const asked = () => fetch(url + page, { headers: { cookie } });
          // A connection that the server closed just now is opened anew, as browsers do.
          const answer = await asked().catch(asked);
          await answer.text();
          if (answer.status !== 200) throw new Error(`${page} answered ${answer.status}`);
          const all = taken.get(page) ?? [];
          taken.set(page, all);
          const time = performance.now() - started;
          if (round > 0) all.push(time);
          else firsts.set(page, Math.max(time, firsts.get(page) ?? 0));
        }
    }),
  );
  const everything = [...taken.values()].flat();
  return [...taken, ["all pages", everything] as const].map(([page, all]) => {
    all.sort((a, b) => a - b);
    const at = (share: number) => Math.round(all[Math.ceil(share * all.length) - 1] ?? 0);
    const first = Math.round(firsts.get(page) ?? Math.max(...firsts.values()));
    return { page, answers: all.length, p50: at(0.5), p95: at(0.95), first };
  });
}
