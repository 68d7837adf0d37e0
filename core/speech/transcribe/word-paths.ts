import type { Automaton } from "../automaton.ts";
import type { TokenTree } from "./token-tree.ts";
import { inDigits, isNumberWord, writtenForms } from "./written-forms.ts";

/** A place between two characters of a written sentence. Places are compared by identity. */
export type Place = {
  /** The state of the automaton where the word began that stands here. */
  readonly state: number;
  /** True between two words. */
  readonly isGap: boolean;
  readonly next: ReadonlyMap<string, Place>;
  /** The words that are complete here, one entry for each way to have written them, and where they lead. */
  readonly complete: readonly Complete[];
};

type Complete = { readonly words: readonly string[]; readonly to: number };

/** One token that may come next: where it leads, and the words that it completed. */
export type Move = { readonly token: number; readonly to: Place; readonly said: readonly string[] };

/** Digits of a number have no more words than "nine hundred and ninety nine thousand". */
const longestNumber = 6;

/**
 * The sentences of an automaton as a transcriber may write them, token by token. Each state is spelt out when a
 * search first comes there, so that a large grammar costs what is used of it.
 */
export class WordPaths {
  private readonly automaton: Automaton;
  private readonly tree: TokenTree;
  private readonly gaps = new Map<number, Place>();
  private readonly moves = new Map<Place, readonly Move[]>();

  constructor(automaton: Automaton, tree: TokenTree) {
    this.automaton = automaton;
    this.tree = tree;
  }

  /** Where every sentence begins. */
  start(): Place {
    return this.gapBefore(this.automaton.start);
  }

  /** All tokens that may come next. */
  movesFrom(place: Place): readonly Move[] {
    const known = this.moves.get(place);
    if (known !== undefined) return known;
    const found: Move[] = [];
    const walk = (node: TokenTree, at: Place, said: readonly string[]): void => {
      for (const token of node.tokens) found.push({ token, to: at, said });
      for (const [character, child] of node.next)
        for (const step of this.after(at, character)) walk(child, step.to, [...said, ...step.said]);
    };
    for (const [character, child] of this.tree.next)
      for (const step of this.after(place, character)) walk(child, step.to, step.said);
    this.moves.set(place, found);
    return found;
  }

  /** The last words of a sentence that may end here, one entry for each way it may; none where it must go on. */
  endings(place: Place): readonly (readonly string[])[] {
    if (place.isGap) return this.isEnd(place.state) ? [[]] : [];
    return place.complete.filter(({ to }) => this.isEnd(to)).map(({ words }) => words);
  }

  private after(place: Place, character: string): readonly Omit<Move, "token">[] {
    const inside = place.next.get(character);
    const steps = inside === undefined ? [] : [{ to: inside, said: [] }];
    if (character !== " ") return steps;
    if (place.isGap) return [{ to: place, said: [] }];
    return [...steps, ...place.complete.map(({ words, to }) => ({ to: this.gapBefore(to), said: words }))];
  }

  private isEnd(state: number): boolean {
    return this.automaton.states[state]?.isEnd ?? false;
  }

  private gapBefore(state: number): Place {
    const known = this.gaps.get(state);
    if (known !== undefined) return known;
    const gap = newPlace(state, true);
    this.gaps.set(state, gap);
    for (const { word, to } of this.automaton.states[state]?.arcs ?? [])
      for (const form of writtenForms(word)) spell(gap, form, { words: [word], to });
    this.spellNumbers(gap, state, []);
    return gap;
  }

  private spellNumbers(gap: Growing, state: number, before: readonly string[]): void {
    for (const { word, to } of this.automaton.states[state]?.arcs ?? []) {
      if (!isNumberWord(word)) continue;
      const words = [...before, word];
      const digits = inDigits(words);
      if (digits !== null) spell(gap, digits, { words, to });
      if (words.length < longestNumber) this.spellNumbers(gap, to, words);
    }
  }
}

type Growing = Omit<Place, "next" | "complete"> & {
  readonly next: Map<string, Growing>;
  readonly complete: Complete[];
};

function newPlace(state: number, isGap: boolean): Growing {
  return { state, isGap, next: new Map(), complete: [] };
}

function spell(gap: Growing, form: string, complete: Complete): void {
  let place = gap;
  for (const character of form) {
    const known = place.next.get(character);
    const child = known ?? newPlace(gap.state, false);
    if (known === undefined) place.next.set(character, child);
    place = child;
  }
  place.complete.push(complete);
}
