import { describe, expect, it } from "vitest";
import { checkGrammar, checkSentences } from "../../../../core/speech/check/check-sentences.ts";
import {
  beginCheck,
  type CheckInput,
  checkTimes,
  type EarCheck,
  evolveCheck,
  sentenceNow,
} from "../../../../core/speech/check/ear-check.ts";
import { type CheckedUtterance, judgeSentence } from "../../../../core/speech/check/judge-sentence.ts";
import { progressThrough } from "../../../../core/speech/progress.ts";
import { toAutomaton } from "../../../../core/speech/automaton.ts";
import type { SentenceLevels } from "../../../../core/speech/sentence-levels.ts";
import { spokenWords } from "../../../../core/speech/spoken-words.ts";
import type { Verdict } from "../../../../core/speech/verdict.ts";
import { grammarOf } from "../../../voice/grammars.ts";

const address = "listen kitchen";
const sentences = checkSentences({ dishes: ["Roast Squash"], foods: ["lemon juice"] });
const levels: SentenceLevels = { voiceDb: -26, bandDb: -31, peakDb: -10, noiseDb: -70 };

const command = (text: string, more: Partial<Extract<Verdict, { kind: "command" }>> = {}): Verdict => ({
  kind: "command",
  words: spokenWords(text),
  confidence: 0.9,
  rivals: [],
  addressed: true,
  ...more,
});
const utterance = (verdict: Verdict, written = ""): CheckedUtterance => ({
  verdict,
  words: spokenWords(written),
  levels,
});
const doubtful: Verdict = { kind: "none", why: "doubtful" };

const after = (check: EarCheck, ...inputs: readonly CheckInput[]): EarCheck =>
  inputs.reduce((state, input) => evolveCheck(state, input), check);
const begun = beginCheck(address, sentences, 0);
const heardRight = (at: number, now: number): CheckInput => ({
  kind: "heard",
  utterance: utterance(command(sentences[at]?.words.join(" ") ?? "")),
  beganAt: now,
  now,
});
const outcomes = ({ results }: EarCheck) => results.map(({ outcome }) => outcome.kind);

describe("the sentences of a check", () => {
  it("[V80] are five, with a number, a short answer and tonight's short names", () => {
    expect(sentences.map(({ shows }) => shows)).toEqual(["question", "number", "dish", "food", "answer"]);
    const texts = sentences.map(({ words }) => words.join(" "));
    expect(texts[2]).toContain("roast squash");
    expect(texts[3]).toContain("lemon juice");
  });

  it("[V80] take a name of their own where tonight's are long, strange or not there", () => {
    const own = checkSentences({ dishes: [], foods: [] });
    const strange = { dishes: ["A very long name of a dish"], foods: ["jalapeño", "7-up syrup"] };
    expect(checkSentences(strange)).toEqual(own);
    const taken = checkSentences({
      dishes: ["A very long name of a dish", "slaw"],
      foods: ["jalapeño", "salt"],
    });
    expect(taken[2]?.words.at(-1)).toBe("slaw");
    expect(taken[3]?.words).toContain("salt");
  });

  it("[V80] are listened for among all that can be said at the moment", () => {
    const grammar = checkGrammar(
      grammarOf("next step", "pause"),
      sentences.map(({ words }) => words),
    );
    const automaton = toAutomaton({ grammar, address, mode: "addressed", stopSentences: [] });
    if (!automaton.ok) throw new Error(automaton.error);
    for (const text of ["next step", "yes please", "set a timer for fifteen minutes"])
      expect(progressThrough(automaton.value, spokenWords(`${address} ${text}`)), text).toBe("finished");
    expect(progressThrough(automaton.value, spokenWords(`${address} no thank you`))).toBe("unmatched");
  });
});

describe("a sentence of a check", () => {
  const sentence = spokenWords("set a timer for fifteen minutes");
  it.each<readonly [string, CheckedUtterance, object]>([
    ["as it was to be said", utterance(command("set a timer for fifteen minutes")), { kind: "right" }],
    [
      "without the address",
      utterance(command("set a timer for fifteen minutes", { addressed: false })),
      { kind: "address-lost", heard: "set a timer for fifteen minutes" },
    ],
    [
      "with another word in place of the address",
      utterance(doubtful, "listen chicken set a timer for fifteen minutes"),
      { kind: "address-lost", heard: "listen chicken set a timer for fifteen minutes" },
    ],
    [
      "torn between two",
      utterance(
        command("set a timer for fifty minutes", {
          rivals: [spokenWords("set a timer for fifteen minutes")],
        }),
      ),
      { kind: "torn", heard: ["set a timer for fifty minutes", "set a timer for fifteen minutes"] },
    ],
    [
      "as another command",
      utterance(command("set a timer for fifty minutes")),
      { kind: "other", heard: "set a timer for fifty minutes" },
    ],
    [
      "as other talk",
      utterance(doubtful, "and now the weather for tomorrow"),
      { kind: "other", heard: "and now the weather for tomorrow" },
    ],
    ["without words", utterance({ kind: "none", why: "chatter" }), { kind: "nothing" }],
    ["as the address and no more", utterance(doubtful, "listen kitchen"), { kind: "nothing" }],
  ])("[V81] %s", (_, heard, outcome) => {
    expect(judgeSentence(sentence, address, heard)).toEqual(outcome);
  });
});

describe("a check of the ear", () => {
  it("[V82] goes from sentence to sentence by itself, and is over after the fifth", () => {
    let now = 0;
    let check = begun;
    for (let at = 0; at < 5; at++) {
      expect(sentenceNow(check)).toBe(at);
      check = after(check, heardRight(at, (now += 3_000)));
      expect(sentenceNow(check)).toBe(at);
      check = after(check, { kind: "time", now: (now += checkTimes.rightShown), hold: "no" });
    }
    expect(check.phase.kind).toBe("over");
    expect(outcomes(check)).toEqual(["right", "right", "right", "right", "right"]);
  });

  it("[V82] in silence it is over within two minutes, with nothing heard", () => {
    let check = begun;
    let now = 0;
    while (check.phase.kind !== "over") check = after(check, { kind: "time", now: (now += 100), hold: "no" });
    expect(now).toBeLessThan(90_000);
    expect(outcomes(check)).toEqual(sentences.map(() => "nothing"));
  });

  it("[V82] beside a radio that never stops it is over within two minutes too", () => {
    let check = begun;
    let now = 0;
    while (check.phase.kind !== "over") {
      const talk = utterance(doubtful, "and now the weather");
      const radio = { kind: "heard", utterance: talk, beganAt: now, now } as const;
      check = after(check, ...(now % 15_000 === 0 ? [radio] : []), { kind: "time", now, hold: "yes" });
      now += 100;
    }
    expect(now).toBeLessThanOrEqual(120_000);
  });

  it("[V82] a clatter, a voice too soft for words and the address alone are waited on", () => {
    const soft = { ...levels, voiceDb: -60 };
    const waited = after(
      begun,
      {
        kind: "heard",
        utterance: { ...utterance({ kind: "none", why: "chatter" }), levels: soft },
        beganAt: 1_000,
        now: 1_000,
      },
      { kind: "heard", utterance: utterance({ kind: "address-only" }), beganAt: 2_000, now: 2_000 },
    );
    expect(waited.phase).toEqual({ kind: "waiting", since: 0, levels: soft });
    const given = after(waited, { kind: "time", now: checkTimes.wait, hold: "no" });
    expect(given.results).toEqual([{ outcome: { kind: "nothing" }, levels: soft }]);
  });

  it("[V82] nobody is hurried in the middle of a sentence", () => {
    const speaking = after(begun, { kind: "time", now: checkTimes.wait + 1_000, hold: "yes" });
    expect(speaking.phase.kind).toBe("waiting");
    expect(outcomes(after(speaking, heardRight(0, checkTimes.wait + 1_500)))).toEqual(["right"]);
  });

  it("[V82] what was said again while the answer was late says nothing of the next sentence", () => {
    const next = after(begun, heardRight(0, 6_000), { kind: "time", now: 8_000, hold: "no" });
    expect([outcomes(next), sentenceNow(next)]).toEqual([["right"], 1]);
    const repeated = { ...heardRight(0, 9_000), beganAt: 5_000 } as CheckInput;
    expect(after(next, repeated)).toEqual(next);
    expect(outcomes(after(next, repeated, heardRight(1, 11_000)))).toEqual(["right", "right"]);
  });

  it("[V83] said again in time, by touch or of its own accord, a sentence counts where it went better", () => {
    const wrong = utterance(command("what now"));
    const misheard = after(begun, { kind: "heard", utterance: wrong, beganAt: 1_000, now: 1_000 });
    expect(outcomes(misheard)).toEqual(["other"]);
    expect(outcomes(after(misheard, heardRight(0, 3_000)))).toEqual(["right"]);
    const again = after(misheard, { kind: "again", now: 3_000 });
    expect([again.results.length, sentenceNow(again)]).toEqual([0, 0]);
    const right = after(again, heardRight(0, 5_000));
    const worse = { kind: "heard", utterance: wrong, beganAt: 5_500, now: 5_500 } as const;
    expect(outcomes(after(right, worse))).toEqual(["right"]);
  });

  it("[V83] a sentence is left out before and after it was said, and a check ends whenever it is to", () => {
    const left = after(begun, { kind: "leave-out", now: 1_000 });
    expect([outcomes(left), sentenceNow(left)]).toEqual([["left-out"], 1]);
    const said = after(left, heardRight(1, 3_000), { kind: "leave-out", now: 3_500 });
    expect([outcomes(said), sentenceNow(said)]).toEqual([["left-out", "left-out"], 2]);
    const over = after(said, { kind: "finish" });
    expect(over.phase).toEqual({ kind: "over" });
    expect(after(over, heardRight(2, 4_000), { kind: "again", now: 5_000 })).toEqual(over);
  });
});
