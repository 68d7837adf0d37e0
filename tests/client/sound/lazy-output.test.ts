import { describe, expect, it } from "vitest";
import type { AudioOutput } from "../../../client/sound/audio-output.ts";
import { lazyOutput } from "../../../client/sound/lazy-output.ts";

const at44 = (
  rings: { readonly samples: Float32Array; readonly gain: number }[],
  stops: string[],
): AudioOutput => ({
  state: () => "ready",
  onState: () => () => undefined,
  unlock: async () => "ready",
  sampleRate: () => 44_100,
  playSpeech: () => ({ ended: Promise.resolve("ended"), stop: () => undefined }),
  playTone: () => undefined,
  startRing: (samples, { gain }) => {
    rings.push({ samples, gain });
    return { loudness: () => undefined, stop: () => stops.push("stopped") };
  },
  ringBus: () => undefined,
});
const shape = { periodMs: 1000, gain: 0.2, atEpochMs: 0 };
const sine = (rate: number): Float32Array =>
  Float32Array.from({ length: rate }, (_, index) => Math.sin((2 * Math.PI * 440 * index) / rate));
const crossings = (samples: Float32Array): number =>
  samples.filter((value, index) => value >= 0 && (samples[index - 1] ?? 0) < 0).length;

describe("[W30] sound that comes after the page", () => {
  it("[W30] a ring that began before the sound was there begins with it, as loud as it has become, and in tune", async () => {
    const rings: { samples: Float32Array; gain: number }[] = [];
    const output = lazyOutput(async () => at44(rings, []));
    expect(output.state()).toBe("locked");
    const ring = output.startRing(sine(48_000), shape);
    ring.loudness(0.6);
    expect(await output.unlock()).toBe("ready");
    expect(rings.map(({ gain }) => gain)).toEqual([0.6]);
    const [begun] = rings;
    // One second of 440 Hz, at whichever rate.
    expect(begun?.samples.length).toBe(44_100);
    expect(Math.abs(crossings(begun?.samples ?? new Float32Array()) - 440)).toBeLessThanOrEqual(1);
  });

  it("[W30] a ring that was stopped meanwhile never begins", async () => {
    const rings: { samples: Float32Array; gain: number }[] = [];
    const output = lazyOutput(async () => at44(rings, []));
    output.startRing(sine(48_000), shape).stop();
    await output.unlock();
    expect(rings).toEqual([]);
  });

  it("[W30] where the sound cannot be fetched the page stays locked and speech fails over", async () => {
    const output = lazyOutput(async () => Promise.reject(new Error("away")));
    expect(await output.unlock()).toBe("locked");
    expect(await output.playSpeech(new Uint8Array(), 1, () => undefined).ended).toBe("failed");
  });
});
