import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { cpus, tmpdir, totalmem } from "node:os";
import { basename, join, resolve } from "node:path";
import runApp, { runAppIn } from "../../browser/running-app";
import { newAccount } from "../pages";
import { bareCopy } from "./bare-copy";
import { type FirstLoad, firstLoad } from "./first-load";
import { type Line, lines } from "./lines";
import { longerHistory } from "./longer-history";
import { type MadeHome, madeHome } from "./made-home";
import { type QuarterRun, quarterOnce } from "./quarter-of-home";
import { type Scrolling, scrolling } from "./scrolling";
import { type Person, type UsersRun, usersAtOnce } from "./users-at-once";
import { workbookRun } from "./workbook-run";

/** Everything measured in one run. */
export type Measured = {
  readonly small: MadeHome;
  readonly large: MadeHome;
  readonly copies: { readonly small: number; readonly large: number };
  readonly workbook: { readonly rows: number; readonly peakMb: number };
  readonly quarter: Record<"small" | "large" | "longer", QuarterRun>;
  readonly users: readonly UsersRun[];
  readonly firstLoads: readonly FirstLoad[];
  readonly scrolled: Scrolling;
};

/**
 * Every number of speed and scale in one run: a table of each beside what is promised, and the same as JSON, which also lies in the
 * folder as bench.json. Records and homes are made below the folder, or taken as they are where they lie there. Other numbers of canals
 * than those promised for are for trying the bench itself.
 */
export async function scale(folder?: string, few = "100000", many = "1000000"): Promise<void> {
  const place = folder
    ? resolve(process.env.INIT_CWD ?? process.cwd(), folder)
    : await mkdtemp(join(tmpdir(), "canal-audit-scale-"));
  await mkdir(place, { recursive: true });
  delete process.env.DATABASE_URL;
  try {
    const measured = await measure(place, Number(few), Number(many));
    const machine = {
      cores: cpus().length,
      processor: cpus()[0]?.model,
      memoryGb: Math.round(totalmem() / 2 ** 30),
      node: process.version,
      at: new Date().toISOString(),
    };
    const table = lines(measured);
    print(table);
    console.log(
      `${machine.cores} cores (${machine.processor}), ${machine.memoryGb} GB, Node ${machine.node}`,
    );
    const json = JSON.stringify({ machine, lines: table, measured }, null, 1);
    await writeFile(join(place, "bench.json"), json);
    console.log(json);
  } finally {
    if (!folder) await rm(place, { recursive: true, force: true });
  }
}

async function measure(place: string, few: number, many: number): Promise<Measured> {
  const small = await madeHome(place, few);
  const large = await madeHome(place, many);
  say("bare COPY of the same rows");
  const copies = {
    small: (await bareCopy(small.home)).seconds,
    large: (await bareCopy(large.home)).seconds,
  };
  say("a workbook");
  const workbook = await workbookRun(join(place, "workbook"));
  const longer = await longerHistory(large.home, join(place, "longer"));
  say("a quarter");
  const quarter = {
    small: await quarterOnce(small.home),
    large: await quarterOnce(large.home, "--duck"),
    longer: await quarterOnce(longer),
  };
  say("twenty people at once");
  const users = await twentyPeople(large);
  say("first loads, on the demo");
  const takeDown = await runApp();
  try {
    const url = process.env.CANAL_AUDIT_URL ?? "";
    const firstLoads = await firstLoad(url);
    const scrolled = await scrolling(url);
    return { small, large, copies, workbook, quarter, users, firstLoads, scrolled };
  } finally {
    await takeDown();
  }
}

/** A group's four leads, ten of its clinicians, two quality officers, record keepers and administrators. */
async function twentyPeople({ home, files }: MadeHome): Promise<UsersRun[]> {
  process.env.CANAL_AUDIT_DEMO = "no";
  const takeDown = await runAppIn(home);
  try {
    const query = "?period=2026-Q2";
    const pagesOf: Record<string, string[]> = {
      "clinical-lead": [
        `/lead${query}`,
        `/lead/measures/volume${query}`,
        `/lead/measures/criterion/isolation${query}`,
      ],
      "quality-officer": [`/quality${query}`, `/safety${query}`],
      "record-keeper": ["/records", "/records/held"],
      administrator: ["/administration"],
    };
    const people: Person[] = (await personKeys(files, 10)).map((key) => ({
      account: newAccount("clinician", "--clinician", key),
      pages: [`/clinician${query}`],
    }));
    const url = process.env.CANAL_AUDIT_URL ?? "";
    for (const [role, pages] of Object.entries(pagesOf)) {
      const account = newAccount(role);
      const number = role === "clinical-lead" ? 4 : 2;
      for (let one = 0; one < number; one += 1) people.push({ account, pages });
    }
    return await usersAtOnce(url, people, 8);
  } finally {
    await takeDown();
    for (const name of ["CANAL_AUDIT_DEMO", "CANAL_AUDIT_URL", "CANAL_AUDIT_HOME"])
      delete process.env[name];
  }
}

/** Keys of the first people that the file of people names. */
async function personKeys(files: readonly string[], number: number): Promise<string[]> {
  const file = files.find((path) => basename(path) === "people.csv");
  const [head = "", ...lines] = (await readFile(file ?? "", "utf8")).split("\n");
  const place = head.split(",").indexOf("person");
  const keys = lines.flatMap((line) => line.split(",")[place] || []).map((one) => `person:${one}`);
  return [...new Set(keys)].slice(0, number);
}

function say(words: string): void {
  console.error(words);
}

function print(table: readonly Line[]): void {
  console.table(
    table.map(({ what, promised, measured, holds }) => ({
      what,
      promised,
      measured,
      holds: holds ? "yes" : "NO",
    })),
  );
}
