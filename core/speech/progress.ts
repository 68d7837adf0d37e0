import { reachableRules } from "./check-grammar.ts";
import type { Grammar, Phrase } from "./grammar.ts";
import { spokenWords } from "./spoken-words.ts";

/**
 * How far words have come through a grammar.
 * - begun: a sentence could go on from here, but this is none yet.
 * - may-go-on: a sentence, which longer ones begin with.
 * - finished: a sentence that nothing can be added to.
 * - unmatched: no sentence begins so.
 */
export type Progress = "begun" | "may-go-on" | "finished" | "unmatched";

type Edge = { readonly word: string | null; readonly to: number };

/** A grammar made ready for asking how far words have come; build it once for each grammar. */
export type Matcher = { readonly progress: (words: readonly string[]) => Progress };

/** Makes a matcher. A grammar that cannot be read matches nothing. */
export function createMatcher(grammar: Grammar): Matcher {
  const rules = reachableRules(grammar);
  if (!rules.ok) return { progress: () => "unmatched" };
  const phrases = new Map(rules.value);
  const edges: Edge[][] = [[], []];
  const end = 1;
  const add = (from: number, word: string | null, to: number): void => void edges[from]?.push({ word, to });
  const state = (): number => edges.push([]) - 1;
  const chain = (parts: readonly ((from: number, to: number) => void)[], from: number, to: number): void => {
    const last = parts.reduce((at, part) => {
      const next = state();
      part(at, next);
      return next;
    }, from);
    add(last, null, to);
  };
  const build = (phrase: Phrase, from: number, to: number): void => {
    switch (phrase.kind) {
      case "words":
        return chain(
          spokenWords(phrase.text).map((word) => (a: number, b: number) => add(a, word, b)),
          from,
          to,
        );
      case "sequence":
        return chain(
          phrase.of.map((part) => (a: number, b: number) => build(part, a, b)),
          from,
          to,
        );
      case "choice":
        return phrase.of.forEach((part) => build(part, from, to));
      case "optional":
        add(from, null, to);
        return build(phrase.of, from, to);
      case "rule": {
        const used = phrases.get(phrase.name);
        if (used !== undefined) build(used, from, to);
      }
    }
  };
  build({ kind: "rule", name: grammar.root }, 0, end);
  return { progress: (words) => progressThrough(edges, end, words) };
}

function progressThrough(
  edges: readonly (readonly Edge[])[],
  end: number,
  words: readonly string[],
): Progress {
  const closure = (starts: Iterable<number>): ReadonlySet<number> => {
    const seen = new Set(starts);
    for (const at of seen) for (const edge of edges[at] ?? []) if (edge.word === null) seen.add(edge.to);
    return seen;
  };
  let here = closure([0]);
  for (const word of words) {
    const next = [...here].flatMap((at) =>
      (edges[at] ?? []).filter((edge) => edge.word === word).map((edge) => edge.to),
    );
    if (next.length === 0) return "unmatched";
    here = closure(next);
  }
  const canGoOn = [...here].some((at) => (edges[at] ?? []).some((edge) => edge.word !== null));
  if (!here.has(end)) return "begun";
  return canGoOn ? "may-go-on" : "finished";
}
