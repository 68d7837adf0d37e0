import { mention } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";

const topic = "asking";
const occasion = "meal";

/** How much is made: for how many, and of how little. */
export const servingPhrases: readonly PhraseEntry[] = [
  {
    intent: "MakeFor",
    topic,
    occasion,
    example: "make the soup for six",
    says: [
      "make the {dish} for {number} [people]",
      "make {number} {helping} of the {dish}",
      "i want {number} {helping} of the {dish}",
    ],
    typed: ["{dish} for {number}", "scale the {dish} to {number}"],
    make: ({ number, dish }) => ({ type: "MakeFor", servings: number, dish: mention(dish) }),
  },
  {
    intent: "MakeFor",
    topic,
    occasion,
    example: "cook for six",
    says: ["cook for {number} [people]", "there are {number} of us [tonight]", "we are {number} tonight"],
    typed: ["for {number} people", "make everything for {number}"],
    make: ({ number }) => ({ type: "MakeFor", servings: number, dish: null }),
  },
  {
    intent: "HaveOnly",
    topic,
    occasion,
    example: "I have only two hundred grams of lentils",
    says: [
      "(i|we) have [only] {quantity} {food} [for the {dish}]",
      "(i|we) only have {quantity} {food}",
      "all (i|we) have is {quantity} {food}",
      "(is|are) {quantity} {food} enough [for the {dish}]",
      "there (is|are) only {quantity} {food}",
    ],
    typed: ["only {quantity} {food}"],
    make: ({ quantity, food, dish }) => ({
      type: "HaveOnly",
      amount: quantity,
      food: mention(food),
      dish: mention(dish),
    }),
  },
];
