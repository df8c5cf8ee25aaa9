import { expect, test } from "vitest";
import { type Masks, masksOf } from "@/lib/audit/disclosure/masks";
import { seededRandom } from "@/lib/statistics/seeded-random";
import { attack, type Wanted } from "./attacker";
import type { Puzzle } from "./puzzle";
import { peopleBehindOf, randomGroup, type Visit } from "./random-group";

// Expected values: none is recovered, the project's own rule; what can be recovered is worked out by an attacker that shares no code
// with what is tested (linear programming and Gaussian elimination, as in Hundepool et al. 2012, Statistical Disclosure
// Control, ch. 4: a suppressed cell is disclosed when its least and greatest possible values are the same).

const groups = 200;

test("who holds all exports of a year recovers nothing of few people", () => {
  const found = { cells: 0, masked: 0, few: 0, recoverable: 0, notMasked: 0, exact: 0 };
  for (let seed = 1; seed <= groups; seed += 1) {
    const visits = randomGroup(seed);
    const { wanted, puzzle } = attack(visits, masksOf(peopleBehindOf(visits)));
    found.cells += wanted.filter(({ truth }) => truth > 0).length;
    found.masked += wanted.filter(({ truth, masked }) => masked && truth > 0).length;
    found.few += fewOf(wanted).length;
    found.notMasked += fewOf(wanted).filter(({ masked }) => !masked).length;
    found.recoverable += recovered(wanted, puzzle, seed).length;
  }
  const need = withoutNeed(25);
  console.log(
    `${groups} groups: ${found.cells} cells over 0, ${found.masked} masked, of which ${found.few} of few people; recoverable ${found.recoverable}. ` +
      `Of the smaller of 25 groups, second lines masked: ${need.second}, of which without need: ${need.without}.`,
  );
  expect(found.few).toBeGreaterThan(10_000);
  expect(found.notMasked).toBe(0);
  expect(found.recoverable).toBe(0);
}, 120_000);

test("the attacker does find what is masked one at a time", () => {
  let [few, found] = [0, 0];
  for (let seed = 1; seed <= 30; seed += 1) {
    const visits = randomGroup(seed);
    if (visits.length > 40) continue;
    const { wanted, puzzle } = attack(visits, oneAtATime(visits));
    few += fewOf(wanted).length;
    found += recovered(wanted, puzzle, seed).length;
  }
  console.log(
    `Masked one at a time, the smaller of 30 groups: ${found} of ${few} cells of few people recovered.`,
  );
  expect(found).toBeGreaterThan(few / 10);
}, 120_000);

test("the order of what is counted changes no mask", () => {
  for (let seed = 1; seed <= 50; seed += 1) {
    const behind = peopleBehindOf(randomGroup(seed));
    const random = seededRandom(seed);
    const shuffled = <Item>(items: readonly Item[]) =>
      items
        .map((item) => ({ item, at: random() }))
        .sort((one, other) => one.at - other.at)
        .map(({ item }) => item);
    const again = masksOf({
      periods: shuffled(behind.periods),
      patients: shuffled(behind.patients),
      clinicians: shuffled(behind.clinicians),
      criteria: new Map([...behind.criteria].map(([id, some]) => [id, shuffled(some)])),
    });
    expect(sorted(again)).toEqual(sorted(masksOf(behind)));
  }
});

function fewOf(wanted: readonly Wanted[]): Wanted[] {
  return wanted.filter(({ few, truth }) => few && truth > 0);
}

/** What of few people the attacker knows for certain. */
function recovered(wanted: readonly Wanted[], puzzle: Puzzle, seed: number): Wanted[] {
  puzzle.explore(seededRandom(seed), 3);
  return fewOf(wanted).filter(({ terms, truth }) => {
    if (puzzle.isOpen(terms, truth)) return false;
    const [least, most] = puzzle.range(terms);
    if (least > truth || most < truth) throw new Error("the attacker is wrong");
    return least === most || puzzle.isSolved(terms);
  });
}

/** Only what rests on few people is masked, and nothing for its sake. */
function oneAtATime(visits: readonly Visit[]): Masks {
  const { wanted } = attack(visits, {
    places: new Set(),
    clinicians: new Set(),
    criteria: new Map(),
  });
  const keys = (table: Wanted["table"]) =>
    new Set(wanted.filter((one) => one.few && one.table === table).map(({ key }) => key));
  return {
    places: keys("patients"),
    clinicians: keys("clinicians"),
    criteria: new Map((["every", "rare"] as const).map((id) => [id, keys(id)])),
  };
}

/** Second lines that could be published alone without anything of few people being recovered. */
function withoutNeed(upTo: number): { second: number; without: number } {
  let [second, without] = [0, 0];
  for (let seed = 1; seed <= upTo; seed += 1) {
    const visits = randomGroup(seed);
    if (visits.length > 60) continue;
    const masks = masksOf(peopleBehindOf(visits));
    const { wanted } = attack(visits, masks);
    const tried = wanted.filter(
      (one) => one.masked && !one.few && ["in all", "people"].includes(one.cell),
    );
    const seen = new Set<string>();
    for (const { table, key, truth } of tried) {
      const given = published(masks, table, key);
      const name = sorted(given).join("\n");
      if (truth === 0 || seen.has(name)) continue;
      seen.add(name);
      second += 1;
      const now = attack(visits, given);
      if (recovered(now.wanted, now.puzzle, seed).length === 0) without += 1;
    }
  }
  return { second, without };
}

/** The masks with one line published after all. */
function published(masks: Masks, table: Wanted["table"], key: string): Masks {
  const less = (some: ReadonlySet<string>) => new Set([...some].filter((one) => one !== key));
  if (table === "clinicians") return { ...masks, clinicians: less(masks.clinicians) };
  if (table === "rare" && masks.places.has(key)) return masks;
  const only = table === "rare" ? ["rare"] : ["every"];
  return {
    ...masks,
    places: table === "rare" ? masks.places : less(masks.places),
    criteria: new Map(
      [...masks.criteria].map(([id, some]) => [id, only.includes(id) ? less(some) : some]),
    ),
  };
}

function sorted({ places, clinicians, criteria }: Masks): string[] {
  return [
    ...[...places].map((key) => `places ${key}`),
    ...[...clinicians].map((key) => `clinicians ${key}`),
    ...[...criteria].flatMap(([id, some]) => [...some].map((key) => `${id} ${key}`)),
  ].sort();
}
