import type { IntentOf } from "../intent.ts";
import { mention } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";

const topic = "asking";

const amountOf = (
  how: IntentOf<"ChangeAmount">["how"],
  example: string,
  says: readonly string[],
  typed: readonly string[],
): PhraseEntry => ({
  intent: "ChangeAmount",
  topic,
  occasion: "meal",
  example,
  says,
  typed,
  make: ({ quantity, food, dish }) => ({
    type: "ChangeAmount",
    how,
    amount: quantity,
    times: null,
    food: mention(food),
    dish: mention(dish),
  }),
});

const timesOf = (
  times: string,
  example: string | null,
  says: readonly string[],
  typed: readonly string[],
): PhraseEntry => ({
  intent: "ChangeAmount",
  topic,
  occasion: "meal",
  example,
  says,
  typed,
  make: ({ food, dish }) => ({
    type: "ChangeAmount",
    how: "wanted",
    amount: null,
    times,
    food: mention(food),
    dish: mention(dish),
  }),
});

/** The amount of a food is another than the recipe's. */
export const changingPhrases: readonly PhraseEntry[] = [
  amountOf(
    "used",
    "I used three cloves of garlic",
    ["i used {quantity} {food} [in the {dish}]", "i have used {quantity} {food}", "i took {quantity} {food}"],
    ["used {quantity} {food}", "{quantity} {food} used"],
  ),
  amountOf(
    "wanted",
    "make it two tablespoons of lemon juice",
    ["make (it|that) {quantity} {food} [in the {dish}]", "we want {quantity} {food}"],
    ["take {quantity} {food} [instead]", "{quantity} {food} instead"],
  ),
  timesOf(
    "2/1",
    "twice the cumin",
    ["(twice|double) the {food} [in the {dish}]"],
    ["twice as (much|many) {food}", "(make it|use|take) (twice|double) the {food}"],
  ),
  timesOf(
    "1/2",
    null,
    ["(half|only half) the {food} [in the {dish}]"],
    ["half as (much|many) {food}", "(make it|use|take) half the {food}"],
  ),
  timesOf("3/1", null, ["three times the {food}"], ["three times as (much|many) {food}"]),
];
