import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hodgesLehmann, learntTimes } from "../../../core/pace/estimate.ts";

const anyRatio = fc.double({ min: 0.2, max: 5, noNaN: true });
const anyEvening = fc.array(anyRatio, { minLength: 1, maxLength: 12 });

describe("how a cook's pace is estimated", () => {
  it("[P92] gives the published estimate of a textbook's figures", () => {
    // Hollander & Wolfe, Nonparametric Statistical Methods, the Hamilton depression scale factor IV of nine patients
    // (data as the R package asbio 1.9-7 prints them for HL.mean); its estimate, -0.46, from memory.
    const changes = [-0.952, 0.147, -1.022, -0.43, -0.62, -0.59, -0.49, 0.08, -0.01];
    expect(hodgesLehmann(changes)).toBeCloseTo(-0.46, 10);
  });

  it("[P92] by hand: the median of the means of all pairs", () => {
    // 1, 2 and 9: the pairs' means are 1, 1.5, 2, 5, 5.5 and 9.
    expect(hodgesLehmann([9, 1, 2])).toBe(3.5);
    expect(hodgesLehmann([4])).toBe(4);
  });

  it("[P92] moves with its figures and does not mind their order (Hodges & Lehmann 1963: equivariance)", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -99, max: 99 }), { minLength: 1, maxLength: 9 }), (figures) => {
        const estimate = hodgesLehmann(figures);
        expect(hodgesLehmann(figures.toReversed())).toBe(estimate);
        expect(hodgesLehmann(figures.map((one) => one + 1000))).toBeCloseTo(estimate + 1000, 8);
        expect(hodgesLehmann(figures.map((one) => -one))).toBeCloseTo(-estimate, 8);
      }),
    );
  });

  it("[P93] one evening never changes anything, nor do four steps", () => {
    fc.assert(fc.property(anyEvening, (evening) => learntTimes([evening, [], []]) === 1));
    expect(learntTimes([[2, 2], [2, 2], []])).toBe(1);
    expect(learntTimes([])).toBe(1);
  });

  it("[P93] by hand: two evenings of three steps, each a half longer, are believed by six parts of eleven", () => {
    // exp(ln 1.5 * 6 / 11) = 1.2475
    expect(learntTimes([Array(3).fill(1.5), Array(3).fill(1.5)])).toBe(1.25);
    // exp(ln 1.5 * 60 / 65) = 1.4540
    expect(learntTimes(Array(20).fill([1.5, 1.5, 1.5]))).toBe(1.45);
  });

  it("[P94] an evening out of the way leaves the estimate among the others and the recipes", () => {
    fc.assert(
      fc.property(fc.array(anyEvening, { minLength: 1, maxLength: 6 }), anyEvening, (others, odd) => {
        const each = others.map((ratios) => Math.exp(hodgesLehmann(ratios.map(Math.log))));
        const times = learntTimes([...others, odd]);
        expect(times).toBeGreaterThanOrEqual(Math.min(1, ...each) - 0.006);
        expect(times).toBeLessThanOrEqual(Math.max(1, ...each) + 0.006);
      }),
    );
  });

  it("[P94] an evening at which everything took five times as long moves three like ones by a hundredth or two", () => {
    const usual = [1.2, 1.3, 1.25, 1.35];
    const before = learntTimes([usual, usual, usual]);
    expect(Math.abs(learntTimes([usual, usual, usual, [5, 5, 5, 5]]) - before)).toBeLessThanOrEqual(0.02);
  });

  it("[P94] the order of the evenings does not matter, and no estimate leaves its bounds", () => {
    fc.assert(
      fc.property(fc.array(anyEvening, { maxLength: 8 }), (evenings) => {
        const times = learntTimes(evenings);
        expect(learntTimes(evenings.toReversed())).toBe(times);
        expect(times).toBeGreaterThanOrEqual(0.5);
        expect(times).toBeLessThanOrEqual(2.5);
      }),
    );
    expect(learntTimes(Array(40).fill([5, 5, 5]))).toBe(2.5);
    expect(learntTimes(Array(40).fill([0.2, 0.2, 0.2]))).toBe(0.5);
  });

  it("[P94] where all take longer by one factor, so does the estimate, and never by more", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 9 }),
        fc.integer({ min: 3, max: 9 }),
        anyRatio,
        (some, steps, ratio) => {
          const times = learntTimes(Array(some).fill(Array(steps).fill(ratio)));
          expect(Math.sign(times - 1) * Math.sign(ratio - 1)).toBeGreaterThanOrEqual(0);
          expect(Math.abs(Math.log(times))).toBeLessThanOrEqual(Math.abs(Math.log(ratio)) + 0.02);
        },
      ),
    );
  });
});
