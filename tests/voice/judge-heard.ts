import { toAutomaton } from "../../core/speech/automaton.ts";
import type { Grammar } from "../../core/speech/grammar.ts";
import { progressThrough } from "../../core/speech/progress.ts";
import { spokenWords } from "../../core/speech/spoken-words.ts";
import type { IntentType } from "../../core/talk/intent.ts";
import type { Kitchen } from "../../core/talk/model.ts";
import { phrasebook } from "../../core/talk/phrasebook.ts";
import { respond } from "../../core/talk/respond.ts";
import { understand } from "../../core/talk/understand.ts";

/** What a sentence came to: what it wanted, nothing, or something else. */
export type Outcome = "right" | "silent" | "wrong";

/**
 * Whether words that were heard want what the sentence wanted: the same intent with the same slots. Two names of one
 * thing ("soup", "lentil soup") are the same slot where the caller does and answers the same.
 */
export function judgeHeard(sentence: string, heard: string | null, kitchen: Kitchen): Outcome {
  if (heard === null) return "silent";
  const wanted = understand(sentence, kitchen).intent;
  const got = understand(heard, kitchen).intent;
  if (JSON.stringify(wanted) === JSON.stringify(got)) return "right";
  return wanted?.type === got?.type && deedOf(sentence, kitchen) === deedOf(heard, kitchen)
    ? "right"
    : "wrong";
}

/** All that a sentence would do and have answered, as text to compare. */
function deedOf(sentence: string, kitchen: Kitchen): string {
  const { say, orders, voice } = respond(sentence, kitchen);
  return JSON.stringify([say, orders, voice]);
}

/** Whether a grammar has a sentence, so that it can be heard at all. */
export function isInGrammar(sentence: string, grammar: Grammar): boolean {
  const automaton = toAutomaton({ grammar, address: null, mode: "open", stopSentences: [] });
  if (!automaton.ok) throw new Error(automaton.error);
  const come = progressThrough(automaton.value, spokenWords(sentence));
  return come === "finished" || come === "may-go-on";
}

/** All that can be wanted by voice, whatever the moment. */
export const spokenIntents: ReadonlySet<IntentType> = new Set(
  phrasebook.filter(({ says }) => says.length > 0).map(({ intent }) => intent),
);
