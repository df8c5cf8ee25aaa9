import { stat, writeFile } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { holderReach, narrowed } from "@/lib/access/reach";
import { exportAdherence, mayNotLeave } from "@/lib/reports/adherence-export";
import { byCommand } from "@/lib/reports/log/by-command";
import { practiceKnown } from "@/lib/reports/practices";
import { exportFormat, exportFormatOf, exportFormats } from "@/lib/views/export-format";
import { periodNamed } from "./period-named";
import { readOptions } from "./read-options";
import { CannotDo, type Done } from "./verb";

/** `export adherence --period 2026-Q3 --out FILE [--practice P1] [--format csv]`; the path is the caller's, a file that is there is replaced and that is said. */
export async function exportReport(args: string[]): Promise<Done> {
  const { values, positionals } = readOptions(args, ["period", "out", "practice", "format"], {
    words: true,
  });
  if (positionals.length !== 1 || positionals[0] !== "adherence")
    throw new CannotDo("Say what to export: adherence, or records.");
  if (!values.out) throw new CannotDo("Say where to write it: --out FILE.");
  const period = periodNamed(values.period);
  const wrong = mayNotLeave(period);
  if (wrong) throw new CannotDo(wrong);
  const format = values.format
    ? exportFormat(values.format)
    : (exportFormatOf(values.out) ?? "csv");
  if (!format)
    throw new CannotDo(
      `The report is not to be had as ${values.format}; say --format ${Object.keys(exportFormats).join(" or ")}.`,
    );
  const path = resolve(process.env.INIT_CWD ?? process.cwd(), values.out);
  const there = await stat(path).catch(() => null);
  if (!(await stat(dirname(path)).catch(() => null))?.isDirectory())
    throw new CannotDo(`There is no folder ${dirname(path)}.`);
  if (there?.isDirectory()) throw new CannotDo(`${values.out} is a folder; name a file in it.`);
  return byCommand(
    "canal-audit export adherence",
    { period: period.name, practice: values.practice, format },
    async () => {
      const { records, figures } = holderReach();
      if (values.practice && !(await practiceKnown(records, values.practice))) {
        throw new CannotDo(`No practice has the code ${values.practice}.`);
      }
      const { bytes, sha256, fingerprint, report } = await exportAdherence(
        narrowed(figures, values.practice),
        period,
        format,
      );
      await writeFile(path, bytes).catch((trouble: Error) => {
        throw new CannotDo(`${values.out} could not be written: ${trouble.message}`);
      });
      const replaced = there !== null;
      return {
        text: [
          `Adherence, ${report.period.words}, ${report.scope}: written to ${path}${replaced ? ", in place of the file that was there" : ""}.`,
          `SHA-256 ${sha256}`,
          `Fingerprint of the report ${fingerprint}`,
        ].join("\n"),
        json: {
          file: path,
          replaced,
          period: report.period.name,
          scope: report.scope,
          dataCutOff: report.cutOff,
          software: report.software,
          sha256,
          fingerprint,
        },
      };
    },
  );
}
