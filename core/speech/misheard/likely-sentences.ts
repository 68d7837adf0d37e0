import { type Automaton, toAutomaton } from "../automaton.ts";
import { spokenWords } from "../spoken-words.ts";
import type { Sentence } from "./watch.ts";

/** A beginning of a sentence, and what it costs to make it from each beginning of what was heard. */
type Path = { readonly state: number; readonly words: readonly string[]; readonly costs: readonly number[] };

/** Beginnings that are followed at once; the best stays among them unless its first words were lost altogether. */
const width = 80;

/** More are a long list to read for one that was misheard. */
const mostLikely = 6;

/** What a sentence may have been instead of what was heard: the ear's own rivals, then what could be said and is like it. */
export function likelyInstead({ heard, rivals, grammar }: Sentence): readonly string[] {
  const automaton = toAutomaton({ grammar, address: null, mode: "open", stopSentences: [] });
  const like = automaton.ok ? likelySentences(automaton.value, spokenWords(heard), mostLikely + 1) : [];
  return [...new Set([...rivals, ...like])].filter((sentence) => sentence !== heard).slice(0, mostLikely);
}

/** No sentence is longer. */
const mostWords = 24;

/**
 * The sentences of an automaton that are most like words that came to none, the likest first: fewest words wrong, a
 * word that is partly right counting in part. For the cook to choose from; nothing is ever done for it.
 * @param heard without the address, as the automaton's sentences are
 */
export function likelySentences(
  { start, states }: Automaton,
  heard: readonly string[],
  count: number,
): readonly string[] {
  if (heard.length === 0) return [];
  const unlike = createUnlikeness();
  const found: { readonly sentence: string; readonly cost: number }[] = [];
  let paths: readonly Path[] = [{ state: start, words: [], costs: atFirst(heard) }];
  for (let length = 0; length <= mostWords && paths.length > 0; length++) {
    for (const { state, words, costs } of paths) {
      const isSentence = words.length > 0 && states[state]?.isEnd === true;
      if (isSentence) found.push({ sentence: words.join(" "), cost: costs.at(-1) ?? Infinity });
    }
    paths = best(
      paths.flatMap((path) =>
        (states[path.state]?.arcs ?? []).map(({ word, to }) => ({
          state: to,
          words: [...path.words, word],
          costs: nextCosts(path.costs, word, heard, unlike),
        })),
      ),
    );
  }
  found.sort((a, b) => a.cost - b.cost || a.sentence.length - b.sentence.length);
  return found
    .filter(({ cost }) => cost < heard.length)
    .slice(0, count)
    .map(({ sentence }) => sentence);
}

/** The first row of the edit distance: everything was left out so far. */
const atFirst = (heard: readonly string[]): readonly number[] => [0, ...heard.map((_, at) => at + 1)];

/** Another row of the edit distance (Levenshtein 1966), of words or letters, a wrong one costing what it is unlike. */
function nextCosts(
  costs: readonly number[],
  word: string,
  heard: readonly string[],
  unlike: (a: string, b: string) => number,
): readonly number[] {
  const next = [(costs[0] ?? 0) + 1];
  heard.forEach((other, at) => {
    const changed = (costs[at] ?? Infinity) + unlike(word, other);
    const added = (costs[at + 1] ?? Infinity) + 1;
    const left = (next[at] ?? Infinity) + 1;
    next.push(Math.min(changed, added, left));
  });
  return next;
}

function best(paths: readonly Path[]): readonly Path[] {
  return paths
    .map((path) => ({ path, least: Math.min(...path.costs) }))
    .sort((a, b) => a.least - b.least)
    .slice(0, width)
    .map(({ path }) => path);
}

/** How unlike two words are, 0 to 1: the letters that differ, of those of the longer one. Remembers its answers. */
function createUnlikeness(): (a: string, b: string) => number {
  const known = new Map<string, number>();
  return (a, b) => {
    const key = `${a} ${b}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const unlike = a === b ? 0 : letterDistance(a, b) / Math.max(a.length, b.length);
    known.set(key, unlike);
    return unlike;
  };
}

function letterDistance(a: string, b: string): number {
  const [letters, others] = [Array.from(a), Array.from(b)];
  const unlike = (one: string, other: string): number => (one === other ? 0 : 1);
  return letters.reduce((row, letter) => nextCosts(row, letter, others, unlike), atFirst(others)).at(-1) ?? 0;
}
