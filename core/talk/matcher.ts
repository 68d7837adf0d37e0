import type { Pattern } from "./pattern.ts";
import type { SlotName } from "./slots.ts";
import { isFiller } from "./utterance.ts";

/** What one slot caught: its value and how many words it took. */
export interface Caught {
  readonly slot: SlotName;
  readonly value: unknown;
  readonly words: number;
  /** False for words that the kitchen does not know by that name. */
  readonly known: boolean;
}

/** A reading of a whole utterance by one pattern. `literal` counts the pattern's own words that were said. */
export interface Match {
  readonly caught: readonly Caught[];
  readonly literal: number;
}

/** All ways to read a slot from word `from` on. */
export type SlotReader = (slot: SlotName, from: number) => readonly (Caught & { readonly next: number })[];

type Go = (at: number, caught: readonly Caught[], literal: number) => void;

/**
 * Every way in which `pattern` reads all of `words`. Fillers may stand anywhere in the utterance, and articles of
 * the pattern need not be said. Plain backtracking: patterns are short, and a word that does not fit ends a branch.
 */
export function matches(pattern: Pattern, words: readonly string[], read: SlotReader): readonly Match[] {
  const found: Match[] = [];
  walk(pattern, 0, [], 0, words, read, (at, caught, literal) => {
    if (overFillers(words, at) === words.length) found.push({ caught, literal });
  });
  return found;
}

function overFillers(words: readonly string[], from: number): number {
  let at = from;
  while (at < words.length && isFiller(words[at] ?? "")) at += 1;
  return at;
}

/** "Half an onion" is not "half the onion": an article of the other kind weighs more than a word that fits. */
const strangeness = (meant: string, said: string): number =>
  meant === "the" && (said === "a" || said === "an") ? 2 : 0;

function walk(
  pattern: Pattern,
  at: number,
  caught: readonly Caught[],
  literal: number,
  words: readonly string[],
  read: SlotReader,
  go: Go,
): void {
  switch (pattern.kind) {
    case "word": {
      const next = isFiller(pattern.word) ? overFillers(words, at) : overFillers(words, at) + 1;
      if (isFiller(pattern.word)) go(at, caught, literal - strangeness(pattern.word, words[at] ?? ""));
      else if (words[next - 1] === pattern.word) go(next, caught, literal + 1);
      return;
    }
    case "slot":
      for (const start of new Set([at, overFillers(words, at)])) {
        for (const one of read(pattern.slot, start)) go(one.next, [...caught, one], literal);
      }
      return;
    case "maybe":
      walk(pattern.of, at, caught, literal, words, read, go);
      go(at, caught, literal);
      return;
    case "any":
      for (const one of pattern.of) walk(one, at, caught, literal, words, read, go);
      return;
    case "all":
      walkAll(pattern.of, 0, at, caught, literal, words, read, go);
      return;
    case "rule":
      throw new Error(`the phrasebook names no rule, but "${pattern.rule}" was met`);
  }
}

function walkAll(
  of: readonly Pattern[],
  index: number,
  at: number,
  caught: readonly Caught[],
  literal: number,
  words: readonly string[],
  read: SlotReader,
  go: Go,
): void {
  const part = of[index];
  if (part === undefined) {
    go(at, caught, literal);
    return;
  }
  walk(part, at, caught, literal, words, read, (next, more, said) => {
    walkAll(of, index + 1, next, more, said, words, read, go);
  });
}

/**
 * Groups of words of which each must be there for the pattern to fit: one of each group.
 * Most lines fail here, before any of them is walked.
 */
export function neededWords(pattern: Pattern): readonly (readonly string[])[] {
  switch (pattern.kind) {
    case "word":
      return isFiller(pattern.word) ? [] : [[pattern.word]];
    case "slot":
    case "rule":
    case "maybe":
      return [];
    case "all":
      return pattern.of.flatMap(neededWords);
    case "any": {
      // Every way through has a first group, or nothing is needed.
      const firsts = pattern.of.map((one) => neededWords(one)[0]);
      return firsts.includes(undefined) ? [] : [firsts.flatMap((group) => group ?? [])];
    }
  }
}

/** The words a sentence of this pattern can begin with; null where it may begin with a slot. Fillers are passed over. */
export function firstWords(pattern: Pattern): ReadonlySet<string> | null {
  const { words, isOpen } = beginnings(pattern);
  return isOpen ? null : words;
}

/** `isOpen`: a slot may come first. `isEmpty`: the part may be left out, so what follows may come first. */
function beginnings(pattern: Pattern): {
  readonly words: ReadonlySet<string>;
  readonly isOpen: boolean;
  readonly isEmpty: boolean;
} {
  switch (pattern.kind) {
    case "word": {
      const isEmpty = isFiller(pattern.word);
      return { words: new Set(isEmpty ? [] : [pattern.word]), isOpen: false, isEmpty };
    }
    case "slot":
    case "rule":
      return { words: new Set(), isOpen: true, isEmpty: false };
    case "maybe":
      return { ...beginnings(pattern.of), isEmpty: true };
    case "any": {
      const parts = pattern.of.map(beginnings);
      const words = new Set(parts.flatMap((part) => [...part.words]));
      return {
        words,
        isOpen: parts.some((part) => part.isOpen),
        isEmpty: parts.some((part) => part.isEmpty),
      };
    }
    case "all": {
      const words = new Set<string>();
      for (const part of pattern.of.map(beginnings)) {
        for (const word of part.words) words.add(word);
        if (part.isOpen || !part.isEmpty) return { words, isOpen: part.isOpen, isEmpty: false };
      }
      return { words, isOpen: false, isEmpty: true };
    }
  }
}
