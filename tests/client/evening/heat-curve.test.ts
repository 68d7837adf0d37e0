import { describe, expect, it } from "vitest";
import { heatCurve } from "../../../client/ui/evening/heat-curve.ts";
import type { HeatCurve } from "../../../client/ui/evening/heat-curve.ts";
import { sayEvening } from "../../../client/ui/evening/evening-words.ts";
import { chainOf, drawnEvening } from "../../../client/ui/evening/drawn-evening.ts";
import type { Heat } from "../../../core/units/temperature.ts";
import {
  after,
  at,
  dish,
  five,
  handsOff,
  handsOn,
  kitchen,
  mins,
  oven,
} from "../../core/plan/small-meals.ts";
import { clockOf, eveningAt, twoPots } from "./two-pots.ts";
import type { Ordered } from "./two-pots.ts";

const turned = (minute: number, degrees: number | null): Ordered => {
  const heat: Heat | null = degrees === null ? null : { degrees, scale: "F" };
  return [minute, { type: "SetOven", oven: "oven", heat }];
};

/** The oven of the test kitchen heats 15 F a minute from 70 F, cools 5 F a minute, and reaches 500 F. */
function curveOf(from: number, to: number, ...orders: readonly Ordered[]): HeatCurve {
  const { session, sheet } = eveningAt(to, twoPots, null, ...orders);
  const [place] = kitchen.ovens;
  if (place === undefined) throw new Error("the test kitchen has no oven");
  return heatCurve(place, session, sheet, at(from), at(to));
}
const minuteOf = (moment: number): number => (moment - five) / 60_000;
const told = ({ turns }: HeatCurve) =>
  turns.map(({ at: when, text, reachedAt }) => [minuteOf(when), text, minuteOf(reachedAt)]);

describe("the heat of an oven over the evening", () => {
  it("[W67] keeps every heat that it was set to, and when each was reached", () => {
    // By hand: (400 - 70) / 15 = 22 minutes up, (400 - 300) / 5 = 20 down, and off until the end.
    const curve = curveOf(0, 90, turned(2, 400), turned(40, 300), turned(70, null));
    expect(told(curve)).toEqual([
      [2, "400°F", 24],
      [40, "300°F", 60],
      [70, "off", 90],
    ]);
    const shares = curve.points.map(({ at: when, share }) => [minuteOf(when), Math.round(share * 100)]);
    expect(shares).toContainEqual([24, 80]);
    expect(shares).toContainEqual([60, 60]);
  });

  it("[W67] a heat that was changed on the way was never reached", () => {
    // Ten minutes at 15 F a minute come to 220 F, of which 200 F are 4 minutes down.
    const curve = curveOf(0, 60, turned(0, 400), turned(10, 200));
    expect(told(curve)).toEqual([
      [0, "400°F", 10],
      [10, "200°F", 14],
    ]);
    expect(curve.points.find(({ at: when }) => when === at(10))?.share).toBeCloseTo(220 / 500);
  });

  it("[W67] begins in the middle as hot as it is then", () => {
    const curve = curveOf(30, 60, turned(0, 400));
    expect(curve.points[0]).toEqual({ at: at(30), share: 400 / 500 });
    expect(curve.turns.map(({ text }) => text)).toEqual(["400°F"]);
    expect(curve.points.every(({ at: when }) => when >= at(30) && when <= at(60))).toBe(true);
  });

  it("[W67] what the run sheet will turn it to comes after what was done, in words as well", () => {
    const baked = dish("loaf", [
      handsOn("shape-the-loaf", mins(10)),
      handsOff("bake-the-loaf", mins(30), { after: [after("shape-the-loaf")], needs: [oven(430)] }),
    ]);
    const known = eveningAt(0, [baked], null);
    const { evening, heats } = drawnEvening(known, chainOf(known), "whole");
    // By hand: (430 - 70) / 15 = 24 minutes.
    expect(sayEvening(evening, heats, clockOf).at(-1)).toBe("Oven: 430°F, set 5:00 pm, hot 5:24 pm.");
  });
});
