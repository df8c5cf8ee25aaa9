import { expect, test } from "vitest";
import { kept } from "@/lib/reports/kept";

// Worked by hand.
test("an answer is computed once as long as the revision is the same", async () => {
  let computed = 0;
  const ask = (revision: string) =>
    kept(
      "once",
      async () => revision,
      async () => {
        computed += 1;
        return computed;
      },
    );
  expect([await ask("1"), await ask("1"), await ask("2"), await ask("2")]).toEqual([1, 1, 2, 2]);
});

test("what was computed while the records changed is computed again", async () => {
  const revisions = ["1", "2", "2"];
  let computed = 0;
  const answer = await kept(
    "changed",
    async () => revisions.shift() ?? "2",
    async () => {
      computed += 1;
      return computed;
    },
  );
  expect(answer).toBe(2);
});

test("whoever asks the same while it is computed waits for it", async () => {
  let computed = 0;
  const ask = () =>
    kept(
      "at once",
      async () => "1",
      async () => {
        computed += 1;
        await new Promise((go) => setTimeout(go, 20));
        return computed;
      },
    );
  expect(await Promise.all([ask(), ask(), ask()])).toEqual([1, 1, 1]);
});

test("what failed is tried again by whoever asks next", async () => {
  let tries = 0;
  const ask = () =>
    kept(
      "failing",
      async () => "1",
      async () => {
        tries += 1;
        if (tries === 1) throw new Error("once");
        return tries;
      },
    );
  await expect(Promise.all([ask(), ask()])).rejects.toThrow("once");
  expect(await ask()).toBe(2);
});
