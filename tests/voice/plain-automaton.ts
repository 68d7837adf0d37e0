import type { Automaton, AutomatonState } from "../../core/speech/automaton.ts";
import type { Grammar, Phrase } from "../../core/speech/grammar.ts";
import { spokenWords } from "../../core/speech/spoken-words.ts";

/** A place between two words of a grammar written out in full: arcs by word, and steps that cost none. */
type Place = { readonly arcs: { readonly word: string; readonly to: number }[]; readonly free: number[] };

/**
 * The smallest automaton of a grammar, made in the plainest way there is: every rule written out wherever it is named,
 * the subset construction over all of it (Rabin and Scott 1959), then states with the same future merged from the end.
 */
export function plainAutomaton(grammar: Grammar): Automaton {
  const places: Place[] = [];
  const start = newPlace(places);
  const end = weave({ kind: "rule", name: grammar.root }, start, grammar, places);
  return smallest(determined(places, start, end));
}

const newPlace = (places: Place[]): number => places.push({ arcs: [], free: [] }) - 1;

function weave(phrase: Phrase, from: number, grammar: Grammar, places: Place[]): number {
  const link = (at: number, to: number): unknown => places[at]?.free.push(to);
  switch (phrase.kind) {
    case "words":
      return spokenWords(phrase.text).reduce((at, word) => {
        const to = newPlace(places);
        places[at]?.arcs.push({ word, to });
        return to;
      }, from);
    case "rule":
      return weave(grammar.rules.get(phrase.name) ?? { kind: "choice", of: [] }, from, grammar, places);
    case "sequence":
      return phrase.of.reduce((at, part) => weave(part, at, grammar, places), from);
    case "optional":
    case "choice": {
      const end = newPlace(places);
      for (const way of phrase.kind === "choice" ? phrase.of : [phrase.of]) {
        const begun = newPlace(places);
        link(from, begun);
        link(weave(way, begun, grammar, places), end);
      }
      if (phrase.kind === "optional") link(from, end);
      return end;
    }
  }
}

function determined(places: readonly Place[], start: number, end: number): Automaton {
  const numbers = new Map<string, number>();
  const sets: (readonly number[])[] = [];
  const numberOf = (begun: readonly number[]): number => {
    const reached = new Set(begun);
    for (const place of reached) for (const next of places[place]?.free ?? []) reached.add(next);
    const set = [...reached].sort((a, b) => a - b);
    const number = numbers.get(set.join()) ?? sets.push(set) - 1;
    numbers.set(set.join(), number);
    return number;
  };
  numberOf([start]);
  const states: AutomatonState[] = [];
  // The list grows while it is walked.
  for (const set of sets) {
    const byWord = new Map<string, number[]>();
    for (const { word, to } of set.flatMap((place) => places[place]?.arcs ?? [])) {
      const before = byWord.get(word);
      if (before === undefined) byWord.set(word, [to]);
      else before.push(to);
    }
    const arcs = [...byWord].map(([word, next]) => ({ word, to: numberOf(next) }));
    states.push({ isEnd: set.includes(end), arcs });
  }
  return { start: 0, states };
}

/** States by what may follow; from where no sentence ends there is no way on. */
function smallest({ start, states }: Automaton): Automaton {
  const kept: AutomatonState[] = [];
  const byFuture = new Map<string, number>();
  const merged = new Map<number, number | null>();
  const merge = (at: number): number | null => {
    const known = merged.get(at);
    if (known !== undefined) return known;
    const { isEnd, arcs } = states[at] ?? { isEnd: false, arcs: [] };
    const own = arcs
      .toSorted((a, b) => (a.word < b.word ? -1 : 1))
      .flatMap(({ word, to }) => {
        const next = merge(to);
        return next === null ? [] : [{ word, to: next }];
      });
    const future = JSON.stringify([isEnd, own]);
    const isDead = !isEnd && own.length === 0;
    const number = isDead ? null : (byFuture.get(future) ?? kept.push({ isEnd, arcs: own }) - 1);
    if (number !== null) byFuture.set(future, number);
    merged.set(at, number);
    return number;
  };
  const first = merge(start);
  return first === null ? { start: 0, states: [{ isEnd: false, arcs: [] }] } : { start: first, states: kept };
}
