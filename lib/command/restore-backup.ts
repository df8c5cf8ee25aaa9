import { holderReach } from "@/lib/access/reach";
import { noteCommand } from "@/lib/reports/log/by-command";
import { type Restored, restoreBackup as restored } from "@/lib/reports/restore-backup";
import { withHome } from "@/lib/reports/with-home";
import { callersPath } from "./import-files";
import { readOptions } from "./read-options";
import { CannotDo, type Done } from "./verb";

/** `restore FILE [--replace]`: into an empty home, or in place of what is there; all of it or nothing. */
export async function restoreBackup(args: string[]): Promise<Done> {
  const { positionals, flags } = readOptions(args, [], { words: true, flags: ["replace"] });
  const [path, ...more] = positionals;
  if (!path || more.length > 0) throw new CannotDo("Name one file to restore: restore FILE.");
  const file = callersPath(path);
  const done = await withHome(
    async (home) => {
      const restoredNow = await restored(home, holderReach().figures, file, flags.has("replace"));
      await noteCommand("canal-audit restore", {});
      return restoredNow;
    },
    undefined,
    true,
  );
  if (done.figures === "different")
    throw new CannotDo(
      "Every row came back as it was, but figures computed from them are not those of the backup: keep the backup and ask whoever looks after this software.",
    );
  return { text: inWords(file, done), json: asDocument(file, done) };
}

const keys: Record<Restored["patientKey"], string> = {
  same: "The patient key of this home is the right one.",
  "put back": "The patient key came back with it.",
  another:
    "The patient key of this home is another than that of these records: put the file patient-key back from your copy; until then nothing can be brought in.",
};

function inWords(file: string, { manifest, upgraded, patientKey, figures }: Restored): string {
  const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
  return [
    `Restored ${file} of ${manifest.writtenAt}: ${rows} rows of ${manifest.tables.length} tables, each counted and hashed again.`,
    ...(upgraded.length > 0 ? [`Brought up to date by ${upgraded.length} migrations.`] : []),
    keys[patientKey],
    ...(manifest.waitingLeft > 0
      ? [`${manifest.waitingLeft} files that waited were not in it: bring them in again.`]
      : []),
    ...(figures === "same" ? ["All figures are those of the backup."] : []),
    ...(figures === "of another version"
      ? [
          `Figures are not those of the backup, which version ${manifest.software} computed: see what has changed since.`,
        ]
      : []),
  ].join("\n");
}

function asDocument(file: string, { manifest, ...done }: Restored) {
  return { file, ...done, manifest };
}
