import { expect, test } from "vitest";
import { betaBinomialPatients } from "./beta-binomial-patients";

// Computed with SciPy, for n = 2, 3, 4 each a third: betabinom.pmf(k, n, a, b)/3 with a = mu*(1-rho)/rho and
// b = (1-mu)*(1-rho)/rho at mu .03, rho .2; binom.pmf(k, n, .9)/3.
const computed = [
  {
    rate: 0.03,
    likeness: 0.2,
    shares: [
      [0.31557333, 0.01552, 0.00224],
      [0.30926187, 0.0189344, 0.0043456, 0.00079147],
      [0.30396023, 0.02120653, 0.00605901, 0.00175479, 0.00035277],
    ],
  },
  {
    rate: 0.9,
    likeness: 0,
    shares: [
      [0.00333333, 0.06, 0.27],
      [0.00033333, 0.009, 0.081, 0.243],
      [0.00003333, 0.0012, 0.0162, 0.0972, 0.2187],
    ],
  },
];

for (const { rate, likeness, shares } of computed) {
  test(`patients at rate ${rate} and correlation ${likeness} have the shares of the distribution`, () => {
    const draws = 100_000;
    let draw = 0;
    // Evenly spread numbers instead of random ones: each share is met to within one draw at either end.
    const patient = betaBinomialPatients(rate, likeness, () => (draw + 0.5) / draws);
    const counts = shares.map((row) => row.map(() => 0));
    for (; draw < draws; draw += 1) {
      const { events, units } = patient();
      const row = counts[units - 2] as number[];
      row[events] = (row[events] as number) + 1;
    }
    for (const [size, row] of shares.entries())
      for (const [events, share] of row.entries())
        expect(Math.abs((counts[size]?.[events] as number) / draws - share)).toBeLessThan(2e-5);
  });
}
