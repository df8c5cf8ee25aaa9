/** Answers kept of a process, all of one revision; the oldest goes when there are too many. */
const most = 300;
const answers = new Map<string, unknown>();
let keptOf = "";
/** What is being computed: whoever asks the same meanwhile waits for it. */
const running = new Map<string, Promise<unknown>>();

/**
 * What `compute` answers, kept for as long as the records have the same revision. What was computed while the
 * revision changed saw some of the records before and some after: it is computed again.
 */
export async function kept<Answer>(
  question: string,
  revision: () => Promise<string>,
  compute: () => Promise<Answer>,
): Promise<Answer> {
  for (let before = await revision(); ; ) {
    const state = `${process.env.DATABASE_URL} ${before}`;
    const key = `${state} ${question}`;
    if (answers.has(key)) return answers.get(key) as Answer;
    const answer = (await (running.get(key) ?? begun(key, compute))) as Answer;
    const after = await revision();
    if (after === before) {
      // What was said of the records as they were before is asked for no more.
      if (state !== keptOf) answers.clear();
      keptOf = state;
      answers.set(key, answer);
      const [oldest] = answers.keys();
      if (answers.size > most && oldest !== undefined) answers.delete(oldest);
      return answer;
    }
    before = after;
  }
}

function begun(key: string, compute: () => Promise<unknown>): Promise<unknown> {
  const answer = compute().finally(() => running.delete(key));
  running.set(key, answer);
  return answer;
}
