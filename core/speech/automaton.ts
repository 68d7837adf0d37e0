import { reachableRules } from "./check-grammar.ts";
import type { Grammar, Phrase } from "./grammar.ts";
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
 * from one state. A recogniser that walks the rules instead meets every rule again at each place that names it: an
 * evening of four dishes has 36,000 such places and 1,200 states, and costs fifteen times the work.
 */
export type Automaton = { readonly start: number; readonly states: readonly AutomatonState[] };

/**
 * The automaton of all that is listened for: the grammar's sentences, with the address before them as the mode asks;
 * the address alone is a sentence as well. Made once for each grammar, address and mode.
 * Fails with one sentence for a missing or circular rule, or for a mode that needs an address without one.
 */
export function toAutomaton(what: ListenFor): Result<Automaton, string> {
  const ofGrammar: Woven = automata.get(what.grammar) ?? { made: new Map(), whole: new Map() };
  automata.set(what.grammar, ofGrammar);
  const key = JSON.stringify([what.mode, what.address, what.stopSentences]);
  const automaton = ofGrammar.whole.get(key) ?? weaveAll(what, ofGrammar.made);
  ofGrammar.whole.set(key, automaton);
  return automaton;
}

/** What was made of a grammar: its rules' machines, which every mode has in common, and the whole ones. */
type Woven = { readonly made: Made; readonly whole: Map<string, Result<Automaton, string>> };

const automata = new WeakMap<Grammar, Woven>();

function weaveAll(
  { grammar, address, mode, stopSentences }: ListenFor,
  made: Made,
): Result<Automaton, string> {
  const rules = reachableRules(grammar);
  if (!rules.ok) return rules;
  const call = spokenWords(address ?? "");
  if (mode === "addressed" && call.length === 0) {
    return err("Listening for the address needs one: choose two words to call the kitchen by.");
  }
  const sentence: Phrase = { kind: "rule", name: grammar.root };
  const called: Phrase = {
    kind: "sequence",
    of: [
      { kind: "words", text: call.join(" ") },
      { kind: "optional", of: sentence },
    ],
  };
  const bare: readonly Phrase[] =
    mode === "open" ? [sentence] : stopSentences.map((text) => ({ kind: "words", text }));
  const ways = call.length === 0 ? bare : [...bare, called];
  return ok(machineOf({ kind: "choice", of: ways }, new Map(rules.value), made));
}

/** A state while the machine is still loose: arcs by word, and steps that cost no word. */
type Loose = { readonly arcs: { readonly word: string; readonly to: number }[]; readonly free: number[] };

type Rules = ReadonlyMap<string, Phrase>;

/** Each rule's own machine, made once however often it is named. */
type Made = Map<string, Automaton>;

function machineOf(phrase: Phrase, rules: Rules, made: Made): Automaton {
  const loom = new Loom(rules, made);
  const start = loom.state();
  const end = loom.weave(phrase, start);
  return smallest(determined(loom.loose, start, end));
}

/** Weaves phrases into loose states, one machine at a time. */
class Loom {
  readonly loose: Loose[] = [];
  private readonly rules: Rules;
  private readonly made: Made;

  constructor(rules: Rules, made: Made) {
    this.rules = rules;
    this.made = made;
  }

  state(): number {
    return this.loose.push({ arcs: [], free: [] }) - 1;
  }

  /** @returns the state where the phrase ends, having begun at `from` */
  weave(part: Phrase, from: number): number {
    switch (part.kind) {
      case "words":
        return spokenWords(part.text).reduce((at, word) => this.step(at, word), from);
      case "rule":
        return this.graft(ruleMachine(part.name, this.rules, this.made), from);
      case "optional": {
        const end = this.state();
        this.link(this.weave(part.of, from), end);
        this.link(from, end);
        return end;
      }
      case "sequence":
        return part.of.reduce((at, one) => this.weave(one, at), from);
      case "choice": {
        const end = this.state();
        for (const one of part.of) this.link(this.weave(one, this.linked(from)), end);
        return end;
      }
    }
  }

  private graft({ start, states }: Automaton, from: number): number {
    const end = this.state();
    const places = states.map(() => this.state());
    const placeOf = (state: number): number => places[state] ?? end;
    states.forEach(({ isEnd, arcs }, at) => {
      for (const { word, to } of arcs) this.loose[placeOf(at)]?.arcs.push({ word, to: placeOf(to) });
      if (isEnd) this.link(placeOf(at), end);
    });
    this.link(from, placeOf(start));
    return end;
  }

  private step(from: number, word: string): number {
    const to = this.state();
    this.loose[from]?.arcs.push({ word, to });
    return to;
  }

  private linked(from: number): number {
    const to = this.state();
    this.link(from, to);
    return to;
  }

  private link(from: number, to: number): void {
    this.loose[from]?.free.push(to);
  }
}

function ruleMachine(name: string, rules: Rules, made: Made): Automaton {
  const known = made.get(name);
  if (known !== undefined) return known;
  const phrase = rules.get(name);
  if (phrase === undefined) throw new Error(`the rule "${name}" was not among the reachable ones`);
  const machine = machineOf(phrase, rules, made);
  made.set(name, machine);
  return machine;
}

/** The subset construction: one state for each set of places that the same words can lead to. */
function determined(loose: readonly Loose[], start: number, end: number): Automaton {
  const numbers = new Map<string, number>();
  const states: AutomatonState[] = [];
  const sets: (readonly number[])[] = [];
  const numberOf = (places: readonly number[]): number => {
    const set = reached(loose, places, end);
    const key = set.join();
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, sets.length);
    return sets.push(set) - 1;
  };
  numberOf([start]);
  // The list grows while it is walked.
  for (const set of sets) {
    const byWord = new Map<string, number[]>();
    for (const { word, to } of set.flatMap((place) => loose[place]?.arcs ?? [])) {
      const before = byWord.get(word);
      if (before === undefined) byWord.set(word, [to]);
      else before.push(to);
    }
    states.push({
      isEnd: set.includes(end),
      arcs: [...byWord].map(([word, places]) => ({ word, to: numberOf(places) })),
    });
  }
  return { start: 0, states };
}

/** All places that cost no further word; only those that matter are kept. */
function reached(loose: readonly Loose[], places: readonly number[], end: number): readonly number[] {
  const seen = new Set(places);
  for (const place of seen) for (const next of loose[place]?.free ?? []) seen.add(next);
  return [...seen]
    .filter((place) => place === end || (loose[place]?.arcs.length ?? 0) > 0)
    .sort((a, b) => a - b);
}

/** Merges the states from which the same sentences follow. There are no circles, so the last come first. */
function smallest({ start, states }: Automaton): Automaton {
  const kept: AutomatonState[] = [];
  const byFuture = new Map<string, number>();
  const merged = new Map<number, number>();
  const merge = (at: number): number => {
    const known = merged.get(at);
    if (known !== undefined) return known;
    const { isEnd, arcs } = states[at] ?? { isEnd: false, arcs: [] };
    const own = arcs
      .map(({ word, to }) => ({ word, to: merge(to) }))
      .sort((a, b) => (a.word < b.word ? -1 : 1));
    const future = `${isEnd ? "." : ""}${own.map(({ word, to }) => `${word} ${to}`).join()}`;
    const number = byFuture.get(future) ?? kept.push({ isEnd, arcs: own }) - 1;
    byFuture.set(future, number);
    merged.set(at, number);
    return number;
  };
  const first = merge(start);
  return { start: first, states: kept };
}
