import { describe, expect, it } from "vitest";
import type { Network } from "../../../../core/plan/engine/network.ts";
import { faultsOf } from "../../../scheduling/check-timetable.ts";
import { exactEnd, safeHorizon } from "../../../scheduling/exact/exact-end.ts";
import { readInstance } from "../../../scheduling/read-instances.ts";
import {
  allOf,
  bakeAt,
  fisherThompson6,
  smallNetwork,
  smallOven,
} from "../../../scheduling/small-network.ts";

/** Long enough on any machine; a network of a few acts takes two seconds, nearly all of them to begin. */
const limitMs = 100_000;
const firstMinute = { thing: 0, amount: 1, from: 0, to: 1 };

/** The proved end, from a timetable in which the check finds no fault; null where there is none. */
async function shortest(network: Network, horizon = safeHorizon(network)): Promise<number | null> {
  const { outcome, end, timetable } = await exactEnd(network, horizon, limitMs);
  expect(outcome).toBe(end === null ? "impossible" : "optimal");
  expect(timetable === null ? [] : faultsOf(network, timetable)).toEqual([]);
  return end;
}

describe("the exact reference", () => {
  it("[H9] puts acts that share one thing after each other, and nothing before its time", async () => {
    const uses = [[allOf(0, 5)], [allOf(0, 3)], []];
    expect(await shortest(smallNetwork([5, 3, 2], { capacities: [1], uses, earliest: [0, 0, 4] }))).toBe(8);
  });

  it("[H9] keeps a maximum lag: what must be flipped at once cannot be left for other work", async () => {
    // The pan's first minute, the flip 3 minutes later and 4 minutes of work: work first or last, 9 either way.
    const network = smallNetwork([3, 2, 4], {
      capacities: [1],
      uses: [[firstMinute], [allOf(0, 2)], [allOf(0, 4)]],
      lags: [
        { from: 0, to: 1, least: 3 },
        { from: 1, to: 0, least: -3 },
      ],
    });
    expect(await shortest(network)).toBe(9);
  });

  it("[H9] says that limits contradict each other, and that nothing fits into too short a time", async () => {
    const uses = [[allOf(0, 3)], [allOf(0, 3)]];
    const lags = [
      { from: 0, to: 1, least: 0 },
      { from: 1, to: 0, least: -1 },
    ];
    expect(await shortest(smallNetwork([3, 3], { capacities: [1], uses, lags }))).toBeNull();
    expect(await exactEnd(smallNetwork([9]), 8, limitMs)).toEqual({
      outcome: "impossible",
      end: null,
      timetable: null,
    });
  });

  it("[H9] tends within the window: eight minutes of work go after the look, not before", async () => {
    const network = smallNetwork([10, 8], {
      capacities: [1],
      uses: [[firstMinute], [allOf(0, 8)]],
      tending: [[{ thing: 0, length: 1, from: 4, to: 6 }], []],
    });
    expect(await shortest(network)).toBe(13);
  });

  it("[H9] bakes together at a heat that both may have, and changes the heat where there is none", async () => {
    // From 70 to 350 degrees at 28 a minute: 10 minutes. Together from 10 to 30.
    const ovens = [smallOven(70)];
    const shared = [[bakeAt(350)], [bakeAt(400), bakeAt(350)]];
    expect(await shortest(smallNetwork([10, 20], { ovens, bakings: shared }))).toBe(30);
    // 10 to 20 at 350, 2 minutes to 400, 22 to 42. The other way round: 12 to 32, 5 to cool, 37 to 47.
    const apart = [[bakeAt(350)], [bakeAt(400)]];
    expect(await shortest(smallNetwork([10, 20], { ovens, bakings: apart }))).toBe(42);
  });

  it("[H9] takes the second oven, and the racks there are", async () => {
    // Two of three go in together from 0; the third waits for a rack, or for the other oven to be hot at 10.
    const bakings = [0, 1, 2].map(() => [bakeAt(350), { ...bakeAt(350), oven: 1 }]);
    const ovens = [smallOven(350), smallOven(70)];
    expect(await shortest(smallNetwork([15, 15, 15], { ovens, bakings }))).toBe(25);
  });

  it("[H9] leaves what runs where it is: the oven was hot for it", async () => {
    const network = smallNetwork([10], {
      earliest: [-4],
      latest: [-4],
      ovens: [smallOven(70)],
      bakings: [[bakeAt(350)]],
    });
    expect(await shortest(network)).toBe(6);
  });

  it("[H9] proves 55 for six jobs on six machines", async () => {
    const read = readInstance("ft06.txt", fisherThompson6);
    if (!read.ok) throw new Error(read.error);
    expect(await shortest(read.value)).toBe(55);
  });

  it("[H9] stops when its time is up", async () => {
    const stopped = await exactEnd(smallNetwork([3]), 3, 1);
    expect(stopped).toEqual({ outcome: "unfinished", end: null, timetable: null });
  });
});
