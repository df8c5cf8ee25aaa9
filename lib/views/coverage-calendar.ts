import { dayAfter, type Period } from "@/lib/records/period";
import { day as dayWords } from "./day";
import { type DayCalendar, type DrawnDay, dayCalendar } from "./day-calendar";
import { type CameOnDay, type Lack, lacksOn } from "./expected-records";
import { count } from "./quantity";

/** A chair with what came of it, from some weeks before the period on (expected-records). */
export type CoverageInput = {
  readonly practice: string;
  readonly chair: string;
  /** First local day of its practice's records; null where there is none. */
  readonly firstDay: string | null;
  /** The practice's day now; it and those after it are not over yet. */
  readonly today: string;
  readonly came: readonly CameOnDay[];
};

export type CoverageChair = {
  readonly practice: string;
  readonly chair: string;
  readonly summary: string;
  readonly calendar: DayCalendar;
  /** Days on which something is missing, for those who read rather than look. */
  readonly missing: readonly { readonly day: string; readonly words: string }[];
};

type CameByDay = ReadonlyMap<string, CameOnDay>;

/** The days of each chair: how many visits are in, and what is usually there and did not come. */
export function coverageCalendar(
  chairs: readonly CoverageInput[],
  period: Period,
): CoverageChair[] {
  const days = daysOf(period);
  return chairs.map((chair) => {
    const came = new Map(chair.came.map((one) => [one.day, one]));
    const record = { came, until: chair.today };
    const lacks = new Map(
      days.map((day) => [day, isOver(chair, day) ? lacksOn(day, record) : []] as const),
    );
    const missing = days.flatMap((day) => {
      const some = lacks.get(day)?.filter((one) => one.missing) ?? [];
      return some.length === 0 ? [] : [{ day, words: lackWords(came.get(day)?.visits ?? 0, some) }];
    });
    const missingOn = new Map(missing.map(({ day, words }) => [day, words]));
    const drawn = new Map(
      days.flatMap((day): [string, DrawnDay][] => {
        const words = missingOn.get(day);
        if (words) return [[day, { shape: "!", words, tone: "look" }]];
        const there = drawnDay(chair, day, came, lacks.get(day) ?? []);
        return there ? [[day, there]] : [];
      }),
    );
    return {
      practice: chair.practice,
      chair: chair.chair,
      summary: summaryOf(
        days.flatMap((day) => came.get(day) ?? []),
        missing.length,
      ),
      calendar: dayCalendar(period, withoutEmptyWeekends(drawn, came), {
        shape: "·",
        words: "no visit",
        tone: "faint",
      }),
      missing: missing.map(({ day, words }) => ({
        day,
        words: `${chair.chair}, ${dayWords(day)}: ${words}`,
      })),
    };
  });
}

/** "On 3 days of 2 chairs something that is usually there did not come.", or that nothing is missing. */
export function missingWords(chairs: readonly CoverageChair[]): string {
  const some = chairs.filter((chair) => chair.missing.length > 0);
  const days = some.reduce((sum, chair) => sum + chair.missing.length, 0);
  if (days === 0) return "Nothing that is usually there is missing.";
  return `On ${count(days)} ${days === 1 ? "day" : "days"} of ${count(some.length)} ${
    some.length === 1 ? "chair" : "chairs"
  } something that is usually there did not come.`;
}

/** A day on which nothing is missing; undefined where there is nothing to say of it. */
function drawnDay(
  chair: CoverageInput,
  day: string,
  came: CameByDay,
  [lack]: readonly Lack[],
): DrawnDay | undefined {
  const visits = came.get(day)?.visits;
  if (visits !== undefined)
    return { shape: String(visits), words: visitsWords(visits), tone: "plain" };
  if (lack) return { shape: "–", words: `${lackWords(0, [lack])}; a quiet day`, tone: "plain" };
  if (isOver(chair, day)) return undefined;
  const words = day >= chair.today ? "not yet" : "before the records began";
  return { shape: " ", words, tone: "faint" };
}

function isOver({ firstDay, today }: CoverageInput, day: string): boolean {
  return firstDay !== null && day >= firstDay && day < today;
}

function daysOf(period: Period): string[] {
  const days: string[] = [];
  for (let day = period.from; day < period.until; day = dayAfter(day, 1)) days.push(day);
  return days;
}

/** Days that are not over yet do not make a week of seven days; a Saturday with a visit does. */
function withoutEmptyWeekends(
  drawn: ReadonlyMap<string, DrawnDay>,
  came: CameByDay,
): ReadonlyMap<string, DrawnDay> {
  const isWeekend = (day: string) => [0, 6].includes(new Date(`${day}T00:00:00Z`).getUTCDay());
  const used = [...drawn].some(
    ([day, { tone }]) => isWeekend(day) && (came.has(day) || tone !== "faint"),
  );
  return used ? drawn : new Map([...drawn].filter(([day]) => !isWeekend(day)));
}

function summaryOf(came: readonly CameOnDay[], missing: number): string {
  const visits = came.reduce((sum, one) => sum + one.visits, 0);
  const lacks =
    missing === 0
      ? ""
      : ` Something is missing on ${count(missing)} ${missing === 1 ? "day" : "days"} (!).`;
  return visits === 0
    ? `No visits are in.${lacks}`
    : `${visitsWords(visits)} on ${count(came.length)} ${came.length === 1 ? "day" : "days"}.${lacks}`;
}

/** "4 visits, no irrigation rows; usually there" */
function lackWords(visits: number, lacks: readonly Lack[]): string {
  const [first] = lacks;
  if (first?.kind === "visits")
    return `no visits; there were some in ${first.weeks} of the 8 weeks before`;
  const names = lacks.map((lack) =>
    lack.kind === "device" ? `nothing of device ${lack.device}` : noRows[lack.kind],
  );
  return `${visitsWords(visits)}, ${names.join(", ")}; usually there`;
}

const noRows: Record<Exclude<Lack["kind"], "device">, string> = {
  visits: "no visits",
  deliveries: "no irrigation rows",
  instruments: "no instrument rows",
  upkeep: "no upkeep of the chair",
};

function visitsWords(visits: number): string {
  return `${count(visits)} ${visits === 1 ? "visit" : "visits"}`;
}
