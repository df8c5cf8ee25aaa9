import type { RecordsReach } from "@/lib/access/reach";
import type { Mapping } from "@/lib/intake/mapping/mapping";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { pathOfWaiting, type WaitingFile } from "@/lib/store/waiting";
import type { TestView } from "@/lib/views/mapping/test-view";
import { testWords } from "@/lib/views/mapping/test-words";
import { count } from "@/lib/views/quantity";
import { digestOf } from "./mapping-draft";
import { contextOf } from "./mapping-preview";
import { rowsExpected } from "./rows-expected";
import { type TableCounts, tableCounts } from "./table-counts";

type Test = {
  readonly digest: string;
  read: number;
  expected: number | undefined;
  over: boolean;
  counts?: readonly TableCounts[];
  failed?: string;
};

// Next loads a page's and a route's modules apart from each other, so what runs hangs on globalThis.
const kept = globalThis as { canalAuditTests?: Map<string, Test> };

/** Reads the whole file by a draft and counts what would become of its rows; it goes on by itself and nothing is stored. */
export function beginTest(reach: RecordsReach, file: WaitingFile, draft: Mapping): void {
  const digest = digestOf(draft);
  const before = tests().get(file.kept);
  if (before?.digest === digest && !before.failed) return;
  if (before) before.over = true;
  const test: Test = { digest, read: 0, expected: undefined, over: false };
  tests().set(file.kept, test);
  run(reach, file, draft, test).catch((error: unknown) => {
    test.failed =
      error instanceof UnreadableFile ? error.message : "The test failed; see the tool's log.";
    if (!(error instanceof UnreadableFile)) console.error(error);
  });
}

/** How far the test of this very draft is, or what it found. */
export function testOf(file: Pick<WaitingFile, "kept">, draft: Mapping): TestView {
  const test = tests().get(file.kept);
  if (!test || test.digest !== digestOf(draft)) return { state: "none" };
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
export function isTested(file: Pick<WaitingFile, "kept">, draft: Mapping): boolean {
  return testOf(file, draft).state === "done";
}

async function run(
  reach: RecordsReach,
  file: WaitingFile,
  draft: Mapping,
  test: Test,
): Promise<void> {
  const path = pathOfWaiting(file);
  const context = await contextOf(reach, file, draft);
  test.expected = await rowsExpected(path, draft);
  const all: TableCounts[] = [];
  for await (const sheet of readMapped(path, file.name, draft, context)) {
    const counts = tableCounts(sheet.table);
    for await (const row of sheet.rows) {
      if (test.over) return;
      test.read += 1;
      counts.add(row);
    }
    all.push(counts.told());
  }
  test.counts = all;
}

function tests(): Map<string, Test> {
  kept.canalAuditTests ??= new Map();
  return kept.canalAuditTests;
}
