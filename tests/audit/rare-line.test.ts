import { describe, expect, it } from "vitest";
import { type RareEvents, rareLine } from "@/lib/audit/rare-line";
import { gChart, tChart } from "@/lib/statistics/control-chart";

// Expected values: worked by hand, or computed by the charts of lib/statistics (held to published values).

const event = (place: number, day: string) => ({ place, day });
const some: RareEvents = {
  units: 250,
  last: "2026-09-30",
  events: [
    event(40, "2026-01-10"),
    event(41, "2026-01-10"),
    event(101, "2026-03-01"),
    event(200, "2026-07-01"),
  ],
};

describe("units between events", () => {
  it("are those strictly between; the first span is not counted and the last is open", () => {
    const { points } = rareLine("g", some, []);
    expect(points.map(({ id, value, open }) => [id, value, open ?? false])).toEqual([
      ["2026-01-10", 0, false],
      ["2026-03-01", 59, false],
      ["2026-07-01", 98, false],
      ["2026-09-30", 50, true],
    ]);
    // The open span is drawn and not averaged.
    const expected = gChart([0, 59, 98], 50);
    expect(points[0]?.centre).toBe(expected?.centre);
    expect(points.map(({ upper }) => upper)).toEqual(expected?.points.map((one) => one?.upper));
  });

  it("cannot show worsening while the lower limit is 0: by hand, p = 1/(1 + 157/3) is over .00135", () => {
    expect(rareLine("g", some, []).segments).toMatchObject([
      { from: 0, to: 4, chart: "g", why: null, showsWorsening: false },
    ]);
    const rare = [1, 1002, 2003].map((place) => event(place, "2026-01-10"));
    const line = rareLine("g", { units: 2500, last: "2026-09-30", events: rare }, []);
    // A mean of 1,000: p = 1/1001, under .00135.
    expect(line.segments[0]?.showsWorsening).toBe(true);
  });

  it("run around their median without the open span", () => {
    const events = Array.from({ length: 14 }, (_, at) =>
      event(1 + at * 10 + at * at, "2026-01-10"),
    );
    const { segments } = rareLine("g", { units: 9999, last: "2026-09-30", events }, []);
    // 13 spans that grow: the seventh is the median, six lie below and six above.
    expect(segments[0]?.runs).toMatchObject({ useful: 12, longestRun: 6, crossings: 1 });
  });
});

describe("days between events", () => {
  it("are whole days, 0 on one and the same day, the last open, across a change of the clock", () => {
    const { points, segments } = rareLine("t", some, []);
    // By the calendar: 10 Jan to 1 Mar 50 days, to 1 Jul 122, to 30 Sep 91.
    expect(points.map(({ value }) => value)).toEqual([0, 50, 122, 91]);
    expect(segments[0]).toMatchObject({ chart: "t", why: null, showsWorsening: true });
    const expected = tChart([0, 50, 122], 91);
    expect(points[0]?.upper).toBe(expected?.points[0]?.upper);
    expect(points.at(-1)?.outside).toBeNull();
  });
});

describe("few events", () => {
  it("give no points at all without any, and one open span after a lone one", () => {
    const none = rareLine("g", { units: 80, last: "2026-09-30", events: [] }, []);
    expect(none).toEqual({ points: [], segments: [] });
    const lone = rareLine("g", { ...some, events: [event(200, "2026-07-01")] }, []);
    expect(lone.points).toMatchObject([{ value: 50, open: true, upper: null }]);
    expect(lone.segments).toMatchObject([{ why: "too-few-events", runs: null }]);
  });

  it("have no t limits from a single closed span", () => {
    const two = rareLine("t", { ...some, events: some.events.slice(2) }, []);
    expect(two.points.map(({ value }) => value)).toEqual([122, 91]);
    expect(two.segments[0]?.why).toBe("too-few-events");
  });
});

describe("a rebase", () => {
  it("splits where a span ends in its month or later, and the segments have limits of their own", () => {
    const { points, segments } = rareLine("g", some, ["2026-03"]);
    expect(segments.map(({ from, to }) => [from, to])).toEqual([
      [0, 1],
      [1, 4],
    ]);
    expect(points[1]?.centre).toBe(gChart([59, 98], 50)?.centre);
    expect(points[0]?.centre).toBe(gChart([0])?.centre);
  });

  it("after the last event leaves the open span to stand alone", () => {
    const { segments } = rareLine("g", some, ["2026-08"]);
    expect(segments.map(({ to, why }) => [to, why])).toEqual([
      [3, null],
      [4, "too-few-events"],
    ]);
  });
});
