import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";

const topic = "answers";

/** Answers to what the caller has just asked, and corrections of what it has just heard. */
export const answerPhrases: readonly PhraseEntry[] = [
  plain({ type: "Yes" }, topic, "question", "yes", [
    "yes",
    "yes please",
    "(yes|please) do",
    "do it",
    "sure",
    "go ahead",
    "that is right",
    "yes i am sure",
    "okay",
  ], ["y", "yep", "yeah", "ok", "right", "correct", "of course", "yes do it", "yes go ahead", "i am sure"]),
  plain({ type: "No" }, topic, "question", "no", [
    "no",
    "no thanks",
    "no thank you",
    "(better|rather) not",
    "do not [do it|do that]",
    "leave it",
    "no do not",
  ], ["n", "nope", "nah", "not now", "no way", "leave it as it is"]),
  plain({ type: "More" }, topic, "question", "more", [
    "more",
    "(tell me|say|read me) more",
    "more please",
    "and then",
    "what else",
    "the rest",
    "keep reading",
  ], ["next part", "m", "and", "what more"]),
  plain({ type: "NeverMind" }, topic, "question", "never mind", [
    "never mind",
    "forget (it|about it)",
    "it does not matter",
    "drop it",
    "let it be",
    "not important",
    "none of (them|those|these)",
  ], ["nevermind", "nvm", "none", "neither"]),
  {
    intent: "Correct", topic, occasion: "corrected", example: "no, fifteen",
    says: [
      "no {span}",
      "no i said {span}",
      "i said {span}",
      "i meant {span}",
      "make (it|that) {span}",
      "not that {span}",
      "no {number}",
      "no i said {number}",
      "i (said|meant) {number}",
    ],
    typed: [
      "(make|change) (it|that) [to] {number}",
      "(change) (it|that) to {span}",
      "no (make|change) (it|that) [to] {span}",
      "no (make|change) (it|that) [to] {number}",
      "no not that {span}",
      "{number} i said",
      "{number} not {span}",
    ],
    make: ({ span, number }) => ({ type: "Correct", span: number === null ? span : null, number }),
  },
  {
    intent: "Pick", topic, occasion: "question", example: "the first",
    says: [
      "[the] {pick}",
      "[the] {pick} one",
      "number {pick}",
      "i (mean|meant) the {pick} [one]",
      "take the {pick} [one]",
      "(that is|it is) the {pick} [one]",
    ],
    typed: ["{pick} please", "option {pick}"],
    make: ({ pick }) => ({ type: "Pick", candidate: pick ?? 0 }),
  },
];
