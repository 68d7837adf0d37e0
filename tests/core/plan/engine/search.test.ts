import { describe, expect, it } from "vitest";
import type { Network } from "../../../../core/plan/engine/network.ts";
import { search } from "../../../../core/plan/engine/search.ts";
import { faultsOf } from "../../../scheduling/check-timetable.ts";
import { instancesFolder, readSet } from "../../../scheduling/instances.ts";
import { bestKnown } from "../../../scheduling/read-optima.ts";
import { madeUpMeals } from "../../../scheduling/made-up-networks.ts";
import { keptOptima, provedEnd } from "../../../scheduling/made-up-optima.ts";
import { allOf, bakeAt, smallNetwork, smallOven } from "../../../scheduling/small-network.ts";
import { tinyNetwork } from "../../../scheduling/tiny-networks.ts";

const found = (network: Network, schedules: number, seed = 1) => search(network, { seed, schedules });

/** The same acts under other numbers. */
function renumbered(network: Network, place: (act: number) => number): Network {
  const order = network.lengths.map((_, act) => act).sort((a, b) => place(a) - place(b));
  const at = new Map(order.map((act, index) => [act, index]));
  const moved = <T>(all: readonly T[]): T[] => order.flatMap((act) => all.slice(act, act + 1));
  return {
    ...network,
    lengths: moved(network.lengths),
    earliest: moved(network.earliest),
    latest: moved(network.latest),
    uses: moved(network.uses),
    tending: moved(network.tending),
    bakings: moved(network.bakings),
    lags: network.lags.map(({ from, to, least }) => ({
      from: at.get(from) ?? 0,
      to: at.get(to) ?? 0,
      least,
    })),
  };
}

describe("the search for a soon end, over made-up meals", () => {
  const kept = keptOptima();
  const results = madeUpMeals.map((meal) => ({ meal, result: found(meal.network, 1500) }));

  it("[P61] keeps every limit of each meal", () => {
    for (const { meal, result } of results) {
      const faults = result.timetable === null ? ["none"] : faultsOf(meal.network, result.timetable);
      expect({ meal: meal.name, faults }).toEqual({ meal: meal.name, faults: [] });
    }
  });

  // The optima were proved by another solver: tests/scheduling/exact, MiniZinc's Chuffed.
  it("[P63] ends within two hundredths of the proved optima, never before one, and is right about what it proves", () => {
    const gaps = results.map(({ meal, result }) => {
      const optimum = provedEnd(kept, meal) ?? NaN;
      if (result.proven === "optimal")
        expect({ meal: meal.name, end: result.end }).toEqual({ meal: meal.name, end: optimum });
      return result.end / optimum - 1;
    });
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(0);
    expect(gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length).toBeLessThan(0.02);
    expect(results.filter(({ result }) => result.proven === "optimal").length).toBeGreaterThan(22);
  });

  it("[P62] gives the same timetable for the same seed and number of schedules", () => {
    for (const { meal, result } of results.slice(0, 6)) expect(found(meal.network, 1500)).toEqual(result);
  });
});

describe("the search for a soon end, over tiny networks", () => {
  const seeds = Array.from({ length: 150 }, (_, seed) => seed + 1);

  it("[P64] finds an end no later where there is one more of a thing", () => {
    for (const seed of seeds) {
      const network = tinyNetwork(seed);
      const before = found(network, 3000);
      const more = network.capacities.map((count, thing) => (thing === 1 ? count + 1 : count));
      const after = found({ ...network, capacities: more }, 3000);
      expect([before.proven, after.proven]).not.toContain("open");
      if (before.proven === "optimal") expect(after.proven).toBe("optimal");
      if (before.proven === "optimal") expect(after.end).toBeLessThanOrEqual(before.end);
    }
  });

  it("[P68] finds the same end in whatever order the acts are told", () => {
    for (const seed of seeds) {
      const network = tinyNetwork(seed);
      const { proven, end } = found(network, 3000);
      const turned = found(
        renumbered(network, (act) => (act * 7 + seed) % 5),
        3000,
      );
      expect({ seed, proven: turned.proven }).toEqual({ seed, proven });
      if (proven === "optimal") expect(turned.end).toBe(end);
    }
  });
});

describe("a search with little room", () => {
  it("[P67] says that limits contradict each other, and that no schedule can keep them", () => {
    const circle = smallNetwork([5, 5], {
      lags: [
        { from: 0, to: 1, least: 5 },
        { from: 1, to: 0, least: -3 },
      ],
    });
    expect(found(circle, 100)).toMatchObject({ proven: "impossible", timetable: null });
    const uses = [[allOf(0, 5)], [allOf(0, 5)]];
    const tight = smallNetwork([5, 5], { capacities: [1], uses, latest: [3, 3] });
    expect(found(tight, 1000)).toMatchObject({ proven: "impossible", timetable: null });
  });

  it("[P69] leaves what runs where it is, even where more runs than there is room for", () => {
    const uses = [[allOf(0, 6)], [allOf(0, 6)], [allOf(0, 2)]];
    const running = { earliest: [-2, -4, 0], latest: [-2, -4, Infinity] };
    const { timetable } = search(smallNetwork([6, 6, 2], { capacities: [2], uses, ...running }), {
      seed: 1,
      schedules: 1,
    });
    expect(timetable?.starts).toEqual([-2, -4, 2]);
  });

  it("[P62] builds one schedule even when its time is over", () => {
    const { schedules, timetable } = search(smallNetwork([3]), {
      seed: 1,
      schedules: 1000,
      isOver: () => true,
    });
    expect(schedules).toBeGreaterThanOrEqual(1);
    expect(timetable?.starts).toEqual([0]);
  });

  // Common practice, no source: a squash and a sauce at 365 F, and patties that stand 350 to 385 F, bake together.
  it("[P61] bakes at the one heat that all can have, instead of one after the other", () => {
    const bakings = [[bakeAt(365)], [bakeAt(350), bakeAt(365), bakeAt(385)]];
    const { timetable, end } = found(smallNetwork([40, 25], { ovens: [smallOven(70)], bakings }), 200);
    expect(end).toBe(Math.ceil((365 - 70) / 28) + 40);
    expect(timetable?.bakings).toEqual([0, 1]);
  });
});

const folder = instancesFolder();
if (folder !== null) {
  describe("the search for a soon end, over the public instances on this machine", () => {
    const ofSet = (set: string) => readSet(`${folder}/${set}`).instances;

    // Kolisch, Schwindt & Sprecher (1999); Franck, Neumann & Schwindt (2001): sources and optima in SOURCES.md there.
    it("[P65] ends at the listed optimum of each project with maximum lags, and solves none that has no solution", () => {
      for (const { name, network, optimum } of ofSet("rcpsp-max")) {
        const { timetable, end, proven } = found(network, 30_000);
        const best = optimum === null ? null : bestKnown(optimum);
        const faults = timetable === null ? [] : faultsOf(network, timetable);
        const answer = { name, end: timetable === null ? null : end, faults };
        expect(answer).toEqual({ name, end: best, faults: [] });
        if (timetable === null) expect(proven).toBe("impossible");
      }
    });

    // Fisher & Thompson (1963), Lawrence (1984).
    it.each([
      ["ft06", 55],
      ["la01", 666],
      ["la05", 593],
    ])("[P65] ends job shop %s at %s", (name, optimum) => {
      const shop = ofSet("jobshop").find((one) => one.name.startsWith(name));
      if (shop === undefined) throw new Error(`${name} is not there`);
      expect(found(shop.network, 20_000)).toMatchObject({ end: optimum });
    });
  });
}
