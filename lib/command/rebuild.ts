import { holderReach } from "@/lib/access/reach";
import { keepFigures } from "@/lib/reports/keep-figures";
import { byCommand } from "@/lib/reports/log/by-command";
import { rebuildFacts } from "@/lib/reports/rebuild-facts";
import { readOptions } from "./read-options";
import type { Done } from "./verb";

/** `rebuild`: everything that is derived from the records, anew. */
export async function rebuild(args: string[], quiet: boolean): Promise<Done> {
  readOptions(args, []);
  const { records, figures } = holderReach();
  return byCommand("canal-audit rebuild", {}, async () => {
    const visits = await rebuildFacts(records);
    await keepFigures(figures, quiet ? undefined : keepProgress(process.stderr));
    return {
      text: `Derived anew from the records of ${visits} visits, and every quarter counted.`,
      json: { visits },
    };
  });
}

/** A line a quarter. */
export function keepProgress(stream: NodeJS.WriteStream) {
  return (name: string, done: number, of: number) =>
    void stream.write(`counting ${name} (${done + 1} of ${of} quarters)\n`);
}
