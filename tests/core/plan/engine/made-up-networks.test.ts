import { describe, expect, it } from "vitest";
import { keptOptima, provedEnd } from "../../../scheduling/made-up-optima.ts";
import { madeUpMeal, madeUpMeals, mealOfActs } from "../../../scheduling/made-up-networks.ts";

describe("the made-up meals", () => {
  it("[H10] are the same for the same seed, and others for another", () => {
    expect(madeUpMeal(7)).toEqual(madeUpMeal(7));
    const networks = new Set(madeUpMeals.map(({ network }) => JSON.stringify(network)));
    expect(networks.size).toBe(madeUpMeals.length);
  });

  it("[H10] are at least forty, of 18 to 70 acts", () => {
    const counts = madeUpMeals.map(({ network }) => network.lengths.length);
    expect(counts.length).toBeGreaterThanOrEqual(40);
    expect(Math.min(...counts)).toBeGreaterThanOrEqual(18);
    expect(Math.max(...counts)).toBeLessThanOrEqual(70);
    expect(mealOfActs(101, 200).network.lengths.length).toBeGreaterThanOrEqual(200);
  });

  it("[H10] ask for whole minutes within their acts, of things and ovens that are there", () => {
    for (const { network } of madeUpMeals) {
      network.lengths.forEach((length, act) => {
        for (const { thing, amount, from, to } of network.uses[act] ?? []) {
          expect(amount).toBeLessThanOrEqual(network.capacities[thing] ?? 0);
          expect([0 <= from, from < to, to <= length]).toEqual([true, true, true]);
        }
        for (const { from, to, length: long } of network.tending[act] ?? [])
          expect([0 <= from, from <= to, to + long <= length]).toEqual([true, true, true]);
        for (const { oven, racks } of network.bakings[act] ?? [])
          expect(racks).toBeLessThanOrEqual(network.ovens[oven]?.racks ?? 0);
      });
      const times = [...network.lengths, ...network.lags.map((lag) => lag.least)];
      expect(times.every(Number.isInteger)).toBe(true);
    }
  });

  it("[H10] have a proved end each, kept for this very network", () => {
    const kept = keptOptima();
    expect(madeUpMeals.filter((meal) => provedEnd(kept, meal) === null).map((meal) => meal.name)).toEqual([]);
  });
});
