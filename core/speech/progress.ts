import { type Automaton, toAutomaton } from "./automaton.ts";
import type { Grammar } from "./grammar.ts";

/**
 * How far words have come through a grammar.
 * - begun: a sentence could go on from here, but this is none yet.
 * - may-go-on: a sentence, which longer ones begin with.
 * - finished: a sentence that nothing can be added to.
 * - unmatched: no sentence begins so.
 */
export type Progress = "begun" | "may-go-on" | "finished" | "unmatched";

/** A grammar made ready for asking how far words have come; build it once for each grammar. */
export type Matcher = { readonly progress: (words: readonly string[]) => Progress };

/** Makes a matcher. A grammar that cannot be read matches nothing. */
export function createMatcher(grammar: Grammar): Matcher {
  const automaton = toAutomaton(grammar, { address: null, mode: "open" });
  return { progress: (words) => (automaton.ok ? progressThrough(automaton.value, words) : "unmatched") };
}

function progressThrough({ start, states }: Automaton, words: readonly string[]): Progress {
  let here = states[start];
  for (const word of words) {
    const arc = here?.arcs.find((each) => each.word === word);
    if (arc === undefined) return "unmatched";
    here = states[arc.to];
  }
  if (here === undefined) return "unmatched";
  if (!here.isEnd) return "begun";
  return here.arcs.length > 0 ? "may-go-on" : "finished";
}
