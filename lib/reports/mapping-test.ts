import type { RecordsReach } from "@/lib/access/reach";
import type { Mapping } from "@/lib/intake/mapping/mapping";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { pathOfWaiting, saveTest, testOfFile, type WaitingFile } from "@/lib/store/waiting";
import type { TestView } from "@/lib/views/mapping/test-view";
import { testWords } from "@/lib/views/mapping/test-words";
import { count } from "@/lib/views/quantity";
import { digestOf } from "./mapping-draft";
import { contextOf } from "./mapping-preview";
import { rowsExpected } from "./rows-expected";
import { type TableCounts, tableCounts } from "./table-counts";

/** How far a test is; it lies beside the file, so that any process answers for the one that reads. */
type Test = {
  readonly digest: string;
  /** Milliseconds; one that is not done and was silent for long has lost its process. */
  readonly at: number;
  readonly read: number;
  readonly expected?: number;
  readonly counts?: readonly TableCounts[];
  readonly failed?: string;
};
const silent = 15_000;
const toldEvery = 500;

/** Reads the whole file by a draft and counts what would become of its rows; it goes on by itself and nothing is stored. */
export async function beginTest(
  reach: RecordsReach,
  file: WaitingFile,
  draft: Mapping,
): Promise<TestView> {
  const digest = digestOf(draft);
  const before = testIn(file.test, digest);
  if (before && !before.failed) return testOf(file, draft);
  const begun: Test = { digest, at: Date.now(), read: 0 };
  await saveTest(file, begun);
  run(reach, file, draft, begun).catch(async (error: unknown) => {
    const failed =
      error instanceof UnreadableFile ? error.message : "The test failed; see the tool's log.";
    if (!(error instanceof UnreadableFile)) console.error(error);
    await saveTest(file, { ...begun, at: Date.now(), failed }).catch(() => undefined);
  });
  return testOf({ test: begun }, draft);
}

/** How far the test of this very draft is, or what it found. */
export function testOf(file: Pick<WaitingFile, "test">, draft: Mapping): TestView {
  const test = testIn(file.test, digestOf(draft));
  if (!test) return { state: "none" };
  if (test.failed) return { state: "failed", says: test.failed };
  if (test.counts) return testWords(test.counts);
  const { read, expected } = test;
  return {
    state: "running",
    says: `${count(read)} rows read${expected ? ` of some ${count(expected)}` : ""}`,
    share: expected ? Math.min(1, read / expected) : null,
  };
}

/** Was this very draft tested on the whole file. */
export function isTested(file: Pick<WaitingFile, "test">, draft: Mapping): boolean {
  return testOf(file, draft).state === "done";
}

/** The test of this digest; undefined where there is none, or its process is gone. */
function testIn(kept: unknown, digest: string): Test | undefined {
  const test = kept as Test | null;
  if (test?.digest !== digest) return undefined;
  const isOver = test.counts !== undefined || test.failed !== undefined;
  return isOver || Date.now() - test.at < silent ? test : undefined;
}

async function run(
  reach: RecordsReach,
  file: WaitingFile,
  draft: Mapping,
  begun: Test,
): Promise<void> {
  const path = pathOfWaiting(file);
  const context = await contextOf(reach, file, draft);
  const expected = await rowsExpected(path, draft);
  const all: TableCounts[] = [];
  let read = 0;
  let told = Date.now();
  for await (const sheet of readMapped(path, file.name, draft, context)) {
    const counts = tableCounts(sheet.table);
    for await (const row of sheet.rows) {
      read += 1;
      counts.add(row);
      if (Date.now() - told < toldEvery) continue;
      told = Date.now();
      // Another draft is tested by now, or the file is gone: this one is of no use any more.
      if (!testIn(await testOfFile(file), begun.digest)) return;
      await saveTest(file, { ...begun, at: told, read, expected });
    }
    all.push(counts.told());
  }
  if (!testIn(await testOfFile(file), begun.digest)) return;
  await saveTest(file, { ...begun, at: Date.now(), read, expected, counts: all });
}
