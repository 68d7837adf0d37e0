import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Automaton, automatonFrom, toAutomaton } from "../../../core/speech/automaton.ts";
import type { Grammar, Phrase } from "../../../core/speech/grammar.ts";
import { Languages } from "../../../core/speech/languages.ts";
import { grammarFor } from "../../../core/talk/grammar-for.ts";
import { eveningMoments } from "../../voice/evening-moments.ts";
import { grammarOf, listenTo } from "../../voice/grammars.ts";
import { kitchenGrammar } from "../../voice/kitchen-grammar.ts";
import { plainAutomaton } from "../../voice/plain-automaton.ts";

const from = (languages: Languages, grammar: Grammar): Automaton => {
  const automaton = automatonFrom(languages, listenTo(grammar));
  if (!automaton.ok) throw new Error(automaton.error);
  return automaton.value;
};

/** What an address and the mode make of a grammar, written out as a rule of it. */
const called = ({ root, rules }: Grammar, ...bare: readonly Phrase[]): Grammar => {
  const sentence: Phrase = { kind: "optional", of: { kind: "rule", name: root } };
  const call: Phrase = { kind: "sequence", of: [{ kind: "words", text: "listen kitchen" }, sentence] };
  return { root: "all", rules: new Map([...rules, ["all", { kind: "choice", of: [...bare, call] }]]) };
};

const words = fc
  .constantFrom("", "stir", "the", "pot", "stir the", "the pot", "Pot, stir")
  .map((text): Phrase => ({ kind: "words", text }));

/** Any phrase at all over few words, so that many sentences have much in common. */
const { phrase } = fc.letrec<{ phrase: Phrase; parts: Phrase[] }>((tie) => ({
  parts: fc.array(tie("phrase"), { maxLength: 4 }),
  phrase: fc.oneof(
    { maxDepth: 5 },
    words,
    fc.constant<Phrase>({ kind: "rule", name: "food" }),
    tie("phrase").map((of): Phrase => ({ kind: "optional", of })),
    tie("parts").map((of): Phrase => ({ kind: "sequence", of })),
    tie("parts").map((of): Phrase => ({ kind: "choice", of })),
  ),
}));

const grammar = fc
  .record({ top: phrase, food: fc.array(words, { maxLength: 3 }) })
  .map(({ top, food }): Grammar => ({
    root: "top",
    rules: new Map<string, Phrase>([
      ["top", top],
      ["food", { kind: "choice", of: food }],
    ]),
  }));

describe("an automaton that is made anew", () => {
  it("[V160] of any rules it is the one that the plainest way makes, whatever was listened for before", () => {
    const languages = new Languages();
    fc.assert(
      fc.property(grammar, (rules) => {
        expect(from(languages, rules)).toEqual(plainAutomaton(rules));
      }),
      { numRuns: 500 },
    );
  });

  it("[V160] the moments of an evening, one after another and back again, each have their own", async () => {
    const { busy, which, breakfast } = await eveningMoments();
    const rules = [busy, which, breakfast].map(grammarFor);
    const languages = new Languages();
    const anew = [...rules, ...rules].map((each) => from(languages, each));
    const plain = rules.map(plainAutomaton);
    expect(anew).toEqual([...plain, ...plain]);
  });

  it("[V21][V160] the address and the mode make of it what they would as rules of the grammar", () => {
    const languages = new Languages();
    const stop: Phrase = { kind: "words", text: "stop talking" };
    const made = (how: Parameters<typeof listenTo>[1]): unknown =>
      automatonFrom(languages, listenTo(kitchenGrammar, { address: "listen kitchen", ...how }));
    const value = (plain: Grammar): unknown => ({ ok: true, value: plainAutomaton(plain) });
    expect(made({ mode: "addressed" })).toEqual(value(called(kitchenGrammar)));
    expect(made({ mode: "open" })).toEqual(value(called(kitchenGrammar, { kind: "rule", name: "command" })));
    expect(made({ mode: "stop-only", stopSentences: ["stop talking"] })).toEqual(
      value(called(kitchenGrammar, stop)),
    );
  });

  it("[V160] where so much was listened for that it is forgotten, it is the same", () => {
    const before = toAutomaton(listenTo({ ...kitchenGrammar }));
    for (let batch = 0; batch < 10; batch++) {
      const sentences = Array.from({ length: 600 }, (_, at) =>
        Array.from({ length: 10 }, (_each, place) => `word${batch}x${at}x${place}`).join(" "),
      );
      expect(toAutomaton(listenTo(grammarOf(...sentences))).ok).toBe(true);
    }
    expect(toAutomaton(listenTo({ ...kitchenGrammar }))).toEqual(before);
  });
});
