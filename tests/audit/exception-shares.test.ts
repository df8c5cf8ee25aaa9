import { expect, test } from "vitest";
import { exceptionShares } from "@/lib/audit/exception-shares";
import type { Subject } from "@/lib/measures/tally";
import { clinician, rateFigure } from "../views/made-figure";

// Shares are worked by hand; intervals are computed with statsmodels 0.13.5+dfsg, proportion_confint(x, n, method="beta").

const measure = "criterion/timer-reset";
/** A figure with so many excepted of so many eligible, the excepted among them. */
const figure = (subject: Subject, excepted: Record<string, number>, eligible: number) => {
  const units = Object.values(excepted).reduce((sum, some) => sum + some, 0);
  const denominator = eligible - units;
  return rateFigure({
    ...{ measure, subject, excepted, denominator, population: eligible + 7 },
    ...{ numerator: denominator, notMet: 0, excluded: { "no-timer": 7 } },
  });
};
const group: Subject = { kind: "group" };
const reason = (units: number) => ({ allergy: units });

test("a share is of eligible units, the excepted among them, whatever their reasons; the others are the rest of the practice", () => {
  const [a, b] = exceptionShares([
    figure(group, { allergy: 15, calcified: 6 }, 550),
    figure(clinician("A"), { allergy: 7, calcified: 5 }, 140),
    figure(clinician("B"), { allergy: 8, calcified: 1 }, 410),
  ]);
  expect(a).toMatchObject({ excepted: 12, eligible: 140, share: 12 / 140 });
  expect(a?.others).toEqual({ excepted: 9, eligible: 410, share: 9 / 410 });
  // 0.0450759 to 0.1449388, wholly above 9/410 = 0.0219512.
  expect(a?.interval?.lower).toBeCloseTo(0.0450759, 6);
  expect(a?.interval?.upper).toBeCloseTo(0.1449388, 6);
  expect(a?.above).toBe(true);
  expect(b?.others).toEqual({ excepted: 12, eligible: 140, share: 12 / 140 });
  expect(b?.above).toBe(false);
});

test("an interval that reaches down to the others' share is not above", () => {
  // 6 of 60: 0.0376 to 0.2051; the others 2 of 40 are 0.05.
  const [a] = exceptionShares([
    figure(group, reason(8), 100),
    figure(clinician("A"), reason(6), 60),
  ]);
  expect([a?.interval?.lower.toFixed(4), a?.interval?.upper.toFixed(4)]).toEqual([
    "0.0376",
    "0.2051",
  ]);
  expect(a?.above).toBe(false);
});

test("nothing is said of under five exceptions, nor where there is nobody else", () => {
  const of = (excepted: number, others: number) =>
    exceptionShares([
      figure(group, reason(excepted), 10 + others),
      figure(clinician("A"), reason(excepted), 10),
    ])[0]?.above;
  expect(of(4, 500)).toBeNull();
  expect(of(5, 500)).toBe(true);
  expect(of(5, 0)).toBeNull();
});

test("each criterion is compared with itself; who has no eligible unit is left out", () => {
  const other = "criterion/main-irrigant";
  const found = exceptionShares([
    figure(group, reason(5), 100),
    { ...figure(group, reason(50), 100), measure: other },
    figure(clinician("A"), reason(5), 50),
    { ...figure(clinician("A"), reason(5), 50), measure: other },
    figure(clinician("B"), {}, 0),
  ]);
  expect(found.map((one) => [one.figure.measure, one.others.excepted, one.above])).toEqual([
    [measure, 0, true],
    [other, 45, false],
  ]);
});
