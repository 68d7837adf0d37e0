import { mention } from "../intent.ts";
import type { IntentOf } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";
import type { Slots } from "../slots.ts";

const topic = "asking";
type Wish = IntentOf<"NextTime">["wish"];

const entry = (
  example: string | null,
  says: readonly string[],
  typed: readonly string[],
  wish: (slots: Slots) => Wish,
): PhraseEntry => ({
  intent: "NextTime",
  topic,
  occasion: "meal",
  example,
  says,
  typed,
  make: (slots) => ({ type: "NextTime", wish: wish(slots), dish: mention(slots.dish) }),
});

const food = (slots: Slots) => ({ by: "words", words: slots.food ?? "" }) as const;

/** What is to be otherwise the next time, and what was noted. */
export const nextTimePhrases: readonly PhraseEntry[] = [
  entry(
    "next time twice the lemon juice",
    ["next time (twice|double) the {food} [in the {dish}]"],
    ["next time twice as (much|many) {food}"],
    (slots) => ({ kind: "times", times: "2/1", food: food(slots) }),
  ),
  entry(
    null,
    ["next time half the {food} [in the {dish}]"],
    ["next time half as (much|many) {food}"],
    (slots) => ({
      kind: "times",
      times: "1/2",
      food: food(slots),
    }),
  ),
  entry(
    null,
    ["next time {quantity} {food} [in the {dish}]"],
    ["next time use {quantity} {food}"],
    (slots) => ({
      kind: "amount",
      amount: slots.quantity,
      food: food(slots),
    }),
  ),
  entry("next time less cumin", ["next time less {food}"], ["next time use less {food}"], (slots) => ({
    kind: "some",
    words: "less",
    food: food(slots),
  })),
  entry(null, ["next time more {food}"], ["next time use more {food}"], (slots) => ({
    kind: "some",
    words: "more",
    food: food(slots),
  })),
  entry(
    "next time leave out the raisins",
    ["next time (leave out|without) the {food} [in the {dish}]"],
    ["next time no {food}", "next time leave the {food} out"],
    (slots) => ({ kind: "leave-out", food: food(slots) }),
  ),
  entry(
    "next time start the rice first",
    ["next time [start [with]] the {target} first", "next time start with the {target}"],
    ["next time begin with the {target}"],
    ({ target }) => ({ kind: "first", target: { by: "words", words: target ?? "" } }),
  ),
  entry(null, ["next time {note} [for the {dish}]"], ["note for next time {note}"], ({ note }) => ({
    kind: "words",
    words: note ?? "",
  })),
  plain(
    { type: "AskNotes" },
    topic,
    "meal",
    "what did I want to change",
    [
      "what did i want to change",
      "what did i note [for next time]",
      "(read|tell) me my notes",
      "what are my notes",
      "what is noted [for next time]",
    ],
    ["notes", "my notes"],
  ),
  plain(
    { type: "DropNote" },
    "answers",
    "question",
    null,
    [
      "drop (that|the|this) note",
      "forget (that|the|this) note",
      "throw (that|the) note away",
      "i do not want that note",
    ],
    ["delete the note", "no note"],
  ),
];
