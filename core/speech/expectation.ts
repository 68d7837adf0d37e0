import { type Acceptance, judge } from "./acceptance.ts";
import { type Automaton, toAutomaton } from "./automaton.ts";
import { type Progress, progressThrough } from "./progress.ts";
import type { ListenFor } from "./recogniser.ts";
import { spokenWords } from "./spoken-words.ts";
import type { Verdict } from "./verdict.ts";
import type { Hypothesis } from "./word-engine.ts";

/** What is listened for, made ready for judging words by. */
export type Expectation = {
  readonly what: ListenFor;
  /** Null for a grammar that cannot be read: it matches nothing. */
  readonly automaton: Automaton | null;
  readonly address: readonly string[];
};

/** Makes an expectation; once for each change of what is listened for. */
export function expectation(what: ListenFor): Expectation {
  const automaton = toAutomaton(what);
  return { what, automaton: automaton.ok ? automaton.value : null, address: spokenWords(what.address ?? "") };
}

/** Whether words begin with the address. */
export function isAddressed({ address }: Expectation, words: readonly string[]): boolean {
  return address.length > 0 && address.every((word, at) => words[at] === word);
}

/** How far words have come; null where they are the address alone or nothing yet. */
export function progressOf(expected: Expectation, words: readonly string[]): Progress | null {
  const isAddressAlone = isAddressed(expected, words) && words.length === expected.address.length;
  return words.length === 0 || isAddressAlone ? null : progress(expected, words);
}

/** What a hypothesis comes to. An engine without rules may string words together: what is no sentence is doubted. */
export function verdictOn(expected: Expectation, hypothesis: Hypothesis, acceptance: Acceptance): Verdict {
  const { what, address } = expected;
  const judged = judge(hypothesis, what.address, what.mode, acceptance);
  if (judged.kind !== "command") return judged;
  const come = progress(expected, judged.addressed ? [...address, ...judged.words] : judged.words);
  return come === "finished" || come === "may-go-on" ? judged : { kind: "none", why: "doubtful" };
}

const progress = ({ automaton }: Expectation, words: readonly string[]): Progress =>
  automaton === null ? "unmatched" : progressThrough(automaton, words);
