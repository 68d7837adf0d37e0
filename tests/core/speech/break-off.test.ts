import { describe, expect, it } from "vitest";
import { createBreakOff } from "../../../core/speech/break-off.ts";
import { joinSamples, listeningRate } from "../../../core/speech/samples.ts";
import { samplesOf } from "../../bench/voice/conditions.ts";
import { speak, type Voice } from "../../voice/synthetic-voices.ts";

const isBroken = (sound: Float32Array): boolean => {
  const watch = createBreakOff(listeningRate);
  // In blocks, as they come.
  for (let at = 0; at < sound.length; at += 160) watch.hear(sound.subarray(at, at + 160));
  return watch.isBroken();
};
const tone = (seconds: number, level: number): Float32Array =>
  Float32Array.from({ length: seconds * listeningRate }, (_, at) => level * Math.sin(at * 0.3));
const dead = (seconds: number, value = 0): Float32Array =>
  new Float32Array(seconds * listeningRate).fill(value);

describe("sound that breaks off", () => {
  it("[V72] is loud to its last sample, then dead, whatever value it is dead at", () => {
    expect(isBroken(joinSamples([tone(1, 0.1), dead(0.2)]))).toBe(true);
    expect(isBroken(joinSamples([tone(1, 0.1), dead(0.2, 0.05)]))).toBe(true);
  });

  it("[V72] is not what dies away, what goes on, what was hardly there, or silence", () => {
    const dying = [0.1, 0.05, 0.02, 0.01].map((level) => tone(0.03, level));
    expect(isBroken(joinSamples([tone(1, 0.1), ...dying, dead(0.2)]))).toBe(false);
    expect(isBroken(joinSamples([tone(1, 0.1), tone(0.2, 0.001)]))).toBe(false);
    expect(isBroken(joinSamples([tone(1, 0.1), dead(0.05)])), "a gap in a wireless link").toBe(false);
    expect(isBroken(joinSamples([tone(1, 0.1), dead(0.2), tone(0.2, 0.1)])), "the link is back").toBe(false);
    expect(isBroken(joinSamples([tone(1, 0.0005), dead(0.2)]))).toBe(false);
    expect(isBroken(dead(1))).toBe(false);
  });

  it.each<Voice>(["slt", "rms", "awb", "kal16", "festival-slt", "festival-kal", "festival-ked"])(
    "[V72] %s: no whole sentence is, though digital silence follows it; most are that are cut in the middle",
    async (voice) => {
      const texts = [
        "stop",
        "set a timer for ten minutes",
        "what is left",
        "how much lemon juice",
        "next step please",
      ];
      const sounds = (await speak(voice, texts)).map(samplesOf);
      expect(sounds.map((sound) => isBroken(joinSamples([sound, dead(0.3)])))).toEqual(
        texts.map(() => false),
      );
      const cuts = sounds.flatMap((sound) => {
        const end = sound.findLastIndex((sample) => Math.abs(sample) > 0.01);
        return [0.4, 0.5, 0.6, 0.7].map((share) =>
          isBroken(joinSamples([sound.subarray(0, share * end), dead(0.3)])),
        );
      });
      expect(cuts.filter(Boolean).length).toBeGreaterThan(cuts.length / 2);
    },
  );
});
