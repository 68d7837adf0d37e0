import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { beginCheck, type CheckResult, type EarCheck } from "../../../../core/speech/check/ear-check.ts";
import { checkSentences } from "../../../../core/speech/check/check-sentences.ts";
import { findingsOf } from "../../../../core/speech/check/ear-findings.ts";
import { findingWords } from "../../../../core/speech/check/finding-words.ts";
import { proposedTuning } from "../../../../core/speech/check/proposed-tuning.ts";
import type { Outcome } from "../../../../core/speech/check/judge-sentence.ts";
import type { SentenceLevels } from "../../../../core/speech/sentence-levels.ts";
import { tuningLimits } from "../../../../core/speech/tuning-limits.ts";
import { usualTuning } from "../../../../core/speech/tuning.ts";

const address = "listen kitchen";
const sounding = (voiceDb: number, noiseDb: number | null = -80): SentenceLevels => ({
  voiceDb,
  bandDb: voiceDb - 5,
  peakDb: voiceDb + 14,
  noiseDb,
});
const right: Outcome = { kind: "right" };
const lost: Outcome = { kind: "address-lost", heard: "yes please" };
const nothing: Outcome = { kind: "nothing" };

const ended = (results: readonly CheckResult[], more: Partial<EarCheck> = {}): EarCheck => ({
  ...beginCheck(address, checkSentences({ dishes: [], foods: [] }), 0),
  results,
  phase: { kind: "over" },
  ...more,
});
const five = (outcome: Outcome, levels: SentenceLevels | null): readonly CheckResult[] =>
  Array.from({ length: 5 }, () => ({ outcome, levels }));
const wordsOf = (check: EarCheck) => findingWords(findingsOf(check, null), check.address);

describe("what a check would set", () => {
  it("[V84] brings a soft voice to -26 dBFS, as far as 20 dB, with the limit between it and the noise", () => {
    expect(proposedTuning(sounding(-40), null)).toEqual({
      kind: "tune",
      tuning: { gainDb: 14, quietestDb: -62 },
    });
    const faint = proposedTuning(sounding(-58), null);
    expect(faint).toEqual({ kind: "tune", tuning: { gainDb: 20, quietestDb: -57 } });
  });

  it("[V84] makes a loud voice softer, by 6 dB at most", () => {
    expect(proposedTuning(sounding(-14), null)).toMatchObject({ kind: "tune", tuning: { gainDb: -6 } });
  });

  it("[V84] leaves a voice alone that comes in well, or of which nothing was heard", () => {
    expect(proposedTuning(sounding(-26), null)).toEqual({ kind: "as-it-is" });
    expect(proposedTuning(sounding(-25, null), null)).toEqual({ kind: "as-it-is" });
    expect(proposedTuning(null, null)).toEqual({ kind: "unknown" });
  });

  it("[V84] leaves what an earlier check has set where that still fits, and takes it back where the voice does without", () => {
    const before = { gainDb: 14, quietestDb: -62 };
    expect(proposedTuning(sounding(-41), before)).toEqual({ kind: "as-it-is" });
    expect(proposedTuning(sounding(-34), before)).toMatchObject({ kind: "tune", tuning: { gainDb: 8 } });
    expect(proposedTuning(sounding(-26), before)).toEqual({ kind: "back-to-usual" });
    const found = findingsOf(ended(five(right, sounding(-26))), before);
    expect(findingWords(found, address).at(-1)).toBe(
      "Kept, this forgets what an earlier check has set: your voice does without it.",
    );
  });

  it("[V84] never lifts noise: where it lies close under a soft voice no gain is set", () => {
    expect(proposedTuning(sounding(-45, -58), null)).toEqual({ kind: "too-noisy" });
    expect(proposedTuning(sounding(-26, -38), null)).toEqual({ kind: "as-it-is" });
  });

  it("[V84] whatever was measured: within its limits, never into full scale, and noise alone stays below", () => {
    const level = fc.double({ min: -90, max: 0, noNaN: true });
    fc.assert(
      fc.property(level, level, level, (voiceDb, noiseDb, peakAbove) => {
        const levels = {
          voiceDb,
          bandDb: voiceDb - 5,
          peakDb: Math.min(0, voiceDb - peakAbove / 4),
          noiseDb,
        };
        const proposal = proposedTuning(levels, null);
        if (proposal.kind !== "tune") return;
        const { gainDb, quietestDb } = proposal.tuning;
        expect(gainDb).toBeGreaterThanOrEqual(tuningLimits.gainDb[0]);
        expect(gainDb).toBeLessThanOrEqual(tuningLimits.gainDb[1]);
        expect(quietestDb).toBeGreaterThanOrEqual(tuningLimits.quietestDb[0]);
        expect(quietestDb).toBeLessThanOrEqual(tuningLimits.quietestDb[1]);
        if (gainDb > 0) {
          expect(levels.peakDb + gainDb).toBeLessThanOrEqual(0);
          expect(noiseDb + gainDb).toBeLessThan(quietestDb);
          expect(levels.bandDb + gainDb).toBeGreaterThan(quietestDb);
        }
      }),
      { seed: 7, numRuns: 2_000 },
    );
  });

  it("[V84] is for the voice that was understood, not for what else was heard", () => {
    const results = [
      { outcome: right, levels: sounding(-45) },
      { outcome: { kind: "other", heard: "the news at six" }, levels: sounding(-12) },
      { outcome: right, levels: sounding(-43) },
      { outcome: nothing, levels: null },
      { outcome: right, levels: sounding(-44) },
    ] as const;
    expect(findingsOf(ended(results), null).levels).toEqual(sounding(-44));
  });
});

describe("what a check has found", () => {
  it("[V85] another address is offered where this one was lost twice, and not before", () => {
    const once = [{ outcome: lost, levels: null }, ...five(right, sounding(-26)).slice(1)];
    expect(findingsOf(ended(once), null).offers).toEqual([]);
    const twice = [...once.slice(0, 4), { outcome: lost, levels: null }];
    const found = findingsOf(ended(twice), null);
    expect(found.addressLost).toBe(2);
    expect(found.offers.length).toBeGreaterThan(0);
    expect(found.offers).not.toContain(address);
    expect(wordsOf(ended(twice)).at(-1)).toBe(
      "“listen kitchen” was missed in two sentences: another name may be heard better.",
    );
    const other = findingsOf(ended(twice, { address: found.offers[0] ?? "" }), null);
    expect([other.offers.length, other.offers.includes(found.offers[0] ?? "")]).toEqual([2, false]);
  });

  it("[V86] is told in plain sentences", () => {
    expect(wordsOf(ended(five(right, sounding(-26))))).toEqual([
      "All five sentences were heard right.",
      "Your voice comes in well.",
      "The room is quiet.",
      "The ear suits you as it is: nothing needs to change.",
    ]);
    const soft = [...five(right, sounding(-45)).slice(1), { outcome: nothing, levels: null }];
    expect(wordsOf(ended(soft))).toEqual([
      "Four of five sentences were heard right.",
      "Your voice comes in softly.",
      "The room is quiet.",
      "Kept, this makes the ear more sensitive to you.",
    ]);
  });

  it("[V86] a loud room is told, with a voice in it and without", () => {
    const shouting = wordsOf(ended(five(right, sounding(-26, -34))));
    expect(shouting).toContain(
      "The room is too loud to hear you: turn the fan or tap down, or come closer, then check again.",
    );
    const drowned = wordsOf(ended(five(nothing, null), { floorsDb: [-30, -30, -31] }));
    expect(drowned).toContain("No voice was heard over the noise.");
    expect(drowned).toContain(
      "The room is too loud to hear you: turn the fan or tap down, or come closer, then check again.",
    );
  });

  it("[V86] a microphone that hears nothing and one that is overloaded are told with what to do", () => {
    expect(wordsOf(ended(five(nothing, null), { floorsDb: [-90] }))[1]).toMatch(
      /^No voice was heard: see that/,
    );
    const loud = wordsOf(ended(five(right, { ...sounding(-12), peakDb: 0 })));
    expect(loud.some((sentence) => sentence.startsWith("Your voice overloads the microphone"))).toBe(true);
    expect(wordsOf(ended([]))).toEqual(["No sentence was said, so nothing was found out."]);
  });

  it("[V86] the limit that is usual is within what can be set", () => {
    expect(usualTuning.quietestDb).toBeGreaterThan(tuningLimits.quietestDb[0]);
    expect(usualTuning.quietestDb).toBeLessThan(tuningLimits.quietestDb[1]);
  });
});
