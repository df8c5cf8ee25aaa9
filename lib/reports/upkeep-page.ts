import { z } from "zod";
import { type FiguresReach, hasRole, leadReach, qualityReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import type { Period } from "@/lib/records/period";
import { ownTerms } from "@/lib/store/protocol/own-terms";
import { keepExport } from "@/lib/store/quality/exports";
import { upkeepTasks } from "@/lib/store/quality/upkeep-days";
import { listAddress } from "@/lib/views/list-address";
import { periodWords } from "@/lib/views/period-words";
import { summaryOf, type UpkeepCalendar, upkeepCalendar } from "@/lib/views/upkeep-calendar";
import { upkeepCsv } from "@/lib/views/upkeep-csv";
import { type UpkeepSentences, upkeepSentences } from "@/lib/views/upkeep-sentences";
import { taskWords, upkeepState } from "@/lib/views/upkeep-state";
import { type Address, type Asked, AskedWrongly, askedFigures } from "./asked-period";
import { sha256 } from "./fingerprint";
import { tomorrow } from "./tomorrow";
import { firstTasks, upkeepAsked } from "./upkeep-asked";

type Choice = { readonly name: string; readonly words: string };

export type UpkeepPage = Pick<Asked, "periods" | "practices" | "practice"> & {
  readonly period: { readonly name: string; readonly words: string };
  readonly task: Choice;
  readonly tasks: readonly Choice[];
  readonly chair: string | undefined;
  readonly chairs: readonly string[];
  readonly finding: string;
  readonly calendar: UpkeepCalendar;
  readonly sentences: UpkeepSentences;
  /** Where the same is had as a file. */
  readonly file: string;
};

const plain = z.string().max(200).optional();
const asked = z.object({ task: plain, chair: plain });

/** Upkeep by chair and day, for the quality officer and the clinical lead. @throws Refused, AskedWrongly */
export async function upkeepPage(viewer: Viewer, address: Address): Promise<UpkeepPage> {
  const { task, chair } = askedOf(address);
  const at = await askedFigures(upkeepReach(viewer), address);
  const tasks = await tasksOf(at.reach, at.period);
  const chosen = task ? tasks.find((one) => one.name === task) : tasks[0];
  if (!chosen) throw new AskedWrongly(`There is no upkeep task ${task} in this period.`);
  const all = await upkeepAsked(at.reach, at.period, chosen.name);
  const chairs = [...new Set(all.map((row) => row.chair))].sort();
  const rows = all.filter((row) => !chair || row.chair === chair);
  if (chair && rows.length === 0)
    throw new AskedWrongly(
      `Chair ${chair} was not in use in this period, and nothing is written down of it.`,
    );
  const { periods, practices, practice } = at;
  return {
    period: { name: at.period.name, words: periodWords(at.period) },
    ...{ periods, practices, practice, task: chosen, tasks, chair, chairs },
    finding: `${chosen.words}. ${summaryOf(rows, chosen.name, new Set(rows.map(chairOf)).size > 1)}`,
    calendar: upkeepCalendar(rows, at.period, chosen.name, tomorrow()),
    sentences: upkeepSentences(rows),
    file: listAddress("/api/quality/upkeep", { period: at.period.name, practice, chair }),
  };
}

/** Every task's calendar as a file; that it was made is kept. @throws Refused, AskedWrongly */
export async function upkeepExport(
  viewer: Viewer,
  address: Address,
): Promise<{ readonly name: string; readonly text: string }> {
  const { chair } = askedOf(address);
  const { reach, period, practice } = await askedFigures(upkeepReach(viewer), address);
  const tasks = await tasksOf(reach, period);
  const rows = await Promise.all(
    tasks.map(async ({ name }) => ({
      task: name,
      rows: (await upkeepAsked(reach, period, name)).filter(
        (row) => (!chair || row.chair === chair) && upkeepState(row, name) !== "unasked",
      ),
    })),
  );
  const text = upkeepCsv(rows);
  await keepExport(reach, {
    ...{ what: "upkeep calendar", format: "csv" },
    ...{ period: period.name, sha256: sha256(text) },
  });
  const part = [period.name.replace("..", "-to-"), practice, chair]
    .filter(Boolean)
    .map((one) => one?.replaceAll(/[^\w-]+/g, "_"));
  return { name: `upkeep-${part.join("-")}.csv`, text };
}

/** The wider of the two where somebody is both. */
function upkeepReach(viewer: Viewer): FiguresReach {
  const officer = hasRole(viewer, "quality-officer") ? qualityReach(viewer) : null;
  const lead = hasRole(viewer, "clinical-lead") ? leadReach(viewer) : null;
  const [first, other] = [officer ?? lead, lead];
  if (!first)
    throw new Refused(
      "This page is for the quality officer and the clinical lead; that is not one of your roles.",
    );
  if (!other || first.practices === null) return first;
  const wider = other.practices === null || other.practices.length > first.practices.length;
  return wider ? other : first;
}

/** Line rinse and line dry, then whatever a practice added or its records name. */
async function tasksOf(reach: FiguresReach, period: Period): Promise<Choice[]> {
  const [written, terms] = await Promise.all([upkeepTasks(reach, period), ownTerms(reach)]);
  const own = terms.filter(({ kind }) => kind === "task");
  const words = new Map(own.map((one) => [one.code, one.words]));
  const inUse = own
    .filter((one) => !one.retired && one.at.toISOString().slice(0, 10) < period.until)
    .map((one) => one.code);
  const others = [...new Set([...written, ...inUse])].filter((one) => !firstTasks.includes(one));
  return [...firstTasks, ...others.sort()].map((name) => ({ name, words: taskWords(name, words) }));
}

function chairOf({ practice, chair }: { readonly practice: string; readonly chair: string }) {
  return `${practice}/${chair}`;
}

function askedOf(address: Address): z.output<typeof asked> {
  const read = asked.safeParse({ task: address.task, chair: address.chair });
  if (!read.success) throw new AskedWrongly("The address asks for more than one task or chair.");
  return { task: read.data.task || undefined, chair: read.data.chair || undefined };
}
