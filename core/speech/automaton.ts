import { reachableRules } from "./check-grammar.ts";
import type { Grammar, Phrase } from "./grammar.ts";
import { type Language, Languages } from "./languages.ts";
import type { ListenFor } from "./recogniser.ts";
import { spokenWords } from "./spoken-words.ts";
import { err, ok, type Result } from "../units/result.ts";

/** One state of an automaton: whether a sentence may end here, and where each word leads. */
export type AutomatonState = {
  readonly isEnd: boolean;
  readonly arcs: readonly { readonly word: string; readonly to: number }[];
};

/**
 * The smallest machine that follows exactly the sentences of a grammar, a word an arc, never two arcs of one word
 * from one state; the arcs of a state in order of the letters, and every state after those that it leads to. A
 * recogniser that walks the rules instead meets every rule again at each place that names it: an evening of four
 * dishes has 36,000 such places and 1,200 states, and costs fifteen times the work.
 */
export type Automaton = { readonly start: number; readonly states: readonly AutomatonState[] };

/**
 * The automaton of all that is listened for: the grammar's sentences, with the address before them as the mode asks;
 * the address alone is a sentence as well. Made once for each grammar, address and mode.
 * Fails with one sentence for a missing or circular rule, or for a mode that needs an address without one.
 */
export function toAutomaton(what: ListenFor): Result<Automaton, string> {
  const ofGrammar = automata.get(what.grammar) ?? new Map<string, Result<Automaton, string>>();
  automata.set(what.grammar, ofGrammar);
  const key = JSON.stringify([what.mode, what.address, what.stopSentences]);
  if (languages.size > mostLanguages) languages = new Languages();
  const automaton = ofGrammar.get(key) ?? automatonFrom(languages, what);
  ofGrammar.set(key, automaton);
  return automaton;
}

const automata = new WeakMap<Grammar, Map<string, Result<Automaton, string>>>();

/** What the last moments were woven of: most of what can be said at one could be said at the one before. */
let languages = new Languages();

/** So many weigh 25 MB. A moment is woven of 13,000, the next one of some hundreds or thousands more. */
const mostLanguages = 50_000;

/** The same, out of languages that are there already as far as they are. */
export function automatonFrom(
  languages: Languages,
  { grammar, address, mode, stopSentences }: ListenFor,
): Result<Automaton, string> {
  const rules = reachableRules(grammar);
  if (!rules.ok) return rules;
  const isCalled = spokenWords(address ?? "").length > 0;
  if (mode === "addressed" && !isCalled) {
    return err("Listening for the address needs one: choose two words to call the kitchen by.");
  }
  const sentence = new Loom(languages, new Map(rules.value)).rule(grammar.root);
  const called = languages.inTurn(languages.saying(address ?? ""), languages.orNothingSaid(sentence));
  const bare = mode === "open" ? [sentence] : stopSentences.map((text) => languages.saying(text));
  return ok(laidOut(languages.anyOf(isCalled ? [...bare, called] : bare)));
}

/** Weaves the phrases of one grammar into languages. */
class Loom {
  private readonly languages: Languages;
  private readonly rules: ReadonlyMap<string, Phrase>;
  /** Each rule is woven once, however often it is named. */
  private readonly woven = new Map<string, Language>();

  constructor(languages: Languages, rules: ReadonlyMap<string, Phrase>) {
    this.languages = languages;
    this.rules = rules;
  }

  rule(name: string): Language {
    const known = this.woven.get(name);
    if (known !== undefined) return known;
    const phrase = this.rules.get(name);
    if (phrase === undefined) throw new Error(`the rule "${name}" was not among the reachable ones`);
    const language = this.weave(phrase);
    this.woven.set(name, language);
    return language;
  }

  private weave(phrase: Phrase): Language {
    const { languages } = this;
    switch (phrase.kind) {
      case "words":
        return languages.saying(phrase.text);
      case "rule":
        return this.rule(phrase.name);
      case "optional":
        return languages.orNothingSaid(this.weave(phrase.of));
      case "sequence":
        // From the back: what follows a part is one language by then, and each part is walked through once.
        return phrase.of.reduceRight(
          (after, part) => languages.inTurn(this.weave(part), after),
          languages.silence,
        );
      case "choice":
        return languages.anyOf(phrase.of.map((part) => this.weave(part)));
    }
  }
}

/** Numbers a language and its followers as states. There are no circles, so the last come first. */
function laidOut(language: Language): Automaton {
  const states: AutomatonState[] = [];
  const numbers = new Map<Language, number>();
  const numberOf = (one: Language): number => {
    const known = numbers.get(one);
    if (known !== undefined) return known;
    const arcs = one.arcs.map(({ word, to }) => ({ word: word.text, to: numberOf(to) }));
    const number = states.push({ isEnd: one.isEnd, arcs }) - 1;
    numbers.set(one, number);
    return number;
  };
  return { start: numberOf(language), states };
}
