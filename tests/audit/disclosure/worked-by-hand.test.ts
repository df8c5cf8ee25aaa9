import { expect, test } from "vitest";
import { isOfCalendar, periodsAround } from "@/lib/audit/disclosure/calendar";
import { givenAway } from "@/lib/audit/disclosure/given-away";
import { peopleGivenAway, protectPeople } from "@/lib/audit/disclosure/people-in-time";
import { protect } from "@/lib/audit/disclosure/protect";
import type { Published } from "@/lib/audit/disclosure/published";
import { period } from "@/lib/records/period";

// Expected values: worked by hand from small tables with their sums, by the rule of complementary suppression (Hundepool et al.
// 2012, Statistical Disclosure Control, ch. 4): in a row or column whose sum is published one masked cell is none.

/** Two practices by two months, with all sums: few where under 5. */
function twoByTwo(a1: number, a2: number, b1: number, b2: number): Published {
  const people = [a1, a2, b1, b2];
  const line = (key: string, ...pieces: number[]) => {
    const some = pieces.reduce((sum, piece) => sum + (people[piece] ?? 0), 0);
    return { key, pieces, people: some, few: some > 0 && some < 5 };
  };
  return {
    people,
    lines: [
      ...[line("A1", 0), line("A2", 1), line("B1", 2), line("B2", 3)],
      ...[line("A", 0, 1), line("B", 2, 3), line("1", 0, 2), line("2", 1, 3)],
      line("all", 0, 1, 2, 3),
    ],
  };
}

test("one masked cell of a table with sums is given away, and so are two in a row", () => {
  const table = twoByTwo(3, 20, 30, 40);
  const leaks = (...masked: string[]) =>
    givenAway(table, new Set(masked)).map((one) => one.line.key);
  expect(leaks("A1")).toEqual(["A1"]);
  // The row alone hides it, the column 1 less B1 does not.
  expect(leaks("A1", "A2")).toEqual(["A1"]);
  // Four masked cells with all sums would do for these numbers, not for [[1, 0], [0, 0]]: the rule asks for more, whatever they are.
  expect(leaks("A1", "A2", "B1", "B2")).toEqual(["A1"]);
  // With the sums of the months masked too, two cells are enough.
  expect(leaks("A1", "A2", "1", "2")).toEqual([]);
});

test("the second cells have the fewest people", () => {
  // A2 with the sums of both months is 20 + 33 + 60 = 113 people, B1 with the sums of both practices 30 + 23 + 70 = 123, all that
  // hold A1 33 + 23 + 93 = 149: the first is masked, and each of the three is needed.
  expect([...protect(twoByTwo(3, 20, 30, 40))].sort()).toEqual(["1", "2", "A1", "A2"]);
});

test("nobody is no secret, and nothing is masked where nobody is few", () => {
  expect([...protect(twoByTwo(5, 20, 30, 40))]).toEqual([]);
  expect(protect(twoByTwo(5, 20, 30, 40)).size).toBe(0);
});

test("two that are one person each do not hide each other: two in all, neither empty", () => {
  const people = [1, 1, 9];
  const line = (key: string, few: boolean, ...pieces: number[]) => ({
    ...{ key, pieces, few },
    people: pieces.reduce((sum, piece) => sum + (people[piece] ?? 0), 0),
  });
  const of: Published = {
    people,
    lines: [
      ...[line("a", true, 0), line("b", true, 1), line("c", false, 2)],
      line("all", false, 0, 1, 2),
    ],
  };
  // 11 − 9 = 2 people in a and b, each with somebody: one each. So c is masked too: 11 in three.
  expect(givenAway(of, new Set(["a", "b"])).map((one) => one.line.key)).toEqual(["a", "b"]);
  expect([...protect(of)].sort()).toEqual(["a", "b", "c"]);
});

test("people of a quarter and its months: bounded, and masked where the bounds meet", () => {
  const month = (key: string, people: number) => ({ key, people, parts: [] });
  const quarter = (people: number, ...months: number[]) => ({
    ...{ key: "Q", people },
    parts: months.map((one, place) => month(`M${place + 1}`, one)),
  });
  // 14 came, 5 and 5 in two months: at least 4 in the third, and few is at most 4.
  expect(peopleGivenAway(quarter(14, 5, 5, 4), new Set(["M3"]))).toEqual(["M3"]);
  // 13 came: 3 or 4.
  expect(peopleGivenAway(quarter(13, 5, 5, 4), new Set(["M3"]))).toEqual([]);
  // The smallest other count is masked: of 15 the two others leave 1 to 4 once they need not be 11.
  expect([...protectPeople(quarter(15, 5, 6, 4))].sort()).toEqual(["M1", "M3"]);
});

test("an export is of a month, quarter or year, and each has its year's others around it", () => {
  const of = (name: string) => period(name) ?? { name: "", from: "", until: "" };
  expect(periodsAround(of("2026-05")).map(({ name }) => name)).toEqual([
    ...["2026", "2026-Q1", "2026-Q2", "2026-Q3", "2026-Q4"],
    ...["2026-01", "2026-02", "2026-03", "2026-04", "2026-05", "2026-06"],
    ...["2026-07", "2026-08", "2026-09", "2026-10", "2026-11", "2026-12"],
  ]);
  expect(isOfCalendar(of("2026-05-01..2026-05-31"))).toBe(false);
  expect(periodsAround(of("2026-05-01..2026-05-31"))).toHaveLength(1);
});
