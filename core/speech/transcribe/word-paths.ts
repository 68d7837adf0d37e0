import type { Automaton } from "../automaton.ts";
import type { Speller } from "./speller.ts";
import { inDigits, isNumberWord, writtenForms } from "./written-forms.ts";

/** A place between two tokens of a written sentence. Places are compared by identity. */
export type Place = {
  /** The state of the automaton where the word began that stands here. */
  readonly state: number;
  /** True between two words. */
  readonly isGap: boolean;
  readonly next: ReadonlyMap<number, Place>;
  /** The words that are complete here, one entry for each way to have written them, and where they lead. */
  readonly complete: readonly Complete[];
};

type Complete = { readonly words: readonly string[]; readonly to: number };

/** One token that may come next: where it leads, and the words that it completed. */
export type Move = { readonly token: number; readonly to: Place; readonly said: readonly string[] };

/** Digits of a number have no more words than "nine hundred and ninety nine thousand". */
const longestNumber = 6;

/** What may stand after a word; the next one begins with a space all the same. */
const marks = [",", ".", "?", "!", ";", ":"] as const;

/**
 * The sentences of an automaton as a transcriber may write them, token by token: each word as it is spelt, with a
 * capital or without, with a mark after it or joined to the next by a hyphen. Each state is spelt out when a search
 * first comes there, so that a large grammar costs what is used of it.
 */
export class WordPaths {
  private readonly automaton: Automaton;
  private readonly speller: Speller;
  private readonly marks: readonly number[];
  private readonly hyphens: readonly number[];
  private readonly gaps = new Map<string, Place>();
  private readonly moves = new Map<Place, readonly Move[]>();

  constructor(automaton: Automaton, speller: Speller) {
    this.automaton = automaton;
    this.speller = speller;
    this.marks = marks.flatMap((mark) => speller.spell(mark) ?? []);
    this.hyphens = speller.spell("-") ?? [];
  }

  /** Where every sentence begins. */
  start(): Place {
    return this.gapBefore(this.automaton.start, "▁");
  }

  /** All tokens that may come next. */
  movesFrom(place: Place): readonly Move[] {
    const known = this.moves.get(place);
    if (known !== undefined) return known;
    const found: Move[] = [...place.next].map(([token, to]) => ({ token, to, said: [] }));
    for (const { words, to } of place.complete) {
      const gap = this.gapBefore(to, "▁");
      for (const [token, begun] of gap.next) found.push({ token, to: begun, said: words });
      for (const token of this.marks) found.push({ token, to: gap, said: words });
      for (const token of this.hyphens) found.push({ token, to: this.gapBefore(to, ""), said: words });
    }
    this.moves.set(place, found);
    return found;
  }

  /** The last words of a sentence that may end here, one entry for each way it may; none where it must go on. */
  endings(place: Place): readonly (readonly string[])[] {
    if (place.isGap) return this.isEnd(place.state) ? [[]] : [];
    return place.complete.filter(({ to }) => this.isEnd(to)).map(({ words }) => words);
  }

  private isEnd(state: number): boolean {
    return this.automaton.states[state]?.isEnd ?? false;
  }

  /** @param before what the next word begins with: a space, or nothing after a hyphen */
  private gapBefore(state: number, before: "▁" | ""): Place {
    const key = `${state}${before}`;
    const known = this.gaps.get(key);
    if (known !== undefined) return known;
    const gap: Gap = { ...newPlace(state, true), places: new Map() };
    this.gaps.set(key, gap);
    for (const { word, to } of this.automaton.states[state]?.arcs ?? [])
      for (const form of writtenForms(word)) this.lay(gap, before, form, { words: [word], to });
    this.layNumbers(gap, before, state, []);
    return gap;
  }

  private layNumbers(gap: Gap, before: string, state: number, said: readonly string[]): void {
    for (const { word, to } of this.automaton.states[state]?.arcs ?? []) {
      if (!isNumberWord(word)) continue;
      const words = [...said, word];
      const digits = inDigits(words);
      if (digits !== null) this.lay(gap, before, digits, { words, to });
      if (words.length < longestNumber) this.layNumbers(gap, before, to, words);
    }
  }

  private lay(gap: Gap, before: string, form: string, complete: Complete): void {
    const capital = form.slice(0, 1).toUpperCase() + form.slice(1);
    for (const written of new Set([form, capital])) {
      const tokens = this.speller.spell(before + written.replaceAll(" ", "▁")) ?? [];
      let [place, letters]: [Growing, string] = [gap, ""];
      for (const token of tokens) {
        letters += this.speller.textOf(token).toLowerCase();
        const child = place.next.get(token) ?? gap.places.get(letters) ?? newPlace(gap.state, false);
        gap.places.set(letters, child);
        place.next.set(token, child);
        place = child;
      }
      if (tokens.length > 0 && !place.complete.includes(complete)) place.complete.push(complete);
    }
  }
}

type Growing = Omit<Place, "next" | "complete"> & {
  readonly next: Map<number, Growing>;
  readonly complete: Complete[];
};

/** The places of a gap's words by the letters up to them: with a capital and without is one place. */
type Gap = Growing & { readonly places: Map<string, Growing> };

function newPlace(state: number, isGap: boolean): Growing {
  return { state, isGap, next: new Map(), complete: [] };
}
