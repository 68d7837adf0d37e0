import type { Automaton } from "./automaton.ts";

/**
 * How far words have come through a grammar.
 * - begun: a sentence could go on from here, but this is none yet.
 * - may-go-on: a sentence, which longer ones begin with.
 * - finished: a sentence that nothing can be added to but a courtesy, which is not waited for.
 * - unmatched: no sentence begins so.
 */
export type Progress = "begun" | "may-go-on" | "finished" | "unmatched";

/** How far words have come through an automaton. */
export function progressThrough({ start, states }: Automaton, words: readonly string[]): Progress {
  let here = states[start];
  for (const word of words) {
    const arc = here?.arcs.find((each) => each.word === word);
    if (arc === undefined) return "unmatched";
    here = states[arc.to];
  }
  if (here === undefined) return "unmatched";
  if (!here.isEnd) return "begun";
  return here.arcs.every(({ word }) => isCourtesy(word)) ? "finished" : "may-go-on";
}

/** It may end any sentence and changes none. */
const isCourtesy = (word: string): boolean => word === "please";
