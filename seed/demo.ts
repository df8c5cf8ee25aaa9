import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { commandLine } from "@/lib/records/log-line";
import { asHolder } from "@/lib/reports/as-holder";
import { importRecords } from "@/lib/reports/import-records";
import { noteWork } from "@/lib/reports/log/work";
import { changePractice, confirmCodes } from "@/lib/reports/places";
import { changeSecondFactorRule } from "@/lib/reports/second-factor-rule";
import { withHome } from "@/lib/reports/with-home";
import { cast } from "./cast";
import { addDemoPeople } from "./demo-people";
import { chairs, group, span } from "./scenario";
import { type Delivery, writeFiles } from "./write-files";

/**
 * Fills the home of CANAL_AUDIT_HOME with the demo: writes its record files, brings them in a practice at a time
 * as anybody's files would come in, and adds its people. May be run again after it was cut short.
 */
async function fill(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-demo-"));
  try {
    const deliveries = await writeFiles(folder, lastDay());
    await withHome(async (home) => {
      for (const delivery of deliveries) await bringIn(delivery, home.key);
      const people = await addDemoPeople(asHolder().people, home.folder);
      // The demo is for looking at: one step leads in.
      await changeSecondFactorRule(asHolder().people, { rule: "not yet" });
      say(`${people} people of ${group.name} can sign in`);
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function bringIn({ practice, files }: Delivery, key: Buffer): Promise<void> {
  const { records, people } = asHolder();
  const from = performance.now();
  const result = await importRecords(records, files, { zone: practice.zone, key, heldListed: 1 });
  await noteWork("demo import", commandLine, { practice: practice.code, import: result.importId });
  const counts = { read: 0, held: 0, repeated: 0 };
  for (const file of result.files) {
    counts.read += file.read;
    counts.held += file.held;
    counts.repeated += file.repeated;
  }
  await changePractice(people, practice.code, { name: practice.name, zone: practice.zone });
  await confirmCodes(people, practice.code, "chair", codesOf(chairs, practice.code));
  await confirmCodes(people, practice.code, "clinician", codesOf(cast, practice.code));
  const seconds = ((performance.now() - from) / 1000).toFixed(1);
  say(
    `${practice.name}: ${counts.read} rows read, ${counts.held} held, ${counts.repeated} repeated (${seconds} s)`,
  );
}

function codesOf(of: readonly { practice: string; code: string }[], practice: string): string[] {
  return [...new Set(of.filter((one) => one.practice === practice).map(({ code }) => code))];
}

/** The scenario's last day, or yesterday where that is earlier: no record is of a time to come. */
function lastDay(): string {
  const yesterday = new Date(Date.now() - 86_400_000).toISOString().slice(0, 10);
  if (yesterday > span.last) return span.last;
  return yesterday;
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

await fill();
