import type { Mapping } from "@/lib/intake/mapping/mapping";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { readSheets } from "@/lib/intake/read-sheets";
import { recognise } from "@/lib/intake/recognise/recognise";
import type { Sheet } from "@/lib/intake/sheet";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { context } from "./read-text";

/** What came of a file: the sentence that refuses it, or how many of its rows are good and how many held, with the first reason. */
export type CameOf = string | { good: number; held: number; reason?: string };

/** Reads a file as one of the record format, and as one of another system that makes a canal of each row. */
export async function readBothWays(
  path: string,
  name: string,
): Promise<{ records: CameOf; foreign: CameOf }> {
  return {
    records: await cameOf(() => readSheets(path, name, context)),
    foreign: await cameOf(async function* () {
      const { layout, columns } = await recognise(path, name);
      yield* readMapped(path, name, canalOfEach(layout, columns[0]?.name ?? ""), context);
    }),
  };
}

/** A mapping that makes a canal of each row of the file. */
export function canalOfEach(file: Mapping["file"], column: string): Mapping {
  return {
    ...{ format: "canal-audit-mapping-1", name: "each", file, columns: [column] },
    tables: [
      {
        table: "canals",
        fields: {
          session_id: { columns: [column] },
          canal: { always: "MB" },
          preparation: { always: "hand" },
        },
      },
    ],
  };
}

/** Counts what comes; anything thrown but an UnreadableFile is thrown on. */
async function cameOf(sheets: () => AsyncIterable<Sheet>): Promise<CameOf> {
  let good = 0;
  let held = 0;
  let reason: string | undefined;
  try {
    for await (const { rows } of sheets())
      for await (const row of rows) {
        if (row.verdict === "good") good += 1;
        else {
          held += 1;
          reason ??= row.reasons[0]?.sentence;
        }
      }
    return { good, held, ...(reason ? { reason } : {}) };
  } catch (trouble) {
    if (trouble instanceof UnreadableFile) return trouble.message;
    throw trouble;
  }
}
