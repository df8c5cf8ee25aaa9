import { checkTooth } from "../check-tooth";
import { instant } from "../instant";
import { isProblem, type Problem } from "../problem";
import type { Trouble } from "../raw-row";
import type { Context, Match } from "../sheet";

/** Where and when a row without a visit's number says it was, from its visit.* cells; troubles are told under session_id. */
export function matchOf(
  cells: Readonly<Record<string, string>>,
  minutes: number,
  context: Context,
): { match?: Match; troubles: Trouble[] } {
  const troubles: Trouble[] = [];
  const told = <Value>(found: Value | Problem | undefined): Value | undefined => {
    if (typeof found !== "object" || found === null || !isProblem(found as Problem))
      return found as Value;
    troubles.push({ column: "session_id", ...(found as Problem) });
    return undefined;
  };
  const practice = cells.practice?.trim() || undefined;
  const zone = () => context.zoneOf(practice);
  const moment = (text: string | undefined) =>
    text ? told<string>(instant(text, { zone, now: context.now })) : undefined;
  const at = moment(cells["visit.at"]);
  const until = moment(cells["visit.until"]);
  const toothText = cells["visit.tooth"]?.trim();
  const tooth = toothText
    ? told(checkTooth(toothText, { tooth_notation: cells["visit.tooth_notation"] ?? "" }))
    : undefined;
  if (at === undefined) {
    if (troubles.length === 0)
      troubles.push({
        column: "session_id",
        found: "",
        remedy: "the row names neither its visit nor a time by which it could be found",
      });
    return { troubles };
  }
  const chair = cells["visit.chair"]?.trim() || undefined;
  return {
    troubles,
    match: {
      ...(practice ? { practice } : {}),
      ...(chair ? { chair } : {}),
      at,
      ...(until ? { until } : {}),
      ...(typeof tooth === "string" ? { tooth } : {}),
      minutes,
    },
  };
}
