import { holderReach } from "@/lib/access/reach";
import { FolderInUse, exportRecords as written } from "@/lib/reports/export-records";
import { byCommand } from "@/lib/reports/log/by-command";
import { practiceKnown } from "@/lib/reports/practices";
import { callersPath } from "./import-files";
import { readOptions } from "./read-options";
import { CannotDo, type Done } from "./verb";

/** `export records --out DIR [--practice P1]`: everything as record files, which import elsewhere to the same figures. */
export async function exportRecords(args: string[]): Promise<Done> {
  const { values } = readOptions(args, ["out", "practice"], { words: true });
  if (!values.out) throw new CannotDo("Say where to write them: --out FOLDER.");
  const folder = callersPath(values.out);
  return byCommand("canal-audit export records", { practice: values.practice }, async () => {
    const { records } = holderReach();
    if (values.practice && !(await practiceKnown(records, values.practice)))
      throw new CannotDo(`No practice has the code ${values.practice}.`);
    try {
      const folders = await written(records, folder, values.practice);
      return {
        text: [
          `Written to ${folder}; READ-ME.txt there says how they are brought in elsewhere.`,
          ...folders.map((one) => `  ${one.folder}: ${one.practices.join(", ")} (${one.zone})`),
        ].join("\n"),
        json: { folder, folders },
      };
    } catch (trouble) {
      throw trouble instanceof FolderInUse ? new CannotDo(trouble.message) : trouble;
    }
  });
}
