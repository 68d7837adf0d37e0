import { describe, expect, it } from "vitest";
import type { Network, Timetable } from "../../../../core/plan/engine/network.ts";
import { faultsOf } from "../../../scheduling/check-timetable.ts";
import { allOf, bakeAt, smallNetwork, smallOven } from "../../../scheduling/small-network.ts";

function timetable(network: Network, starts: readonly number[], more: Partial<Timetable> = {}): Timetable {
  return {
    starts,
    bakings: network.lengths.map(() => 0),
    tended: network.lengths.map(() => []),
    ...more,
  };
}

const check = (network: Network, starts: readonly number[], more: Partial<Timetable> = {}) =>
  faultsOf(network, timetable(network, starts, more));

describe("the check of a timetable", () => {
  it("[H8] finds a timetable that is not of this network, or not of whole numbers", () => {
    const network = smallNetwork([5, 5]);
    expect(check(network, [0, 0])).toEqual([]);
    expect(check(network, [0])).toEqual(["the timetable does not speak of all 2 acts"]);
    expect(check(network, [0, 0.5])).toEqual(["a time is not a whole number"]);
    expect(check(network, [0, NaN])).toEqual(["a time is not a whole number"]);
  });

  it("[H8] finds an act that starts too early or too late", () => {
    const network = smallNetwork([5], { earliest: [3], latest: [4] });
    expect(check(network, [3])).toEqual([]);
    expect(check(network, [4])).toEqual([]);
    expect(check(network, [2])).toEqual(["act 0 starts at 2, not before 3 was asked"]);
    expect(check(network, [5])).toEqual(["act 0 starts at 5, not after 4 was asked"]);
  });

  it("[H8] finds a lag, minimum or maximum, that is not kept", () => {
    const lags = [
      { from: 0, to: 1, least: 5 },
      { from: 1, to: 0, least: -7 },
    ];
    const network = smallNetwork([5, 2], { lags });
    expect(check(network, [0, 5])).toEqual([]);
    expect(check(network, [0, 7])).toEqual([]);
    expect(check(network, [0, 4])).toEqual(["act 1 starts 4 after act 0, at least 5 was asked"]);
    expect(check(network, [0, 8])).toEqual(["act 0 starts -8 after act 1, at least -7 was asked"]);
  });

  it("[H8] finds more taken of a thing than there is, at the moment it happens", () => {
    const part = { thing: 0, amount: 2, from: 2, to: 4 };
    const network = smallNetwork([5, 4], { capacities: [2], uses: [[allOf(0, 5)], [part]] });
    expect(check(network, [0, 3])).toEqual([]);
    expect(check(network, [4, 0])).toEqual([]);
    expect(check(network, [0, 2])).toEqual(["at 4 acts 0, 1 take 3 of thing 0, there are 2"]);
    expect(check(network, [3, 0])).toEqual(["at 3 acts 0, 1 take 3 of thing 0, there are 2"]);
  });

  it("[H8] finds an act that is tended at the wrong time, too often or not at all", () => {
    const look = { thing: 0, length: 1, from: 4, to: 6 };
    const network = smallNetwork([10], { capacities: [1], tending: [[look]] });
    expect(check(network, [20], { tended: [[24]] })).toEqual([]);
    expect(check(network, [20], { tended: [[26]] })).toEqual([]);
    expect(check(network, [20], { tended: [[23]] })).toEqual([
      "act 0 is tended at 23, between 24 and 26 was asked",
    ]);
    expect(check(network, [20], { tended: [[27]] })).toHaveLength(1);
    expect(check(network, [20])).toEqual(["act 0 is tended 0 times, 1 times was asked"]);
    expect(check(network, [20], { tended: [[25, 25]] })).toContain(
      "act 0 is tended 2 times, 1 times was asked",
    );
  });

  it("[H8] counts tending and uses of one thing together", () => {
    const look = { thing: 0, length: 2, from: 4, to: 6 };
    const network = smallNetwork([10, 3], {
      capacities: [1],
      uses: [[], [allOf(0, 3)]],
      tending: [[look], []],
    });
    expect(check(network, [0, 6], { tended: [[4], []] })).toEqual([]);
    expect(check(network, [0, 5], { tended: [[4], []] })).toEqual([
      "at 5 acts 0, 1 take 2 of thing 0, there are 1",
    ]);
  });
});

describe("the check of a timetable with an oven", () => {
  const two = (temperature: number | null): Network =>
    smallNetwork([10, 20], {
      ovens: [smallOven(temperature)],
      bakings: [[bakeAt(350)], [bakeAt(400), bakeAt(350)]],
    });

  it("[H8] finds a baking that is not one of the act's own", () => {
    const network = smallNetwork([10, 5], { ovens: [smallOven(null)], bakings: [[bakeAt(350)], []] });
    expect(check(network, [0, 0])).toEqual([]);
    expect(check(network, [0, 0], { bakings: [1, 0] })).toEqual(["act 0 has no baking 1"]);
    expect(check(network, [0, 0], { bakings: [-1, 0] })).toEqual(["act 0 has no baking -1"]);
    expect(check(network, [0, 0], { bakings: [0, 1] })).toEqual(["act 1 bakes, and it needs no oven"]);
  });

  it("[H8] finds two heats at once", () => {
    expect(check(two(null), [0, 0], { bakings: [0, 1] })).toEqual([]);
    expect(check(two(null), [0, 5])).toEqual([
      "acts 0 and 1 are in one oven together at 350 and 400 degrees",
    ]);
  });

  it("[H8] finds a change of heat that is too quick, up and down", () => {
    expect(check(two(null), [0, 12])).toEqual([]);
    expect(check(two(null), [0, 11])).toEqual([
      "acts 0 and 1 bake at 350 and 400 degrees with only 1 between them",
    ]);
    expect(check(two(null), [25, 0])).toEqual([]);
    expect(check(two(null), [24, 0])).toEqual([
      "acts 1 and 0 bake at 400 and 350 degrees with only 4 between them",
    ]);
  });

  it("[H8] finds an oven that is not hot yet, nor cool yet", () => {
    const one = (temperature: number | null) =>
      smallNetwork([10], { ovens: [smallOven(temperature)], bakings: [[bakeAt(350)]] });
    expect(check(one(null), [0])).toEqual([]);
    expect(check(one(350), [0])).toEqual([]);
    expect(check(one(70), [10])).toEqual([]);
    expect(check(one(70), [9])).toEqual(["act 0 goes in at 9 at 350 degrees, the oven is at 70 at 0"]);
    expect(check(one(375), [3])).toEqual([]);
    expect(check(one(375), [2])).toEqual(["act 0 goes in at 2 at 350 degrees, the oven is at 375 at 0"]);
  });

  it("[H8] believes what runs already that the oven was hot", () => {
    const network = smallNetwork([10], {
      earliest: [-4],
      ovens: [smallOven(70)],
      bakings: [[bakeAt(350)]],
    });
    expect(check(network, [-4])).toEqual([]);
    expect(check(network, [0])).toHaveLength(1);
  });

  it("[H8] finds more on the racks than there are racks", () => {
    const bakings = [bakeAt(350), bakeAt(350), { ...bakeAt(350), racks: 2 }].map((baking) => [baking]);
    const network = smallNetwork([10, 10, 10], { ovens: [smallOven(null)], bakings });
    expect(check(network, [0, 0, 10])).toEqual([]);
    expect(check(network, [0, 0, 9])).toEqual([
      "at 9 acts 0, 1, 2 take 4 of the racks of oven 0, there are 2",
    ]);
  });

  it("[H8] lets two ovens be at two heats", () => {
    const network = smallNetwork([10, 10], {
      ovens: [smallOven(null), smallOven(null)],
      bakings: [[bakeAt(350)], [{ ...bakeAt(400), oven: 1 }]],
    });
    expect(check(network, [0, 0])).toEqual([]);
  });
});
