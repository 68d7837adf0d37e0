import { describe, expect, it } from "vitest";
import { type Automaton, toAutomaton } from "../../../core/speech/automaton.ts";
import type { Grammar } from "../../../core/speech/grammar.ts";
import { allows, grammarOf, listenTo } from "../../voice/grammars.ts";
import { kitchenGrammar, kitchenSentences } from "../../voice/kitchen-grammar.ts";

const made = (grammar: Grammar, address: string | null, mode: "addressed" | "open"): Automaton => {
  const automaton = toAutomaton(listenTo(grammar, { address, mode }));
  if (!automaton.ok) throw new Error(automaton.error);
  return automaton.value;
};

const takes = ({ start, states }: Automaton, sentence: string): boolean => {
  const end = sentence
    .split(" ")
    .reduce<number | undefined>(
      (at, word) => states[at ?? -1]?.arcs.find((arc) => arc.word === word)?.to,
      start,
    );
  return states[end ?? -1]?.isEnd ?? false;
};

const isSentence = (sentence: string): boolean => allows(kitchenGrammar, sentence);

/** Sentences with a word left out, doubled or taken from another: some are sentences, most are not. */
const mangled = kitchenSentences.flatMap((sentence, index) => {
  const words = sentence.split(" ");
  const other = kitchenSentences[(index + 7) % kitchenSentences.length]?.split(" ") ?? [];
  return [
    words.slice(1).join(" "),
    words.slice(0, -1).join(" "),
    [...words, words.at(-1)].join(" "),
    [...words.slice(0, 2), ...other.slice(2)].join(" "),
  ].filter((text) => text !== "");
});

describe("the automaton of a grammar", () => {
  it("[V21] it follows exactly the sentences of the rules", () => {
    const automaton = made(kitchenGrammar, null, "open");
    expect(kitchenSentences.filter((sentence) => !takes(automaton, sentence))).toEqual([]);
    expect(mangled.filter(isSentence).length).toBeGreaterThan(4);
    expect(mangled.filter((sentence) => takes(automaton, sentence) !== isSentence(sentence))).toEqual([]);
  });

  it("[V21] the address comes before a sentence where it must, may where it need not, and stands alone", () => {
    const addressed = made(kitchenGrammar, "Listen, kitchen", "addressed");
    const open = made(kitchenGrammar, "Listen, kitchen", "open");
    const asked = ["listen kitchen what now", "what now", "listen kitchen", "kitchen what now"];
    expect(asked.map((sentence) => takes(addressed, sentence))).toEqual([true, false, true, false]);
    expect(asked.map((sentence) => takes(open, sentence))).toEqual([true, true, true, false]);
  });

  it("[V14][V21] while the caller speaks a few sentences need no address, and all others do", () => {
    const stopSentences = ["hush", "stop talking"];
    const muted = toAutomaton(
      listenTo(kitchenGrammar, { address: "listen kitchen", mode: "stop-only", stopSentences }),
    );
    const asked = [
      "hush",
      "listen kitchen hush",
      "what now",
      "listen kitchen what now",
      "listen kitchen",
      "stop talking",
    ];
    expect(asked.map((sentence) => muted.ok && takes(muted.value, sentence))).toEqual([
      true,
      false,
      false,
      true,
      true,
      true,
    ]);
    const withoutAddress = toAutomaton(listenTo(kitchenGrammar, { mode: "stop-only", stopSentences }));
    expect(withoutAddress).toEqual(toAutomaton(listenTo(grammarOf("hush", "stop talking"))));
  });

  it("[V21] no state is there twice, and none leads two ways with one word", () => {
    const { states } = made(kitchenGrammar, "listen kitchen", "open");
    expect(new Set(states.map((state) => JSON.stringify(state))).size).toBe(states.length);
    for (const { arcs } of states) expect(new Set(arcs.map(({ word }) => word)).size).toBe(arcs.length);
    expect(states.length).toBeLessThan(120);
  });

  it("[V21] a circular grammar and a missing address are refused with the sentence of the other form", () => {
    const circle: Grammar = { root: "a", rules: new Map([["a", { kind: "rule", name: "a" }]]) };
    expect(toAutomaton(listenTo(circle)).ok).toBe(false);
    expect(toAutomaton(listenTo(kitchenGrammar, { address: " - ", mode: "addressed" }))).toEqual({
      ok: false,
      error: "Listening for the address needs one: choose two words to call the kitchen by.",
    });
  });
});
