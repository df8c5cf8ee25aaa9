import { describe, expect, it } from "vitest";
import { instant } from "@/lib/intake/instant";

const now = new Date("2026-11-25T12:00:00Z");
const read = (text: string, zone: string | undefined = "Europe/London") =>
  instant(text, { zone: () => zone, now });

// ISO 8601; offsets of Europe/London, America/New_York and Asia/Kolkata by the IANA time zone rules.
describe("a moment", () => {
  it.each([
    ["2026-07-03T09:10:00+01:00", "2026-07-03T08:10:00.000Z"],
    ["2026-07-03T09:10:00Z", "2026-07-03T09:10:00.000Z"],
    ["2026-07-03t09:10:00z", "2026-07-03T09:10:00.000Z"],
    ["2026-07-03T09:10+0530", "2026-07-03T03:40:00.000Z"],
    ["2026-07-03 09:10:00+01", "2026-07-03T08:10:00.000Z"],
    ["2026-07-03 09:10:00.25-05:00", "2026-07-03T14:10:00.250Z"],
    ["2026-07-03T09:10:00", "2026-07-03T08:10:00.000Z"],
    ["2026-01-03 09:10", "2026-01-03T09:10:00.000Z"],
    ["2026-01-03T09:10:00.5", "2026-01-03T09:10:00.500Z"],
    ["2026-03-29T00:59:59", "2026-03-29T00:59:59.000Z"],
    ["2026-03-29T02:00:00", "2026-03-29T01:00:00.000Z"],
    ["2026-10-25T00:59:00", "2026-10-24T23:59:00.000Z"],
    ["2026-10-25T02:00:00", "2026-10-25T02:00:00.000Z"],
    ["2024-02-29T12:00:00", "2024-02-29T12:00:00.000Z"],
  ])("%s in London is %s", (text, utc) => {
    expect(read(text)).toBe(utc);
  });

  it.each([
    ["America/New_York", "2026-07-03T09:10:00", "2026-07-03T13:10:00.000Z"],
    ["America/New_York", "2026-11-01T12:00:00", "2026-11-01T17:00:00.000Z"],
    ["Asia/Kolkata", "2026-07-03T09:10:00", "2026-07-03T03:40:00.000Z"],
  ])("%s %s is %s", (zone, text, utc) => {
    expect(read(text, zone)).toBe(utc);
  });

  it.each([
    ["2026-03-29T01:30:00", /did not exist in Europe\/London/],
    ["2026-10-25T01:30:00", /came twice.*\+01:00 or \+00:00/],
    ["2026-11-25T12:00:01Z", /still to come/],
    ["2062-01-05T09:00:00+00:00", /still to come/],
    ["1989-12-31T23:59:59Z", /before 1990/],
    ["2026-02-29T09:00:00Z", /write date and time/],
    ["2026-07-03T24:00:00Z", /write date and time/],
    ["2026-07-03T09:60:00Z", /write date and time/],
    ["03/07/2026 09:10", /write date and time/],
    ["2026-07-03", /write date and time/],
    ["yesterday", /write date and time/],
  ])("%s in London is held", (text, remedy) => {
    expect(read(text)).toMatchObject({ found: text, remedy: expect.stringMatching(remedy) });
  });

  it("a time that comes twice is right with the offset written", () => {
    expect(read("2026-10-25T01:30:00+01:00")).toBe("2026-10-25T00:30:00.000Z");
    expect(read("2026-10-25T01:30:00+00:00")).toBe("2026-10-25T01:30:00.000Z");
  });

  it("local time without a zone known is held, and the offset asked for", () => {
    expect(instant("2026-07-03T09:10:00", { zone: () => undefined, now })).toMatchObject({
      remedy: expect.stringMatching(/write the offset/),
    });
  });
});
