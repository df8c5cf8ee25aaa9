import { Temporal } from "@js-temporal/polyfill";
import { type PeopleReach, peopleReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { linesWithin } from "@/lib/store/log/read-lines";
import { peopleWithin } from "@/lib/store/people/list-people";
import { placesWithin } from "@/lib/store/places/places-within";
import { type LineView, lineView } from "@/lib/views/log/log-words";

/** What the page of the log shows: lines newest first, of a day and a person where they are asked for. */
export type LogView = {
  readonly lines: readonly LineView[];
  readonly zone: string;
  readonly day: string;
  readonly person: string;
  readonly people: readonly { readonly id: string; readonly words: string }[];
  /** The next page's address; null on the last. */
  readonly older: string | null;
  /** What was asked for and is none. */
  readonly wrong: string | null;
};

const perPage = 100;
type Address = Readonly<Record<string, string | string[] | undefined>>;

/** @throws Refused where the viewer is no administrator */
export async function logPage(viewer: Viewer, address: Address): Promise<LogView> {
  const reach = peopleReach(viewer);
  const [zone, people] = await Promise.all([zoneOf(reach), peopleWithin(reach)]);
  const day = text(address.day);
  const person = text(address.person);
  const before = /^\d{1,15}$/.test(text(address.before)) ? Number(text(address.before)) : undefined;
  const span = day === "" ? {} : daySpan(day, zone);
  const found = span
    ? await linesWithin(reach, {
        ...span,
        ...(person === "" ? {} : { person }),
        ...(before === undefined ? {} : { before }),
        limit: perPage + 1,
      })
    : [];
  const lines = found.slice(0, perPage);
  const last = found.length > perPage ? lines.at(-1) : undefined;
  return {
    lines: lines.map((line) => lineView(line, zone)),
    zone,
    day: span ? day : "",
    person,
    people: people.map(({ id, name, email }) => ({ id, words: `${name}, ${email}` })),
    older: last
      ? `/administration/log?${new URLSearchParams({ day, person, before: String(last.id) })}`
      : null,
    wrong: span ? null : "This is no day; write it as 2026-07-03.",
  };
}

/** Lines for the command: from a local day on, of a person by email, newest first. Null where nobody has the email. */
export async function logLines(
  reach: PeopleReach,
  asked: { readonly from?: string; readonly email?: string; readonly limit: number },
) {
  const person = asked.email
    ? (await peopleWithin(reach)).find(({ email }) => email === asked.email?.toLowerCase())
    : undefined;
  if (asked.email && !person) return { wrong: `Nobody signs in as ${asked.email}.` };
  const zone = await zoneOf(reach);
  const span = asked.from ? daySpan(asked.from, zone) : { from: undefined };
  if (!span) return { wrong: `"${asked.from}" is no day; write it as 2026-07-03.` };
  const lines = await linesWithin(reach, {
    ...(span.from ? { from: span.from } : {}),
    ...(person ? { person: person.id } : {}),
    limit: asked.limit,
  });
  return { lines, views: lines.map((line) => lineView(line, zone)) };
}

async function zoneOf(reach: PeopleReach): Promise<string> {
  return (await placesWithin(reach))[0]?.zone ?? "UTC";
}

/** A local day, half-open; null where it is none. */
function daySpan(day: string, zone: string): { from: string; to: string } | null {
  try {
    const date = Temporal.PlainDate.from(day);
    const at = (one: Temporal.PlainDate) => one.toZonedDateTime(zone).toInstant().toString();
    return /^\d{4}-\d{2}-\d{2}$/.test(day)
      ? { from: at(date), to: at(date.add({ days: 1 })) }
      : null;
  } catch {
    return null;
  }
}

function text(value: string | string[] | undefined): string {
  return typeof value === "string" ? value.slice(0, 100).replaceAll("\0", "") : "";
}
