import { expect, test } from "vitest";
import { beganWithin } from "@/lib/protocol/began-within";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { standingOf, type Version } from "@/lib/protocol/protocol";
import { quarter } from "@/lib/records/period";
import { standingInPeriod } from "@/lib/views/protocol/standing-in-period";

// Expected values are worked by hand from the dates of the versions.

const floor = defaults.find(({ id }) => id === "hypochlorite-floor") as Criterion;
const own = { ...floor, id: "own-floor" };
let ids = 0;
const version = (from: string, more: Partial<Version> = {}): Version => ({
  ...{ id: ++ids, practice: "NORTH", criterion: own, inForce: true, from },
  ...{ writtenOn: "2026-06-01", reason: "x", by: "A. Lead", at: new Date(0), ...more },
});
const [second, third] = [quarter(2026, 2), quarter(2026, 3)];
const standing = (versions: Version[], period = third, id = own.id, practices = ["NORTH"]) =>
  standingInPeriod({ versions }, id, practices, period, "2026-10-01");

test("before its first day a criterion was not in force, and it is said since when it is", () => {
  const begun = [version("2026-08-15")];
  expect(standing(begun, second)).toEqual({
    standing: "since 15 Aug 2026",
    notInForce:
      "It was not in force in this period: it came into force on 15 Aug 2026, and no day before that counts.",
  });
  expect(standing(begun).notInForce).toBeNull();
  const ended = [version("2026-01-01"), version("2026-04-01", { inForce: false })];
  expect(standing(ended).notInForce).toBe(
    "It was not in force in this period: it has been out of force since 1 Apr 2026.",
  );
  expect(standing([], third, floor.id)).toEqual({
    ...{ standing: "from the beginning", notInForce: null },
  });
});

test("practices in which it stands otherwise are told apart", () => {
  expect(standing([version("2026-08-15")], second, own.id, ["NORTH", "SOUTH"])).toMatchObject({
    standing: "NORTH: since 15 Aug 2026; SOUTH: none of its criteria",
    notInForce: expect.stringMatching(/^It was not in force/),
  });
});

test("a criterion that only began in a period was not changed in it", () => {
  const of = (versions: Version[], id = own.id) => beganWithin({ versions }, id, null, third);
  expect(of([version("2026-08-15")])).toEqual(["2026-08-15"]);
  expect(of([version("2026-08-15"), version("2026-09-01")])).toEqual(["2026-08-15"]);
  // A default was there before: its version is a change.
  const changed = [version("2026-08-15", { criterion: floor })];
  expect(of(changed, floor.id)).toEqual([]);
  expect(standingOf({ versions: changed }, floor.id, null, third)?.changedOn).toEqual([
    "2026-08-15",
  ]);
});
