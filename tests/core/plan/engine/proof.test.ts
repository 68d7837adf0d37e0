import { describe, expect, it } from "vitest";
import { endOfAll, type Network, type Timetable } from "../../../../core/plan/engine/network.ts";
import { beginProof, prove } from "../../../../core/plan/engine/proof/prove.ts";
import { faultsOf } from "../../../scheduling/check-timetable.ts";
import { readInstance } from "../../../scheduling/read-instances.ts";
import { fisherThompson6, smallNetwork } from "../../../scheduling/small-network.ts";
import { shortestByTrying, tinyNetwork } from "../../../scheduling/tiny-networks.ts";

// 4361: a baking was once ruled out by a span in which it did not have to run.
const seeds = [...Array.from({ length: 600 }, (_, index) => index + 1), 4361];
const enough = 16;

function endOf(network: Network, timetable: Timetable | null): number {
  return timetable === null ? Infinity : endOfAll(network, timetable.starts);
}

/** H. Fisher, G. L. Thompson (1963): the shortest end is 55. */
function sixJobs(): Network {
  const read = readInstance("ft06.txt", fisherThompson6);
  if (!read.ok) throw new Error(read.error);
  return read.value;
}

describe("the proof of a shortest timetable", () => {
  it("[P65] agrees with trying everything, on small networks with ovens, tending and bakings", () => {
    for (const seed of seeds) {
      const network = tinyNetwork(seed);
      const proof = prove(network, { conflicts: 10_000, known: null });
      const end = endOf(network, proof.timetable);
      expect({ seed, outcome: proof.outcome, end }).toEqual({
        seed,
        outcome: end === Infinity ? "impossible" : "optimal",
        end: shortestByTrying(network, Math.min(enough, end === Infinity ? enough : end)),
      });
    }
  });

  it("[P61] keeps everything that the network asks for", () => {
    for (const seed of seeds) {
      const network = tinyNetwork(seed);
      const { timetable } = prove(network, { conflicts: 10_000, known: null });
      if (timetable === null) continue;
      expect({ seed, faults: faultsOf(network, timetable) }).toEqual({ seed, faults: [] });
    }
  });

  it("[P62] gives the same answer and the same timetable every time", () => {
    for (const seed of seeds.slice(0, 100)) {
      const network = tinyNetwork(seed);
      expect(prove(network, { conflicts: 500, known: null })).toEqual(
        prove(network, { conflicts: 500, known: null }),
      );
    }
  });

  it("[P66] keeps a timetable that it was given when there is no shorter one", () => {
    for (const seed of seeds) {
      const network = tinyNetwork(seed);
      const first = prove(network, { conflicts: 10_000, known: null });
      if (first.timetable === null) continue;
      const again = prove(network, { conflicts: 10_000, known: first.timetable });
      expect({ seed, outcome: again.outcome }).toEqual({ seed, outcome: "optimal" });
      expect(again.timetable).toBe(first.timetable);
    }
  });

  it("[P66] takes in a better timetable while it runs", () => {
    const shop = sixJobs();
    const { timetable } = prove(shop, { conflicts: 10_000, known: null });
    const running = beginProof(shop, null, 0);
    expect(running.run(0).timetable).toBeNull();
    if (timetable !== null) running.improve(timetable);
    const proof = running.run(10_000);
    expect(proof.timetable).toBe(timetable);
    expect(proof.outcome).toBe("optimal");
  });

  it("[P66] never says more than it knows when it is stopped", () => {
    const shop = sixJobs();
    const all = Array.from({ length: 40 }, (_, conflicts) => prove(shop, { conflicts, known: null }));
    for (const { outcome, bound, timetable } of all) {
      expect(bound).toBeLessThanOrEqual(55);
      expect(endOf(shop, timetable)).toBeGreaterThanOrEqual(55);
      if (outcome !== "unfinished") expect(endOf(shop, timetable)).toBe(55);
    }
    const asked = prove(shop, { conflicts: 10_000, known: null, isOver: () => true });
    expect(asked.outcome).toBe("unfinished");
  });

  it("[P65] proves the published optimum of a shop of six machines", () => {
    const proof = prove(sixJobs(), { conflicts: 10_000, known: null });
    expect({ outcome: proof.outcome, bound: proof.bound }).toEqual({ outcome: "optimal", bound: 55 });
  });

  it("[P67] has nothing to do for no acts at all, and says so when lags contradict each other", () => {
    const none = smallNetwork([]);
    expect(prove(none, { conflicts: 10, known: null })).toMatchObject({ outcome: "optimal", bound: 0 });
    const impossible = smallNetwork([3], { lags: [{ from: 0, to: 0, least: 1 }] });
    expect(prove(impossible, { conflicts: 10, known: null })).toMatchObject({ outcome: "impossible" });
  });
});
