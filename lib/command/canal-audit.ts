import { leaveOnSignal } from "./start/leave-on-signal";
import { readyClient } from "./start/ready-client";
import { CannotDo, type Done } from "./verb";

const usage = `canal-audit <verb>
  import <files or folders…> [--zone Europe/London] [--mapping NAME|mapping.json]…
                                                         bring records in; files of other systems by a mapping
  watch <folder> [--zone …] [--mapping …]… [--every 5] [--once]
                                                         take files as they are finished writing, once each
  figures --period 2026-Q3 [--practice P1] [--clinician C01]
  export records --out FOLDER [--practice P1]            everything, as record files
  export adherence --period 2026-Q3 --out FILE [--practice P1] [--format csv|xlsx|json|fhir|pdf]
  verify AUDIT                                           a signed audit against its fingerprint and today's records
  prepare                                                what schedules ask for, of the quarter that ended last
  rebuild                                                what is derived from the records, and every quarter's counts, anew
  backup FILE [--figures] [--with-secrets]               the whole database of one moment, and with secrets the keys
  restore FILE [--replace]                               into an empty home, or in place of what is there
  people add --role administrator --email … --name … [--practice P1] [--clinician P1/C01]
  people list
  people data --email …                                  what is kept about a person, as one JSON document
  people leave --email …                                 the account and the name go, figures stay under the code
  retention --show | --set records=120 --set notes=never | --run
                                                         months that records, notes, log and prepared files are kept
  patients rotate-key                                    a new key wraps every patient's pseudonym
  log [--from 2026-07-03] [--person EMAIL]               who saw, changed, signed and took out what, the newest first
  log --check [--head LINE:HASH]                         checks every line and names the first break
  people second-factor required|not-yet|take --email …   of clinical leads and administrators
With --json the answer is one JSON document. The home is CANAL_AUDIT_HOME, or .home of the project.`;

type Verb = (args: string[], json: boolean) => Promise<Done>;

/** Loaded when they are asked for: they need the database's client, which a fresh checkout has yet to make. */
const verbs = new Map<string, () => Promise<Verb>>([
  ["import", async () => (await import("./import-files")).importFiles],
  ["watch", async () => (await import("./watch-folder")).watchFolder],
  ["figures", async () => (await import("./show-figures")).showFigures],
  [
    "export",
    async () => {
      const { exportRecords } = await import("./export-records");
      const { exportReport } = await import("./export-report");
      return (args) => (args[0] === "records" ? exportRecords(args) : exportReport(args));
    },
  ],
  ["verify", async () => (await import("./verify")).verify],
  ["rebuild", async () => (await import("./rebuild")).rebuild],
  ["prepare", async () => (await import("./prepare")).prepare],
  ["backup", async () => (await import("./back-up")).backUp],
  ["restore", async () => (await import("./restore-backup")).restoreBackup],
  ["patients", async () => (await import("./patients")).patients],
  ["retention", async () => (await import("./retention")).retention],
  ["log", async () => (await import("./show-log")).showLog],
  ["people", async () => (await import("./people")).people],
]);

/** Runs one verb; exit code 0 when it did its work, 1 with one sentence on stderr when it could not. */
async function run(args: readonly string[]): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === "help" || name === "--help") {
    console.log(usage);
    return 0;
  }
  const json = rest.includes("--json");
  const isLeaving = leaveOnSignal();
  try {
    const load = verbs.get(name);
    if (!load)
      throw new CannotDo(
        `There is no verb "${name}"; the verbs are ${[...verbs.keys()].join(", ")}.`,
      );
    await readyClient();
    const verb = await load();
    const done = await verb(rest, json);
    process.stdout.write(json ? `${JSON.stringify(done.json)}\n` : `${done.text}\n`);
    return 0;
  } catch (trouble) {
    if (!isLeaving()) process.stderr.write(`${oneSentence(trouble)}\n`);
    return 1;
  }
}

function oneSentence(trouble: unknown): string {
  if (!(trouble instanceof Error)) return String(trouble);
  const text = trouble.message.replaceAll(/\s+/g, " ").trim();
  return process.env.CANAL_AUDIT_TRACE ? (trouble.stack ?? text) : text;
}

process.exitCode = await run(process.argv.slice(2));
