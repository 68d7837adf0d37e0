import { mention } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";

const topic = "eating";
const occasion = "foods";

const ofHelping: PhraseEntry = {
  intent: "HowMuchValue",
  topic,
  occasion,
  example: "how much sodium is in a bowl of the soup",
  says: [
    "how (much|many) {nutrient} (is|are) in (a|one) {helping}",
    "how (much|many) {nutrient} (is|are) in (a|one) {helping} of the {dish}",
    "how (much|many) {nutrient} does (a|one) {helping} [of the {dish}] have",
    "how (much|many) {nutrient} (is|are) there (to|for) (a|one) {helping}",
    "how (much|many) {nutrient} per {helping} [of the {dish}]",
  ],
  typed: ["{nutrient} per {helping} [of [the] {dish}]", "{nutrient} in (a|one) {helping} [of [the] {dish}]"],
  make: ({ nutrient, helping, dish }) => ({
    type: "HowMuchValue",
    nutrient: nutrient ?? "energy",
    of: { helping: helping ?? "serving" },
    dish: mention(dish),
  }),
};

/** Food labels speak of sodium, cooks of salt. */
const saltOfHelping: PhraseEntry = {
  intent: "HowMuchValue",
  topic,
  occasion,
  example: null,
  says: [
    "how much salt is in (a|one) {helping} [of the {dish}]",
    "how much salt per {helping} [of the {dish}]",
  ],
  typed: [],
  make: (slots) => ofHelping.make({ ...slots, nutrient: "sodium" }),
};

const ofDish: PhraseEntry = {
  intent: "HowMuchValue",
  topic,
  occasion,
  example: "how much sodium is in the soup",
  says: [
    "how (much|many) {nutrient} (is|are) in the {dish}",
    "how (much|many) {nutrient} (is|are) there in the {dish}",
    "how (much|many) {nutrient} does the {dish} have",
  ],
  typed: ["{nutrient} in [the] {dish}", "how (much|many) {nutrient} has the {dish}"],
  make: ({ nutrient, dish }) => ({
    type: "HowMuchValue",
    nutrient: nutrient ?? "energy",
    of: "dish",
    dish: mention(dish),
  }),
};

function ofAll(
  of: "meal" | "day",
  example: string,
  says: readonly string[],
  typed: readonly string[],
): PhraseEntry {
  return {
    intent: "HowMuchValue",
    topic,
    occasion,
    example,
    says,
    typed,
    make: ({ nutrient }) => ({ type: "HowMuchValue", nutrient: nutrient ?? "energy", of, dish: null }),
  };
}

const mayI = "(may|can|should) (i|we)";

/** May I eat it, and what is in it. */
export const eatingPhrases: readonly PhraseEntry[] = [
  ofHelping,
  saltOfHelping,
  ofDish,
  ofAll(
    "meal",
    "how much sodium is in the whole meal",
    [
      "how (much|many) {nutrient} (is|are) in the [whole] meal",
      "how (much|many) {nutrient} (is|are) in (everything|dinner|all of it)",
      "how (much|many) {nutrient} does the [whole] meal have",
    ],
    ["how (much|many) {nutrient} (is|are) in (it|this)", "{nutrient} in (all|the meal)"],
  ),
  ofAll(
    "day",
    "how much sodium did I have today",
    [
      "how (much|many) {nutrient} did (i|we) (have|eat) today",
      "how (much|many) {nutrient} have (i|we) had today",
      "how (much|many) {nutrient} (is|are) in all of today",
      "how (much|many) {nutrient} for the [whole] day",
    ],
    ["{nutrient} today", "how (much|many) {nutrient} today"],
  ),
  {
    intent: "AskValues",
    topic,
    occasion,
    example: "tell me the food values of the soup",
    says: [
      "(tell|read) me the food values of the {dish}",
      "what are the food values of the {dish}",
      "what food values does the {dish} have",
      "(tell|read) me the food values",
      "what are the food values",
      "what are the food values of (the meal|everything)",
    ],
    typed: ["food values [of [the] {dish}]"],
    make: ({ dish }) => ({ type: "AskValues", dish: mention(dish) }),
  },
  plain({ type: "AskSources" }, topic, occasion, "where do the figures come from", [
    "where do the (figures|values) come from",
    "where are the (figures|values) from",
    "how do you know the (figures|values)",
    "what is the source of the (figures|values)",
    "who says so",
    "are the (figures|values) sure",
  ]),
  {
    intent: "MayIHave",
    topic,
    occasion,
    example: "may I have rice today",
    says: [
      `${mayI} (have|eat) [any|some|the] {edible} [today|now|tonight]`,
      `${mayI} (have|eat) [any|some|the] {edible} this week`,
      "am i allowed [any|some|the] {edible}",
      "am i allowed to (have|eat) [the] {edible}",
      "(is|are) [the] {edible} allowed",
      "(is|are) [the] {edible} on my diet",
      "does my diet allow [the] {edible}",
      "how (often|much) may (i|we) (have|eat) [the] {edible}",
      "what does my diet say (about|to) [the] {edible}",
    ],
    typed: [`${mayI} (have|eat) {edible} (once|again)`, "{edible} allowed"],
    make: ({ edible }) => ({ type: "MayIHave", food: mention(edible) }),
  },
  plain(
    { type: "IsItAllowed" },
    topic,
    occasion,
    "is everything allowed",
    [
      "is (it|this|everything|the meal|all of it) allowed",
      `${mayI} (eat|have) (all of it|everything|this)`,
      "is there anything (i|we) may not (eat|have)",
      "does the meal (fit|keep to) my diet",
      "check the meal against my diet",
      "what is not allowed",
    ],
    ["what does my diet say", "check my diet", "is (it|everything) on my diet"],
  ),
];
