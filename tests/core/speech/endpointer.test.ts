import { describe, expect, it } from "vitest";
import { type EndpointerStep, initialEndpointer, stepEndpointer } from "../../../core/speech/endpointer.ts";
import { frameMs } from "../../../core/speech/samples.ts";

type Stretch = readonly [ms: number, db: number, voice?: number];

/** Stretches of one level, with a wobble of a decibel as real noise has; without a third number by level alone. */
function listen(
  stretches: readonly Stretch[],
  hangoverMs = 300,
): readonly (EndpointerStep & { at: number })[] {
  let state = initialEndpointer;
  const steps: (EndpointerStep & { at: number })[] = [];
  for (const [ms, db, voice = null] of stretches) {
    for (let at = 0; at < ms / frameMs; at++) {
      const { state: next, step } = stepEndpointer(
        state,
        { levelDb: db + (at % 3) * 0.5 - 0.5, voice },
        hangoverMs,
      );
      if (["started", "louder", "ended"].includes(step.kind))
        steps.push({ ...step, at: state.frame * frameMs });
      state = next;
    }
  }
  return steps;
}

describe("endpointer", () => {
  it("[V6] speech keeps 300 ms from before it and ends after the quiet asked for", () => {
    expect(
      listen([
        [1000, -60],
        [800, -25],
        [1000, -60],
      ]),
    ).toEqual([
      { kind: "started", from: 50 + 4 - 8 - 15, at: 1060 },
      { kind: "ended", lastLoud: 89, why: "quiet", at: 2080 },
    ]);
  });

  it("[V6] a clink of 60 ms is no speech", () => {
    expect(
      listen([
        [1000, -60],
        [60, -10],
        [1000, -60],
      ]),
    ).toEqual([]);
  });

  it("[V6] a gap shorter than the quiet asked for does not end it", () => {
    expect(
      listen([
        [1000, -60],
        [300, -25],
        [240, -60],
        [300, -25],
        [1000, -60],
      ]).map(({ kind }) => kind),
    ).toEqual(["started", "ended"]);
  });

  it("[V6] digital silence and a whisper below the quietest level begin nothing", () => {
    expect(
      listen([
        [500, -Infinity],
        [1000, -70],
        [500, -Infinity],
      ]),
    ).toEqual([]);
  });

  it("[V6] speech from the very first frame is heard", () => {
    expect(
      listen([
        [600, -25],
        [600, -65],
      ])[0],
    ).toEqual({ kind: "started", from: 0, at: 60 });
  });

  it("[V7] a tap that is turned on ends as speech within about two seconds and stays quiet", () => {
    const steps = listen([
      [1000, -60],
      [6000, -35],
    ]);
    expect(steps.map(({ kind }) => kind)).toEqual(["started", "ended"]);
    expect(steps[1]?.at).toBeLessThan(3600);
  });

  it("[V7] speech above a running tap begins and ends", () => {
    const steps = listen([
      [6000, -35],
      [800, -22],
      [1000, -35],
    ]).filter(({ at }) => at > 5000);
    expect(steps.map(({ kind }) => kind)).toEqual(["started", "ended"]);
    expect(steps[1]?.at).toBe(7080);
  });

  it("[V8] the same pause ends a complete sentence and not one that must go on", () => {
    const pause = [
      [1000, -60],
      [500, -25],
      [400, -60],
    ] as const;
    expect(listen(pause, 200).map(({ kind }) => kind)).toEqual(["started", "ended"]);
    expect(listen(pause, 900).map(({ kind }) => kind)).toEqual(["started"]);
  });

  it("[V8] an utterance without end is cut at the limit", () => {
    const endless = Array.from(
      { length: 40 },
      () =>
        [
          [300, -20],
          [100, -60],
        ] as const,
    ).flat();
    expect(listen([[1000, -60], ...endless])[1]).toMatchObject({ kind: "ended", why: "too-long" });
  });

  it("[V65] a tap that is turned on and a clatter are no voice and begin nothing, however loud", () => {
    expect(
      listen([
        [1000, -60, 0.01],
        [3000, -25, 0.2],
        [200, -8, 0.4],
        [1000, -60, 0.01],
      ]),
    ).toEqual([]);
  });

  it("[V65] a voice no louder than the tap is heard, its soft words too, and its end", () => {
    const steps = listen([
      [4000, -35, 0.01],
      [300, -33, 0.9],
      [500, -36, 0.6],
      [300, -34, 0.9],
      [1000, -35, 0.02],
    ]);
    expect(steps.map(({ kind }) => kind)).toEqual(["started", "ended"]);
    expect(steps[1]).toMatchObject({ lastLoud: (4000 + 1100) / frameMs - 1, why: "quiet" });
  });

  it("[V65] in a quiet room the level ends it, while what the voice left behind still passes for one", () => {
    const steps = listen([
      [1000, -65, 0.01],
      [800, -25, 0.95],
      [120, -64, 0.8],
      [1000, -65, 0.02],
    ]);
    expect(steps[1]).toMatchObject({ kind: "ended", lastLoud: (1000 + 800) / frameMs - 1 });
  });

  it("[V65] a voice too far away to be meant for us begins nothing", () => {
    expect(
      listen([
        [1000, -80, 0.01],
        [1000, -70, 0.9],
      ]),
    ).toEqual([]);
  });

  const radio = [3000, -36, 0.9] as const;
  const cook = [900, -24, 0.9] as const;

  it("[V73] a cook who speaks over a radio is a louder voice, and ends where only the radio goes on", () => {
    const [, louder, ended] = listen([[1000, -60, 0.01], radio, cook, radio]);
    expect(louder).toMatchObject({ kind: "louder", from: 200 + 4 - 8 - 15 });
    expect(ended).toMatchObject({ kind: "ended", why: "quiet", lastLoud: 244 });
  });

  it("[V73] one voice that is a little louder now and then is one voice, and so is a clatter over it", () => {
    const kinds = (stretch: Stretch): readonly string[] =>
      listen([[1000, -60, 0.01], radio, stretch, radio, [1000, -60, 0.01]]).map(({ kind }) => kind);
    expect(kinds([900, -32, 0.9])).toEqual(["started", "ended"]);
    expect(kinds([200, -20, 0.1])).toEqual(["started", "ended"]);
    // "Listen kitchen" takes a second, and what follows it may be said with more stress.
    const call: readonly Stretch[] = [[1000, -60, 0.01], [1000, -36, 0.9], cook, [1000, -60, 0.01]];
    expect(listen(call).map(({ kind }) => kind)).toEqual(["started", "ended"]);
  });

  it("[V73] a radio fills no limit while the cook speaks over it", () => {
    const steps = listen([[1000, -60, 0.01], [11_500, -36, 0.9], [2000, -24, 0.9], radio]);
    expect(steps.map(({ kind }) => kind).slice(0, 3)).toEqual(["started", "louder", "ended"]);
    expect(steps[2]).toMatchObject({ why: "quiet" });
  });

  it("[V73] a third voice is louder than the second only where it stands above that too", () => {
    const guest = [2500, -30, 0.9] as const;
    const louder = (...stretches: readonly Stretch[]): number =>
      listen([[1000, -60, 0.01], ...stretches]).filter(({ kind }) => kind === "louder").length;
    expect(louder([3000, -42, 0.9], guest, [900, -18, 0.9])).toBe(2);
    expect(louder([3000, -42, 0.9], guest, [900, -28, 0.9])).toBe(1);
  });
});
