import { describe, expect, it } from "vitest";
import { expectation } from "../../../../core/speech/expectation.ts";
import type { ListeningMode } from "../../../../core/speech/recogniser.ts";
import {
  fitLimit,
  openLimit,
  opinionOf,
  rivalWithin,
  stopLimit,
  wordsOf,
} from "../../../../core/speech/transcribe/opinion.ts";
import type { Candidate } from "../../../../core/speech/transcribe/search.ts";
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
    expect(opinionOf(heard, expected(), "quick")).toEqual({
      kind: "clear",
      words: ["okay", "kitchen", "next", "step"],
      fit: 3,
      score: -4,
    });
  });

  it("[V54] several that are about as likely leave it torn, the likeliest first", () => {
    const fifteen = candidate("okay kitchen set a timer for fifteen minutes", -1);
    const fifty = candidate("okay kitchen set a timer for fifty minutes", -1 - rivalWithin.quick + 0.1);
    const far = candidate("okay kitchen next step", -1 - rivalWithin.quick - 0.1);
    expect(opinionOf(found("OK kitchen set a timer", -1, fifteen, fifty, far), expected(), "quick")).toEqual({
      kind: "torn",
      between: [fifteen, fifty],
      fit: 0,
    });
    expect(opinionOf(found("OK kitchen set a timer", -1, fifteen, far), expected(), "quick")).toMatchObject({
      kind: "clear",
    });
  });

  it("[V54] two ways to say the same are no rivals", () => {
    const one = candidate("okay kitchen set a timer for fifteen minutes", -1);
    const other = candidate("okay kitchen set a timer for one five minutes please", -1.5);
    expect(opinionOf(found("OK kitchen", -1, one, other), expected(), "quick")).toMatchObject({
      kind: "clear",
      words: one.words,
    });
  });

  it.each([
    ["open", "next step", fitLimit.bare],
    ["stop-only", "next step", fitLimit.bare],
    ["addressed", "okay kitchen next step", fitLimit.addressed.quick],
    ["open", "okay kitchen next step", fitLimit.addressed.quick],
    ["stop-only", "okay kitchen next step", fitLimit.addressed.quick],
  ] as const)("[V54] in mode %j %j counts up to a distance of %i", (mode, sentence, limit) => {
    const at = (fit: number) => found("next stop", 0, candidate(sentence, -fit));
    expect(opinionOf(at(limit), expected(mode), "quick").kind).toBe("clear");
    expect(opinionOf(at(limit + 0.01), expected(mode), "quick")).toEqual({ kind: "other" });
  });

  it("[V54] without the address a sentence must come nearer than after it", () => {
    expect(fitLimit.bare).toBeLessThan(fitLimit.addressed.quick);
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
        opinionOf(found("vicino", score + distance, candidate(sentence, score)), expected(mode), "quick")
          .kind;
      expect(at(least)).toBe("clear");
      expect(at(least - 5)).toBe("other");
      expect(at(least, fit + 4.1)).toBe("other");
    },
  );

  it("[V71] after the address, and of several words while the caller speaks, it is not asked how likely a sentence is", () => {
    const at = (sentence: string, mode: ListeningMode) =>
      opinionOf(found("basta", -19, candidate(sentence, -20)), expected(mode), "quick").kind;
    expect(at("okay kitchen next step", "open")).toBe("clear");
    expect(at("stop talking", "stop-only")).toBe("clear");
    expect(at("stop", "open")).toBe("other");
  });

  it("[V78] of the large network a sentence may lie further away, and a rival must come nearer", () => {
    const sentence = "okay kitchen next step";
    const [best, other] = [candidate(sentence, -1), candidate("okay kitchen next stop", -4)];
    const far = found("OK kitchen next tip", fitLimit.addressed.careful, candidate(sentence, 0));
    expect(opinionOf(far, expected(), "quick").kind).toBe("other");
    expect(opinionOf(far, expected(), "careful").kind).toBe("clear");
    const near = found("OK kitchen next tip", 0, best, other);
    expect(opinionOf(near, expected(), "quick").kind).toBe("torn");
    expect(opinionOf(near, expected(), "careful").kind).toBe("clear");
  });

  it("[V78] but a teen and its tens are rivals as far as before", () => {
    const [fifteen, fifty] = ["fifteen", "fifty"].map(
      (number) => `okay kitchen set a timer for ${number} minutes`,
    );
    const numbers = found("OK kitchen", 0, candidate(fifteen ?? "", -1), candidate(fifty ?? "", -4.5));
    expect(opinionOf(numbers, expected(), "careful").kind).toBe("torn");
  });

  it("[V78] what a network wrote freely itself fits, however fast it was said", () => {
    const heard = found("OK, Kitchen! Next step.", -1, candidate("okay kitchen next step", -15));
    expect(opinionOf(heard, expected(), "quick")).toMatchObject({ kind: "clear", fit: 0 });
  });

  it("[V78] a sentence of less than half of what was written is none of ours", () => {
    const short = candidate("okay kitchen stop", -3);
    const heard = (text: string) => opinionOf(found(text, -1, short), expected(), "careful").kind;
    expect(heard("OK kitchen, stop all of that now")).toBe("clear");
    expect(heard("OK kitchen, stop the people on the river")).toBe("other");
  });

  it("[V54] no sentence at all is none of ours", () => {
    expect(opinionOf(found("we drove along", -1), expected(), "quick")).toEqual({ kind: "other" });
  });

  it("[V54] the address alone counts only where nothing else was written", () => {
    const alone = candidate("okay kitchen", -2);
    expect(opinionOf(found("OK, kitchen.", -1, alone), expected(), "quick")).toMatchObject({
      kind: "clear",
      words: ["okay", "kitchen"],
    });
    expect(opinionOf(found("OK kitchen, the bridge", -1, alone), expected(), "quick")).toEqual({
      kind: "other",
    });
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
