import type { Behind } from "@/lib/measures/people-behind";
import type { Period } from "@/lib/records/period";
import { holds, shortest } from "./calendar";
import { fewPeople } from "./few-people";
import { lineKey, placeHolds } from "./line-key";
import type { Published } from "./published";

/**
 * The lines of one table: its places by periods. The pieces are the smallest places in the shortest periods; a line without
 * people is published as nothing and is left out. In the order of keys, so that the order of what is given changes nothing.
 */
export function linesOf(behind: readonly Behind[], periods: readonly Period[]): Published {
  const byName = new Map(periods.map((period) => [period.name, period]));
  const short = new Set(shortest(periods).map(({ name }) => name));
  const some = behind
    .filter(({ people, period }) => people > 0 && byName.has(period))
    .map((one) => ({ ...one, key: lineKey(one.about, one.period) }))
    .sort((one, other) => (one.key < other.key ? -1 : 1));
  const smallest = (["chair", "practice", "group"] as const).find((kind) =>
    some.some(({ about }) => about.kind === kind),
  );
  const pieces = some.filter(({ about, period }) => about.kind === smallest && short.has(period));
  return {
    people: pieces.map(({ people }) => people),
    lines: some.map(({ key, about, period, people, eligible }) => ({
      key,
      people,
      few: fewPeople(people) || fewPeople(eligible ?? people),
      pieces: pieces.flatMap((piece, place) => {
        const [whole, part] = [byName.get(period), byName.get(piece.period)];
        return whole && part && holds(whole, part) && placeHolds(about, piece.about) ? [place] : [];
      }),
    })),
  };
}
