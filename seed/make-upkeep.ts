import { openDays, weekday, writtenTime } from "./calendar";
import { type Random, random } from "./random";
import type { Row } from "./rows";
import { type Chair, chairs, findings, type Practice } from "./scenario";

/** MEDLAR-1 was out of order for a week. */
const outOfService = { chair: "MEDLAR-1", from: "2025-08-11", to: "2025-08-15" };

/** Rinsing and drying of every irrigation line on every open day from `first` to `last`. */
export function makeUpkeep(
  practice: Practice,
  { first, last }: { readonly first: string; readonly last: string },
): Row[] {
  const draw = random(`upkeep ${practice.code}`);
  const lines = chairs.filter(
    (chair) => chair.practice === practice.code && chair.flow !== undefined,
  );
  return openDays(first, last).flatMap((day) =>
    lines.flatMap((chair) => [
      ...rinse(practice, chair, day, draw),
      ...dry(practice, chair, day, draw),
    ]),
  );
}

function rinse(practice: Practice, chair: Chair, day: string, draw: Random): Row[] {
  const how = draw.weighted({ done: 955, short: 8, "no-time": 8, "not-done": 12, unwritten: 17 });
  const seconds = draw.pick([30, 35, 40, 45, 45, 60]);
  const row = common(practice, chair, day, "line-rinse", draw);
  if (outOfOrder(chair, day)) return [{ ...row, status: "out-of-service" }];
  if (how === "unwritten" || silent(chair, day)) return [];
  if (how === "not-done") return [{ ...row, status: "not-done" }];
  const duration = { done: seconds, short: 20, "no-time": undefined }[how];
  return [{ ...row, status: "done", duration_s: duration }];
}

function dry(practice: Practice, chair: Chair, day: string, draw: Random): Row[] {
  const written = draw.chance(0.97);
  const status = draw.chance(0.975) ? "done" : "not-done";
  const row = common(practice, chair, day, "line-dry", draw);
  if (outOfOrder(chair, day)) return [{ ...row, status: "out-of-service" }];
  return written && !silent(chair, day) ? [{ ...row, status }] : [];
}

function common(practice: Practice, chair: Chair, day: string, task: string, draw: Random): Row {
  return {
    practice: practice.code,
    chair: chair.code,
    day,
    task,
    at: writtenTime(practice, day, 17 * 60 + draw.whole(40, 75)),
    done_by: `N-0${draw.whole(1, 4)}`,
  };
}

function silent(chair: Chair, day: string): boolean {
  const { silentFridays } = findings;
  return chair.code === silentFridays.chair && day >= silentFridays.from && weekday(day) === 4;
}

function outOfOrder(chair: Chair, day: string): boolean {
  return chair.code === outOfService.chair && day >= outOfService.from && day <= outOfService.to;
}
