import { holderReach } from "@/lib/access/reach";
import { backUp as written } from "@/lib/reports/back-up";
import { noteCommand } from "@/lib/reports/log/by-command";
import { withHome } from "@/lib/reports/with-home";
import { callersPath } from "./import-files";
import { readOptions } from "./read-options";
import { CannotDo, type Done } from "./verb";

/** `backup FILE [--figures] [--with-secrets]`: all that the database holds at one moment, in one archive. */
export async function backUp(args: string[]): Promise<Done> {
  const { positionals, flags } = readOptions(args, [], {
    words: true,
    flags: ["figures", "with-secrets"],
  });
  const [path, ...more] = positionals;
  if (!path || more.length > 0) throw new CannotDo("Name one file to write: backup FILE.");
  const file = callersPath(path);
  const figures = flags.has("figures");
  const how = { figures, secrets: flags.has("with-secrets") };
  // Figures are of today's tables; without them an older database is backed up as it is.
  const { manifest, sha256 } = await withHome(
    async (home) => {
      const done = await written(home, holderReach().figures, file, how);
      // An older database, which is backed up as it is, has no log.
      await noteCommand("canal-audit backup", {}).catch(() => undefined);
      return done;
    },
    undefined,
    !figures,
  );
  const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
  const lines = [
    `Written to ${file}: ${rows} rows of ${manifest.tables.length} tables, SHA-256 ${sha256}.`,
    how.secrets
      ? "It holds the keys and the files that wait: whoever has it can recognise patients. Keep it as you keep them."
      : `The patient key (fingerprint ${manifest.patientKey}) is not in it: keep a copy of the home's patient-key apart, without which no later record finds its patient.`,
    ...(manifest.waitingLeft > 0
      ? [
          `${manifest.waitingLeft} files that wait for a mapping are not in it, as they name patients; --with-secrets takes them along.`,
        ]
      : []),
    ...(manifest.figures
      ? [`All figures of ${manifest.figures.quarters.length} quarters: ${manifest.figures.sha256}.`]
      : []),
  ];
  return { text: lines.join("\n"), json: { file, sha256, manifest } };
}
