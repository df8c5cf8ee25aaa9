import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { holderReach } from "@/lib/access/reach";
import { buildPages } from "@/lib/command/start/build-pages";
import { addPerson } from "@/lib/reports/people";
import { changeSecondFactorRule } from "@/lib/reports/second-factor-rule";
import { disconnect } from "@/lib/store/database";
import { freePort } from "@/lib/store/home/free-port";
import { migrate } from "@/lib/store/home/migrate";
import { asHolder } from "@/lib/store/wall/as-whom";
import { bringFilesIn, key } from "../faults/acts";
import type { Outcome } from "../faults/ground";
import { asked, ownServer } from "../faults/own-server";
import { recordFiles } from "../faults/record-files";
import { referenceOf, soundness } from "../faults/sound";
import { recordSections } from "../faults/state";
import { begun, lead, rows } from "../reports/audits/audit-home";
import { bringIn } from "../store/bring-in";
import { type AppProcess, appProcess } from "./app-process";
import { balancer } from "./balancer";
import { type Asked, signedIn } from "./user";

const password = "seven otters under a tin roof";
const what = "one of three app processes killed under load";
const pages = ["/lead", "/audits", "/quality", "/records"];

/**
 * Three processes of the application on one database behind a balancer. People sign in, read and type while an upload is brought in; the
 * process that brings it in is killed. No answer is other than good, but for lines lost at that moment; sessions go on; what was
 * acknowledged is there; the import is finished by another; the records and figures are those of the same import undisturbed.
 *
 * @param visits of the upload: how long its import takes
 * @param seconds of load after the kill, at least
 */
export async function threeProcesses(visits: number, seconds: number): Promise<Outcome> {
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-processes-"));
  const server = await ownServer(join(folder, "server"));
  const apps: AppProcess[] = [];
  const leave: (() => Promise<void>)[] = [];
  try {
    await buildPages(new AbortController().signal);
    const files = await recordFiles(folder, "upload", visits, true);
    const database = await server.database();
    const audit = await filled(database.url);
    const undisturbed = await server.database(database.name);
    process.env.DATABASE_URL = undisturbed.url;
    await bringFilesIn(files.map((file) => ({ ...file, name: basename(file.path) })));
    const reference = await referenceOf(undisturbed.url, "the same import undisturbed");
    await disconnect();

    const ports = [await freePort(), await freePort(), await freePort()];
    const front = await balancer(await freePort(), ports);
    leave.push(front.close);
    const given = {
      ...{ DATABASE_URL: database.url, CANAL_AUDIT_HOME: join(folder, "home") },
      ...{ CANAL_AUDIT_PATIENT_KEY: key.toString("hex"), BETTER_AUTH_URL: front.address },
      CANAL_AUDIT_SIGN_IN_SECRET: "ab".repeat(32),
    };
    apps.push(...(await Promise.all(ports.map((port) => appProcess(port, given)))));

    const notes: Asked[] = [];
    const from = performance.now();
    const load = await underLoad(front.address, audit, notes);
    const sent = await load.upload(files);
    const victim = apps.find(({ port }) => port === front.tookLast("/api/records/import"));
    if (!victim || sent === null) throw new Error("the upload was not taken");
    await stateIs(database.url, sent, ["reading", "publishing"]);
    const killedAt = performance.now();
    await victim.kill();
    await stateIs(database.url, sent, ["done"]);
    await sleep(seconds * 1000);
    const { typed, signIns } = await load.end();
    const took = Math.round((performance.now() - from) / 1000);

    const troubles = [
      ...wrongAnswers(notes, killedAt),
      ...(await lostWords(database.url, audit, typed)),
      ...(await notTakenUp(database.url, sent)),
      ...(signIns > 0 ? [] : ["nobody signed in after the kill"]),
    ];
    for (const app of apps) await app.stop();
    await front.close();
    const how = { sections: recordSections };
    const sound = await asHolder(() => soundness(database.url, [reference], how));
    troubles.push(...sound.troubles);
    const lost = notes.filter(({ status }) => status === "lost").length;
    const came = [
      `${notes.length} answers in ${took} s, ${lost} lost at the kill, finished by another`,
    ];
    return { what, points: 1, came, troubles };
  } finally {
    await Promise.all(apps.map((app) => app.stop().catch(() => undefined)));
    await Promise.all(leave.map((one) => one().catch(() => undefined)));
    await disconnect().catch(() => undefined);
    await server.close();
    await rm(folder, { recursive: true, force: true });
  }
}

/** Records, people and an audit. @returns the audit's number */
async function filled(url: string): Promise<string> {
  await migrate(url);
  process.env.DATABASE_URL = url;
  await bringIn(rows());
  const { people } = holderReach();
  for (const role of ["clinical-lead", "quality-officer", "record-keeper"] as const) {
    const who = { email: `${role}@tests.example`, password, name: role, role };
    const answer = await addPerson(people, { ...who, practice: null, clinicianKey: null });
    if ("wrong" in answer) throw new Error(JSON.stringify(answer.wrong));
  }
  await changeSecondFactorRule(people, { rule: "not yet" });
  const audit = await begun(lead);
  await disconnect();
  return audit;
}

/** People who read, sign in and type until they are told to end. */
async function underLoad(address: string, audit: string, notes: Asked[]) {
  const enter = (role: string) =>
    signedIn(address, { email: `${role}@tests.example`, password }, notes);
  const [reader, officer, keeper] = [
    await enter("clinical-lead"),
    await enter("quality-officer"),
    await enter("record-keeper"),
  ];
  if (![reader, officer, keeper].every(({ isIn }) => isIn)) throw new Error("nobody gets in");
  const over = new AbortController();
  const typed: string[] = [];
  let signIns = 0;
  const again = async (work: (turn: number) => Promise<unknown>, pause: number) => {
    for (let turn = 0; !over.signal.aborted; turn += 1) {
      await work(turn);
      await sleep(pause);
    }
  };
  let inForce = { text: "", revision: 0 };
  const type = async (turn: number) => {
    const text = `${inForce.text} word${turn}`.trim();
    const body = JSON.stringify({ key: "purpose", begun: inForce.revision, text });
    const headers = { "content-type": "application/json" };
    const answer = await reader.ask(`/api/audits/${audit}/text`, { method: "POST", headers, body });
    if (answer?.status !== 200) return;
    inForce = await answer.json();
    typed.push(`word${turn}`);
  };
  const running = [
    again((turn) => reader.ask(pages[turn % 2] ?? "/lead"), 20),
    again(() => officer.ask("/quality"), 20),
    again(() => keeper.ask("/records"), 20),
    again(type, 50),
    again(async () => {
      if ((await enter("quality-officer")).isIn) signIns += 1;
    }, 2500),
  ];
  return {
    async upload(files: readonly { readonly path: string }[]): Promise<number | null> {
      signIns = 0;
      const form = new FormData();
      form.set("zone", "Europe/London");
      for (const { path } of files)
        form.append("files", new Blob([await readFile(path)]), basename(path));
      const answer = await keeper.ask("/api/records/import", {
        ...{ method: "POST", body: form, headers: { accept: "application/json" } },
      });
      const { location = "" } = answer?.status === 202 ? await answer.json() : {};
      return Number(/\/records\/imports\/(\d+)$/.exec(location)?.[1] ?? "") || null;
    },
    async end() {
      over.abort();
      await Promise.all(running);
      return { typed, signIns };
    },
  };
}

/** Waits until the import is in one of these states; past them it never will be. */
async function stateIs(url: string, id: number, states: readonly string[]): Promise<void> {
  for (let tries = 0; tries < 1200; tries += 1) {
    const [row] = await asked(url, "select state, message from imports where id = $1", [id]);
    if (states.includes(String(row?.state))) return;
    await sleep(tries === 0 ? 5 : 250);
  }
  throw new Error(`the import never was ${states.join(" or ")}`);
}

/** Answers that are not good: all but lines lost when the process was killed. */
function wrongAnswers(notes: readonly Asked[], killedAt: number): string[] {
  return notes.flatMap(({ path, status, at }) => {
    const atTheKill = status === "lost" && at > killedAt - 20_000 && at < killedAt + 1000;
    return status === 200 || status === 202 || atTheKill ? [] : [`${path} was answered ${status}`];
  });
}

async function lostWords(url: string, audit: string, typed: readonly string[]): Promise<string[]> {
  const [row] = await asked(
    url,
    "select text from audit_texts where audit_id = $1 and key = 'purpose' order by revision desc limit 1",
    [audit],
  );
  const words = String(row?.text).split(/\s+/);
  const lost = typed.filter((word) => !words.includes(word));
  if (typed.length === 0) return ["nothing was typed"];
  return lost.map((word) => `${word} was acknowledged and is lost`);
}

async function notTakenUp(url: string, id: number): Promise<string[]> {
  const lines = await asked(
    url,
    "select 1 from log_lines where what = 'import taken up' and about = $1",
    [`import=${id}`],
  );
  return lines.length === 1 ? [] : ["the import was not finished by another process"];
}
