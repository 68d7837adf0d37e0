import type { Intent } from "../intent.ts";
import { mention } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";

const topic = "list";
const list = "(the|my|our) [shopping|buying] list";

/** What is said of a line of the list. */
function ofLine(
  type: "TakeOffList" | "InTheBag" | "NotInTheBag",
  occasion: "listed" | "shopping",
  example: string,
  says: readonly string[],
  typed: readonly string[],
): PhraseEntry {
  const make = ({ listed }: { readonly listed: string | null }): Intent => ({ type, what: mention(listed) });
  return { intent: type, topic, occasion, example, says, typed, make };
}

/** What is to be bought: put on the list, taken off, read out and ticked. */
export const listPhrases: readonly PhraseEntry[] = [
  {
    intent: "PutOnList",
    topic,
    occasion: "adding",
    example: "add lemons to the list",
    says: [
      `(add|put) [the|some|more] {thing} (to|on) ${list}`,
      // "I am out of it" asks what may stand in for it, at the stove.
      "((we|i) need [some] more|we are out of) {thing}",
    ],
    typed: [
      "(we|i) need to buy [some|more] {thing}",
      "we have (no more|run out of) {thing}",
      "there is no more {thing}",
      "we ran out of {thing}",
    ],
    make: ({ thing }) => ({ type: "PutOnList", what: mention(thing) }),
  },
  {
    intent: "PutOnList",
    topic,
    // At the stove "we need bread" may be about the next step.
    occasion: "shopping",
    example: "we need bread",
    says: ["(we|i) need [some] {thing}"],
    typed: [],
    make: ({ thing }) => ({ type: "PutOnList", what: mention(thing) }),
  },
  ofLine(
    "TakeOffList",
    "listed",
    "take lemons off the list",
    [`(take|strike) {listed} off ${list}`, `remove {listed} from ${list}`],
    ["(we|i) do not need [to buy] {listed} any more"],
  ),
  plain(
    { type: "AskList" },
    topic,
    "listed",
    "what is on the list",
    [
      `what is [still] on ${list}`,
      "what do (i|we) [still] (have|need) to buy",
      "what is (still|left) to buy",
      "(read|tell) me the [shopping|buying] list",
    ],
    ["[shopping|buying] list", "what to buy"],
  ),
  ofLine(
    "InTheBag",
    "shopping",
    "I have the lemons",
    [
      "(i|we) have [got] the {listed}",
      "the {listed} (is|are) in the (bag|basket)",
      "tick [off] the {listed}",
    ],
    ["(i|we) got the {listed}", "(check|cross) off the {listed}"],
  ),
  ofLine(
    "NotInTheBag",
    "shopping",
    "put the lemons back on the list",
    [
      "untick the {listed}",
      "put the {listed} back on the list",
      "(i|we) do not have the {listed} yet",
      "the {listed} (is|are) not in the (bag|basket)",
    ],
    ["uncheck the {listed}"],
  ),
];
