import { minutes } from "../../units/quantity.ts";
import type { Span } from "../../units/duration.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";

const topic = "moving";

/** "The last" stands where a length has its article, so these two are lines of their own. */
const quarter: Span = { low: minutes(15), high: minutes(15) };
const half: Span = { low: minutes(30), high: minutes(30) };

/** How the last minutes before dinner are asked for. */
const freeLines = (length: string): readonly string[] => [
  `(nothing|no work) in the last ${length} [before dinner]`,
  `keep the last ${length} free`,
  `i want the last ${length} free`,
  `i want nothing to do in the last ${length}`,
  `leave me the last ${length} [before dinner]`,
  `i do nothing in the last ${length}`,
];

/** What the cook wishes of the plan. */
export const wishPhrases: readonly PhraseEntry[] = [
  {
    intent: "KeepFree",
    topic,
    occasion: "meal",
    example: "nothing in the last ten minutes",
    says: freeLines("{span}"),
    typed: ["(keep|leave) {span} free before dinner", "last {span} free", "{span} free before dinner"],
    make: ({ span }) => ({ type: "KeepFree", span }),
  },
  {
    intent: "KeepFree",
    topic,
    occasion: "meal",
    example: null,
    says: freeLines("quarter of an hour"),
    typed: freeLines("quarter hour"),
    make: () => ({ type: "KeepFree", span: quarter }),
  },
  {
    intent: "KeepFree",
    topic,
    occasion: "meal",
    example: null,
    says: freeLines("half hour"),
    typed: freeLines("half an hour"),
    make: () => ({ type: "KeepFree", span: half }),
  },
  {
    intent: "KeepFree",
    topic,
    occasion: "always",
    example: null,
    says: [],
    typed: ["keep the last minutes free", "nothing in the last minutes", "no work in the last minutes"],
    make: () => ({ type: "KeepFree", span: null }),
  },
  plain(
    { type: "KeepNoneFree" },
    topic,
    "meal",
    "I can work until dinner",
    [
      "i can work until (dinner|supper|lunch)",
      "the last minutes need not be free",
      "you can use the last minutes [too]",
      "i do not need the last minutes free",
      "use all the time until (dinner|supper|lunch)",
      "keep no minutes free",
    ],
    ["keep nothing free", "work until dinner", "no minutes free"],
  ),
  {
    intent: "LeaveOut",
    topic,
    occasion: "meal",
    example: "leave out the slaw",
    // Said of a step as well: what is no dish's name is the step's.
    says: ["leave out the {target}", "leave the {target} out"],
    typed: ["i am leaving out the {target}"],
    make: ({ target }) => ({ type: "LeaveOut", target: { by: "words", words: target ?? "" } }),
  },
  {
    intent: "LeaveOut",
    topic,
    occasion: "meal",
    example: null,
    says: [
      "(we|let us) go without the {dish}",
      "(we|let us) do without the {dish}",
      "drop the {dish}",
      "we do not need the {dish}",
      "(skip|leave out) the whole {dish}",
      "there will be no {dish}",
    ],
    typed: ["no {dish} tonight", "without the {dish}", "forget about the {dish}"],
    make: ({ dish }) => ({ type: "LeaveOut", target: { by: "words", words: dish ?? "" } }),
  },
  plain(
    { type: "AskWishes" },
    "asking",
    "meal",
    "what did I wish for",
    [
      "what did i wish for",
      "what have i wished for",
      "what are my wishes",
      "(tell|read) me my wishes",
      "what did i want of the plan",
      "which wishes do i have",
    ],
    ["my wishes", "what did i wish"],
  ),
];
