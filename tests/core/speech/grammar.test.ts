import { describe, expect, it } from "vitest";
import { toAutomaton } from "../../../core/speech/automaton.ts";
import { chatterWords } from "../../../core/speech/chatter.ts";
import type { Grammar, Phrase } from "../../../core/speech/grammar.ts";
import { expectation, progressOf } from "../../../core/speech/expectation.ts";
import { spokenWords } from "../../../core/speech/spoken-words.ts";
import { vocabulary } from "../../../core/speech/vocabulary.ts";
import { toWordList } from "../../../core/speech/word-list.ts";
import { listenTo } from "../../voice/grammars.ts";

const words = (text: string): Phrase => ({ kind: "words", text });
const rulesOf = (rules: Readonly<Record<string, Phrase>>): Grammar => ({
  root: "top",
  rules: new Map(Object.entries(rules)),
});

const timers = rulesOf({
  top: {
    kind: "choice",
    of: [
      words("Next step!"),
      {
        kind: "sequence",
        of: [words("stop"), { kind: "optional", of: words("the") }, { kind: "rule", name: "a dish" }],
      },
    ],
  },
  "a dish": { kind: "choice", of: [words("rice"), words("rice pudding")] },
  unused: words("never"),
});

describe("grammars", () => {
  it("[V1] a rule that refers to itself through another is named with its circle", () => {
    const circle = rulesOf({
      top: { kind: "rule", name: "a" },
      a: { kind: "optional", of: { kind: "rule", name: "top" } },
    });
    expect(toAutomaton(listenTo(circle))).toEqual({
      ok: false,
      error: 'The rule "top" refers to itself: top, a, top. Write it out.',
    });
  });

  it("[V1] a missing rule is named", () => {
    expect(toAutomaton(listenTo(rulesOf({ top: { kind: "rule", name: "dish" } })))).toEqual({
      ok: false,
      error: 'The grammar has no rule "dish". Add it, or correct the name.',
    });
  });

  it("[V3] chatter has one word for each of the 39 phones", () => {
    expect(new Set(chatterWords.map(({ phone }) => phone)).size).toBe(39);
    expect(new Set(chatterWords.map(({ word }) => word)).size).toBe(39);
  });

  it("[V5] words lose case, punctuation and hyphens, and keep accents and inner apostrophes", () => {
    expect(spokenWords("  'Za’atar' & JALAPEÑO, all-purpose <b>; (12)")).toEqual([
      "za'atar",
      "jalapeño",
      "all",
      "purpose",
      "b",
      "12",
    ]);
  });

  it("[V5] the vocabulary is every word of the reachable rules", () => {
    expect([...vocabulary(listenTo(timers))].sort()).toEqual([
      "next",
      "pudding",
      "rice",
      "step",
      "stop",
      "the",
    ]);
  });

  it("[V19] the word list has each word once, the address and the unknown mark", () => {
    expect(toWordList(listenTo(timers, { address: "the kitchen" }))).toEqual([
      "the",
      "kitchen",
      "next",
      "step",
      "stop",
      "rice",
      "pudding",
      "[unk]",
    ]);
  });

  it.each([
    ["", null],
    ["listen kitchen", null],
    ["listen kitchen stop the", "begun"],
    ["stop the", "begun"],
    ["stop rice", "may-go-on"],
    ["stop the rice pudding", "finished"],
    ["next step", "finished"],
    ["step next", "unmatched"],
    ["next step please", "unmatched"],
  ])("[V8] %j is %s", (text, progress) => {
    const expected = expectation(listenTo(timers, { address: "listen kitchen" }));
    expect(progressOf(expected, spokenWords(text))).toBe(progress);
  });

  it("[V8] nobody waits for a courtesy", () => {
    const courteous = rulesOf({
      top: { kind: "sequence", of: [words("hold everything"), { kind: "optional", of: words("please") }] },
    });
    const expected = expectation(listenTo(courteous));
    expect(progressOf(expected, ["hold", "everything"])).toBe("finished");
    expect(progressOf(expected, ["hold", "everything", "please"])).toBe("finished");
  });
});
