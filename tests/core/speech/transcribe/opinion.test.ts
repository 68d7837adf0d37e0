import { describe, expect, it } from "vitest";
import { expectation } from "../../../../core/speech/expectation.ts";
import type { ListeningMode } from "../../../../core/speech/recogniser.ts";
import {
  fitLimit,
  openLimit,
  opinionOf,
  stopLimit,
  wordsOf,
} from "../../../../core/speech/transcribe/opinion.ts";
import { type Candidate, rivalWithin } from "../../../../core/speech/transcribe/search.ts";
import { grammarOf, listenTo } from "../../../voice/grammars.ts";

const grammar = grammarOf("next step", "set a timer for fifteen minutes", "set a timer for fifty minutes");
const expected = (mode: ListeningMode = "addressed", address = "okay kitchen") =>
  expectation(listenTo(grammar, { address, mode }));

const candidate = (text: string, score: number): Candidate => ({ words: text.split(" "), score });
const found = (text: string, score: number, ...candidates: readonly Candidate[]) => ({
  free: { text, score },
  candidates,
  called: 0,
});

describe("an opinion", () => {
  it("[V54] one sentence near what the model would write is clear", () => {
    const heard = found("Okay kitchen, next stop.", -1, candidate("okay kitchen next step", -4));
    expect(opinionOf(heard, expected())).toEqual({
      kind: "clear",
      words: ["okay", "kitchen", "next", "step"],
      fit: 3,
      score: -4,
    });
  });

  it("[V54] several that are about as likely leave it torn, the likeliest first", () => {
    const fifteen = candidate("okay kitchen set a timer for fifteen minutes", -1);
    const fifty = candidate("okay kitchen set a timer for fifty minutes", -1 - rivalWithin + 0.1);
    const far = candidate("okay kitchen next step", -1 - rivalWithin - 0.1);
    expect(opinionOf(found("OK kitchen set a timer", -1, fifteen, fifty, far), expected())).toEqual({
      kind: "torn",
      between: [fifteen, fifty],
      fit: 0,
    });
    expect(opinionOf(found("OK kitchen set a timer", -1, fifteen, far), expected())).toMatchObject({
      kind: "clear",
    });
  });

  it("[V54] two ways to say the same are no rivals", () => {
    const one = candidate("okay kitchen set a timer for fifteen minutes", -1);
    const other = candidate("okay kitchen set a timer for one five minutes please", -1.5);
    expect(opinionOf(found("OK kitchen", -1, one, other), expected())).toMatchObject({
      kind: "clear",
      words: one.words,
    });
  });

  it.each([
    ["open", "next step", fitLimit.bare],
    ["stop-only", "next step", fitLimit.bare],
    ["addressed", "okay kitchen next step", fitLimit.addressed],
    ["open", "okay kitchen next step", fitLimit.addressed],
    ["stop-only", "okay kitchen next step", fitLimit.addressed],
  ] as const)("[V54] in mode %j %j counts up to a distance of %i", (mode, sentence, limit) => {
    const at = (fit: number) => found("next stop", 0, candidate(sentence, -fit));
    expect(opinionOf(at(limit), expected(mode)).kind).toBe("clear");
    expect(opinionOf(at(limit + 0.01), expected(mode))).toEqual({ kind: "other" });
  });

  it("[V54] without the address a sentence must come nearer than after it", () => {
    expect(fitLimit.bare).toBeLessThan(fitLimit.addressed);
  });

  it.each([
    ["open", "next step", 1, openLimit.score],
    ["open", "stop", 1, openLimit.oneWord.score],
    ["open", "stop", openLimit.oneWord.fit, -3.5],
    ["stop-only", "wait", 1, stopLimit.score],
    ["stop-only", "wait", stopLimit.fit, -5],
  ] as const)(
    "[V71] in mode %j %j at a distance of %d counts down to a score of %d: what nobody would write is another language",
    (mode, sentence, fit, least) => {
      const at = (score: number, distance: number = fit) =>
        opinionOf(found("vicino", score + distance, candidate(sentence, score)), expected(mode)).kind;
      expect(at(least)).toBe("clear");
      expect(at(least - 5)).toBe("other");
      expect(at(least, fit + 4.1)).toBe("other");
    },
  );

  it("[V71] after the address, and of several words while the caller speaks, it is not asked how likely a sentence is", () => {
    const at = (sentence: string, mode: ListeningMode) =>
      opinionOf(found("basta", -19, candidate(sentence, -20)), expected(mode)).kind;
    expect(at("okay kitchen next step", "open")).toBe("clear");
    expect(at("stop talking", "stop-only")).toBe("clear");
    expect(at("stop", "open")).toBe("other");
  });

  it("[V54] no sentence at all is none of ours", () => {
    expect(opinionOf(found("we drove along", -1), expected())).toEqual({ kind: "other" });
  });

  it("[V54] the address alone counts only where nothing else was written", () => {
    const alone = candidate("okay kitchen", -2);
    expect(opinionOf(found("OK, kitchen.", -1, alone), expected())).toMatchObject({
      kind: "clear",
      words: ["okay", "kitchen"],
    });
    expect(opinionOf(found("OK kitchen, the bridge", -1, alone), expected())).toEqual({ kind: "other" });
  });
});

describe("what was written", () => {
  it("[V50] the address is read as the grammar writes it, all else as it stands", () => {
    expect(wordsOf("OK, Kitchen! Next step, ok?", expected())).toEqual([
      "okay",
      "kitchen",
      "next",
      "step",
      "ok",
    ]);
  });
});
