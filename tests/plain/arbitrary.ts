import * as fc from "fast-check";
import type { Values } from "@/lib/records/column";
import { dayAfter } from "@/lib/records/period";
import { courseDraft } from "./arbitrary-course";
import { type ChairDay, people, upkeep } from "./arbitrary-house";
import { type VisitDraft, visitDraft } from "./arbitrary-visit";
import { localDay } from "./local-day";
import { noRecords, type Records } from "./records";
import { withoutUsesAfterSeparation } from "./uses-after-separation";

const practices = [
  { code: "NORTH", zone: "Europe/London" },
  { code: "SOUTH", zone: "Pacific/Auckland" },
  { code: "WEST", zone: "America/St_Johns" },
] as const;

/**
 * Random small records with the awkward cases that figures stumble over. Every row passes the format's checks; days
 * lie from January to October 2024, beside the ends of quarters.
 */
export const arbitraryRecords: fc.Arbitrary<Records> = fc
  .record({
    count: fc.integer({ min: 1, max: 3 }),
    visits: fc.array(visitDraft, { maxLength: 10 }),
    courses: fc.array(courseDraft, { maxLength: 2 }),
  })
  .chain(({ count, visits, courses }) => {
    const drafts = [...visits, ...courses.flat()];
    const records = recordsOf(practices.slice(0, count), drafts);
    const codes = practices.slice(0, count).map((practice) => practice.code);
    return fc
      .record({ people: people(codes), upkeep: upkeep(chairDaysOf(records)) })
      .map((house) => ({
        ...records,
        people: recorded(distinctSpells(house.people)),
        upkeep: recorded(house.upkeep),
      }));
  });

function recordsOf(
  some: readonly { code: string; zone: string }[],
  drafts: readonly VisitDraft[],
): Records {
  const records = noRecords(Object.fromEntries(some.map(({ code, zone }) => [code, zone])));
  const placed = drafts.map((draft) => ({
    draft,
    practice: some[draft.place % some.length]?.code ?? "",
  }));
  const keys = placed.map(({ draft, practice }) => `${practice} ${draft.session.session_id}`);
  const distinct = placed.filter((_, place) => keys.indexOf(keys[place] ?? "") === place);
  for (const { draft, practice } of distinct) {
    const { session_id } = draft.session;
    const shared = distinct.some(
      (one) => one.practice !== practice && one.draft.session.session_id === session_id,
    );
    // A number that two practices have needs the practice in every row, else the row is held.
    addVisit(records, draft, practice, shared ? { session_id, practice } : { session_id });
  }
  return { ...records, instruments: withoutUsesAfterSeparation(records) };
}

function addVisit(records: Records, draft: VisitDraft, practice: string, of: Values): void {
  records.sessions.push(...recorded([{ ...draft.session, practice }]));
  const started = String(draft.session.started_at);
  for (const { row, deliveries, uses } of draft.canals) {
    records.canals.push(...recorded([{ ...row, ...of }]));
    const { canal } = row;
    const ofCanal = { ...of, canal };
    records.irrigation.push(
      ...recorded(
        deliveries.map((one) => ({ ...atItsTime(one, started, draft.timed), ...ofCanal })),
      ),
    );
    records.instruments.push(...recorded(uses.map((use) => ({ ...use.row, ...ofCanal }))));
    const day = localDay(started, records.zones[practice] ?? "");
    const later = uses.flatMap(({ row: { seq }, followups }) =>
      followups.map(({ after, ...said }) => ({ ...said, seq, day: dayAfter(day, after) })),
    );
    records.followups.push(...recorded(later.map((row) => ({ ...row, ...ofCanal }))));
  }
  records.irrigation.push(
    ...recorded(
      draft.wholeTooth.map((one) => ({ ...atItsTime(one, started, draft.timed), ...of })),
    ),
  );
  const canals = [undefined, ...draft.canals.map(({ row }) => row.canal)];
  const ofThisVisit = (rows: readonly Values[]) =>
    rows.filter((row) => canals.includes(row.canal)).map((row) => ({ ...row, ...of }));
  records.steps.push(...recorded(ofThisVisit(draft.steps)));
  records.exceptions.push(...recorded(ofThisVisit(draft.exceptions)));
  for (const { table, canal, lost, practice: writesPractice } of draft.held) {
    records.held.push({
      table,
      session_id: lost ? "V0" : String(of.session_id),
      ...(writesPractice ? { practice } : {}),
      ...(canal === undefined ? {} : { canal }),
    });
  }
}

/** The delivery with the time it was at, where its visit's deliveries bear one: all of them, or those of even minutes. */
function atItsTime(drawn: Values, started: string, timed: VisitDraft["timed"]): Values {
  const { minute, ...delivery } = drawn;
  if (timed === "none" || (timed === "some" && Number(minute) % 2 === 1)) return delivery;
  const instant = Date.parse(started) + Number(minute) * 60_000;
  return { ...delivery, started_at: new Date(instant).toISOString() };
}

/** The chairs' days with a visit, and the day after each. */
function chairDaysOf(records: Records): ChairDay[] {
  const days = records.sessions.flatMap((row): ChairDay[] => {
    const practice = String(row.practice);
    const day = localDay(String(row.started_at), records.zones[practice] ?? "");
    return [day, dayAfter(day, 1)].map((one) => ({ practice, chair: String(row.chair), day: one }));
  });
  return [...new Map(days.map((one) => [JSON.stringify(one), one])).values()];
}

/** Rows without the columns that are not recorded. */
function recorded(rows: readonly Values[]): Values[] {
  return rows.map((row) =>
    Object.fromEntries(Object.entries(row).filter(([, value]) => value !== undefined)),
  );
}

/** Where a code comes back to the same person on the same day, the first spell stands. */
function distinctSpells(spells: readonly Values[]): Values[] {
  const keys = spells.map(({ person, practice, code, from }) =>
    [person, practice, code, from].join(" "),
  );
  return spells.filter((_, place) => keys.indexOf(keys[place] ?? "") === place);
}
