import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { dayAfter, quarter } from "@/lib/records/period";
import { summaryOf, upkeepCalendar } from "@/lib/views/upkeep-calendar";
import { upkeepColumns, upkeepCsv } from "@/lib/views/upkeep-csv";
import { upkeepSentences } from "@/lib/views/upkeep-sentences";
import {
  dayWords,
  taskWords,
  type UpkeepDeviceRow,
  type UpkeepRow,
  upkeepState,
} from "@/lib/views/upkeep-state";

// Expected values are worked by hand from the criterion (every device in service, 30 s) and the project's own rules.

const rinse = "line-rinse";
const done = (durationS: number | null, device = ""): UpkeepDeviceRow => ({
  ...{ device, status: "done", durationS },
});
const not = (device = ""): UpkeepDeviceRow => ({ device, status: "not-done", durationS: null });
const out = (device = ""): UpkeepDeviceRow => ({
  device,
  status: "out-of-service",
  durationS: null,
});
function on(day: string, devices: UpkeepDeviceRow[], inUse = true, chair = "OAK-1"): UpkeepRow {
  return { practice: "OAK", chair, day, inUse, devices };
}
const state = (...devices: UpkeepDeviceRow[]) => upkeepState(on("2026-07-03", devices), rinse);

describe("the state of a chair's day", () => {
  it("is that of its one device", () => {
    expect([
      state(done(30)),
      state(done(29.9)),
      state(done(null)),
      state(not()),
      state(out()),
    ]).toEqual(["done", "short", "untimed", "not-done", "out"]);
    expect(state()).toBe("none");
  });

  it("is what is worst among several in service", () => {
    expect(state(done(40, "M1"), done(20, "M2"))).toBe("short");
    expect(state(done(20, "M1"), not("M2"))).toBe("not-done");
    // One that is known to be too short settles it; what is not known of the other cannot mend it.
    expect(state(done(null, "M1"), done(20, "M2"))).toBe("short");
    expect(state(done(40, "M1"), done(null, "M2"))).toBe("untimed");
    expect(state(done(40, "M1"), out("M2"))).toBe("done");
    expect(state(out("M1"), out("M2"))).toBe("out");
  });

  it("asks for no time of other tasks, and is apart on a day not in use", () => {
    const dry = (one: UpkeepDeviceRow) => upkeepState(on("2026-07-03", [one]), "line-dry");
    expect([dry(done(null)), dry(done(5)), dry(not())]).toEqual(["done", "done", "not-done"]);
    expect(upkeepState(on("2026-07-04", [done(40)], false), rinse)).toBe("unused");
  });

  it("reads device by device", () => {
    expect(dayWords(on("2026-07-03", [done(44, "M1"), not("M2")]), rinse)).toBe(
      "M1 rinsed for 44 s; M2 not rinsed",
    );
    expect(dayWords(on("2026-07-03", [done(5)]), rinse)).toBe("rinsed for 5 s, under 30 s");
    expect(dayWords(on("2026-07-03", [done(null)]), "line-dry")).toBe("done");
    expect(dayWords(on("2026-07-04", [done(90)], false), "line-dry")).toBe(
      "not in use; done in 1 min 30 s",
    );
    expect(dayWords(on("2026-07-03", []), rinse)).toBe("no record");
    expect(taskWords("own-suction", new Map([["own-suction", "Suction filter"]]))).toBe(
      "Suction filter",
    );
    expect(taskWords("own-suction-filter", new Map())).toBe("Suction filter");
  });
});

describe("the calendar", () => {
  const rows = [
    on("2026-07-03", [done(45)]),
    on("2026-07-06", []),
    on("2026-07-07", [not()]),
    on("2026-07-11", [done(45)], false),
    on("2026-07-03", [done(10)], true, "OAK-2"),
  ];

  it("sums up each chair and keeps days not in use apart", () => {
    const { chairs, list } = upkeepCalendar(rows, quarter(2026, 3));
    expect(chairs.map(({ summary }) => summary)).toEqual([
      "3 days in use: 1 rinsed 30 s or longer; 1 not rinsed; 1 no record. A record on 1 day not in use.",
      "1 day in use: 1 rinsed under 30 s.",
    ]);
    expect(list.map((one) => [one.chair, one.day, one.words])).toEqual([
      ["OAK-1", "6 Jul 2026", "no record"],
      ["OAK-1", "7 Jul 2026", "not rinsed"],
      ["OAK-2", "3 Jul 2026", "rinsed for 10 s, under 30 s"],
    ]);
    expect(summaryOf([], rinse)).toBe("No day in use.");
  });

  it("has a shape for each state, and for a day not in use only where one is written down", () => {
    const shapes = (some: UpkeepRow[], task = rinse) =>
      upkeepCalendar(some, quarter(2026, 3), task).legend.map(
        ({ shape, days }) => `${shape} ${days}`,
      );
    expect(shapes(rows)).toEqual(["● 1", "◐ 1", "○ 0", "▲ 1", "◆ 0", "? 1", "□ 1"]);
    expect(shapes([], "line-dry")).toEqual(["● 0", "▲ 0", "◆ 0", "? 0"]);
    const saturday = upkeepCalendar(rows, quarter(2026, 3)).chairs[0]?.calendar.rows[5]?.days;
    expect(saturday?.find((one) => one?.shape === "□")?.words).toBe(
      "11 Jul 2026: not in use; rinsed for 45 s",
    );
  });
});

describe("what is seen in the log", () => {
  const days = (seconds: (number | null)[], device = "") =>
    seconds.map((one, place) => on(dayAfter("2026-07-01", place), [done(one, device)]));
  const times = (some: number, seconds: number) => Array.from({ length: some }, () => seconds);
  const equal = (rows: UpkeepRow[]) => upkeepSentences(rows).equal;

  it("is a run of ten or more recorded durations that are equal to the second", () => {
    expect(equal(days(times(9, 45)))).toEqual([]);
    expect(equal(days([30, ...times(10, 45), 46]))).toEqual([
      "Chair OAK-1 of OAK: 10 records in a row say 45 s, from 2 Jul 2026 to 11 Jul 2026.",
    ]);
    expect(equal(days([...times(5, 45), 46, ...times(5, 45)]))).toEqual([]);
    // 44.6 and 45.4 are both 45 to the second.
    expect(equal(days([...times(5, 44.6), ...times(5, 45.4)]))).toHaveLength(1);
  });

  it("passes over what has no duration or was not done", () => {
    const rows = [...days([...times(5, 45), null, ...times(5, 45)])];
    rows.splice(3, 0, on("2026-07-03", [not()]));
    expect(equal(rows)).toHaveLength(1);
  });

  it("tells devices and chairs apart", () => {
    const two = Array.from({ length: 10 }, (_, place) =>
      on(dayAfter("2026-07-01", place), [done(45, "M1"), done(40 + place, "M2")]),
    );
    expect(equal(two)).toEqual([
      "Chair OAK-1 of OAK, device M1: 10 records in a row say 45 s, from 1 Jul 2026 to 10 Jul 2026.",
    ]);
    const chairs = [
      ...days(times(5, 45)),
      ...days(times(5, 45)).map((row) => ({ ...row, chair: "OAK-2" })),
    ];
    expect(equal(chairs)).toEqual([]);
  });

  it("is what was done on days not in use, with the first dates", () => {
    const unused = (some: number, device = done(45)) =>
      upkeepSentences(
        Array.from({ length: some }, (_, place) =>
          on(dayAfter("2026-07-01", place), [device], false),
        ),
      ).unused;
    expect(unused(1)).toEqual([
      "Chair OAK-1 of OAK: written down as done on 1 day on which no visit with continuous delivery started there: 1 Jul 2026.",
    ]);
    expect(unused(5)[0]).toMatch(/: 1 Jul 2026; .*; 5 Jul 2026\.$/);
    expect(unused(10)[0]).toMatch(/on 10 days .*: from 1 Jul 2026 to 10 Jul 2026\.$/);
    expect(unused(3, out())).toEqual([]);
  });
});

it("the file has a row for each device, one for a day without a record, and every field of every row", () => {
  const text = upkeepCsv([
    {
      task: rinse,
      rows: [
        on("2026-07-03", [done(44.5, "M1"), not("=M2")]),
        on("2026-07-06", []),
        on("2026-07-11", [done(null)], false),
      ],
    },
    { task: "line-dry", rows: [on("2026-07-03", [done(null)])] },
  ]);
  expect(text.startsWith("\ufeff")).toBe(true);
  const [head, ...rows] = parse(text, { bom: true }) as string[][];
  expect(head).toEqual([...upkeepColumns]);
  expect(rows).toEqual([
    ["OAK", "OAK-1", "2026-07-03", "yes", rinse, "M1", "done", "44.5", "not rinsed"],
    ["OAK", "OAK-1", "2026-07-03", "yes", rinse, "'=M2", "not-done", "", "not rinsed"],
    ["OAK", "OAK-1", "2026-07-06", "yes", rinse, "", "", "", "no record"],
    ["OAK", "OAK-1", "2026-07-11", "no", rinse, "", "done", "", "recorded, chair not in use"],
    ["OAK", "OAK-1", "2026-07-03", "yes", "line-dry", "", "done", "", "done"],
  ]);
});
