import { type Acceptance, judge, type Verdict } from "./acceptance.ts";
import { createMatcher, type Matcher, type Progress } from "./progress.ts";
import type { Hypothesis, ListenFor } from "./recogniser.ts";
import { spokenWords } from "./spoken-words.ts";

/** What is listened for, made ready for judging words by. */
export type Expectation = {
  readonly what: ListenFor;
  readonly matcher: Matcher;
  readonly address: readonly string[];
};

/** Makes an expectation; once for each change of what is listened for. */
export function expectation(what: ListenFor): Expectation {
  return { what, matcher: createMatcher(what.grammar), address: spokenWords(what.address ?? "") };
}

/** How far words have come, the address set aside; null where they are the address or nothing yet. */
export function progressOf(expected: Expectation, words: readonly string[]): Progress | null {
  const { address, matcher } = expected;
  const isAddressed = address.length > 0 && address.every((word, at) => words[at] === word);
  const said = isAddressed ? words.slice(address.length) : words;
  return said.length === 0 ? null : matcher.progress(said);
}

/** What a hypothesis comes to. An engine without rules may string words together: what is no sentence is doubted. */
export function verdictOn(expected: Expectation, hypothesis: Hypothesis, acceptance: Acceptance): Verdict {
  const { what, matcher } = expected;
  const judged = judge(hypothesis, what.address, what.mode, acceptance);
  if (judged.kind !== "command") return judged;
  const progress = matcher.progress(judged.words);
  return progress === "finished" || progress === "may-go-on" ? judged : { kind: "none", why: "doubtful" };
}
