import ucum from "@lhncbc/ucum-lhc";
import { describe, expect, test } from "vitest";
import { sourceUnits } from "@/lib/intake/mapping/source-units";
import { colonSeconds, converted, isoSeconds, unitsFor } from "@/lib/intake/mapping/units";

// Conversions are compared with a general-purpose library of UCUM; the written durations are worked by hand.

const library = ucum.UcumLhcUtils.getInstance();
const written = ["min:s", "h:min:s", "ISO 8601"];
/** The fields' own units (lib/records/tables). */
const own = ["mL", "mL/min", "s", "mm", "10.um", "deg", "%", "/min", "N.cm"];

describe("a number of one unit in another", () => {
  for (const to of own)
    for (const from of unitsFor(to).filter((unit) => !written.includes(unit)))
      test(`${from} in ${to}`, () => {
        const told = library.convertUnitTo(from, 3.7, to);
        expect(told.status).toBe("succeeded");
        const made = converted(3.7, from, to);
        expect(made).toBeDefined();
        expect((made ?? 0) / (told.toVal ?? 0)).toBeCloseTo(1, 10);
      });

  test("every unit that a file may have converts into some field's, and none into another kind", () => {
    const reached = new Set(own.flatMap((unit) => unitsFor(unit)));
    expect([...sourceUnits].filter((unit) => !reached.has(unit))).toEqual([]);
    expect(converted(1, "mL", "s")).toBeUndefined();
    expect(converted(1, "mL/s", "mL")).toBeUndefined();
  });

  test("is rounded to twelve digits, so that a tenth of a millilitre a second is six a minute", () => {
    expect(converted(0.1, "mL/s", "mL/min")).toBe(6);
  });
});

test("times written with colons", () => {
  expect(colonSeconds("2:45", "min:s")).toBe(165);
  expect(colonSeconds("0:05", "min:s")).toBe(5);
  expect(colonSeconds("75:00", "min:s")).toBe(4500);
  expect(colonSeconds("2:75", "min:s")).toBeUndefined();
  expect(colonSeconds("1:02:45", "h:min:s")).toBe(3765);
  expect(colonSeconds("2:45", "h:min:s")).toBeUndefined();
  expect(colonSeconds("165", "min:s")).toBeUndefined();
});

test("durations by ISO 8601", () => {
  expect(isoSeconds("PT2M45S")).toBe(165);
  expect(isoSeconds("PT165S")).toBe(165);
  expect(isoSeconds("PT0,5M")).toBe(30);
  expect(isoSeconds("P1DT1H")).toBe(90_000);
  for (const text of ["P", "PT", "2M45S", "PT2M45", "P1M"])
    expect(isoSeconds(text)).toBeUndefined();
});
