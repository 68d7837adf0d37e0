import { mention } from "../intent.ts";
import type { Scope } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";

const topic = "asking";

function howMuch(
  scope: Scope | null,
  example: string | null,
  says: readonly string[],
  typed: readonly string[],
): PhraseEntry {
  return {
    intent: "HowMuch",
    topic,
    occasion: "meal",
    example,
    says,
    typed,
    make: ({ food, dish }) => {
      const asked = mention(dish);
      return {
        type: "HowMuch",
        food: mention(food),
        scope: asked === null ? scope : { of: "dish", dish: asked },
      };
    },
  };
}

/** Questions about food: how much, and what instead. */
export const amountPhrases: readonly PhraseEntry[] = [
  howMuch(
    null,
    "how much garlic",
    [
      "how (much|many) [of the] {food}",
      "how (much|many) {food} do i need",
      "how (much|many) {food} is (it|that)",
      "what about the {food}",
      "tell me the {food} again",
      "how (much|many) {food} goes in",
    ],
    ["{food}", "{food} amount", "amount of {food}", "how (much|many) {food} (is|are) there"],
  ),
  howMuch(
    { of: "step" },
    "how much garlic in this step",
    [
      "how (much|many) {food} (now|here)",
      "how (much|many) {food} (in|for|into) this",
      "how (much|many) {food} (in|for) this step",
      "how (much|many) {food} goes (in|into) this [step]",
      "how (much|many) {food} do i need (now|here|for this)",
      "how (much|many) {food} do i add [now]",
    ],
    ["{food} here", "{food} (in|for) this step"],
  ),
  howMuch(
    { of: "meal" },
    "how much garlic in all",
    [
      "how (much|many) {food} (in all|altogether|in total)",
      "how (much|many) {food} (for|in) (everything|the meal|the whole meal)",
      "how (much|many) {food} does the meal (need|take)",
      "how (much|many) {food} do i need (in all|altogether|for everything)",
      "what is the total [of] {food}",
      "how (much|many) {food} (for|over) all the dishes",
    ],
    ["total {food}", "{food} (in all|total|in total|altogether)", "all the {food}"],
  ),
  howMuch(
    { of: "to-come" },
    "how much garlic is still to come",
    [
      "how (much|many) {food} (is|are) still to come",
      "how (much|many) {food} do i still need",
      "how much more {food} [do i need]",
      "how many more {food} [do i need]",
      "how (much|many) {food} (is|are) left",
      "do i [still] need [more|any more|any] {food}",
    ],
    ["{food} left", "{food} (to come|still to come)", "more {food}", "remaining {food}"],
  ),
  howMuch(
    null,
    "how much garlic in the flatbreads",
    [
      "how (much|many) {food} (in|for|into) the {dish}",
      "how (much|many) {food} (does|do) the {dish} (need|take)",
      "how (much|many) {food} (goes|go) (in|into) the {dish}",
    ],
    ["{food} (in|for) the {dish}", "{dish} {food}"],
  ),
  howMuch(null, null, [], ["how much", "how many", "how much of"]),
  {
    intent: "Instead",
    topic,
    occasion: "meal",
    example: "what can I use instead of garlic",
    says: [
      "what can i use instead of [the] {food}",
      "what (goes|works) instead of [the] {food}",
      "i (have no|do not have|ran out of|am out of) {food}",
      "i do not have any {food}",
      "there is no {food} [left]",
      "what (is a swap|can i swap) for [the] {food}",
      "what if i have no {food}",
    ],
    typed: [
      "instead of {food}",
      "(swap|swaps|replacement|substitute) [for] [the] {food}",
      "no {food}",
      "{food} (swap|swaps|substitute)",
      "replace [the] {food}",
      "no more {food}",
    ],
    make: ({ food }) => ({ type: "Instead", food: mention(food) }),
  },
  {
    intent: "Instead",
    topic,
    occasion: "meal",
    example: null,
    says: ["what can i use instead"],
    typed: ["instead", "swap", "what can i use instead of", "substitute"],
    make: () => ({ type: "Instead", food: null }),
  },
  {
    intent: "InsteadOfTool",
    topic,
    occasion: "meal",
    example: "what can I use instead of the blender",
    says: [
      "what can i use instead of [the|a] {tool}",
      "what (goes|works) instead of [the|a] {tool}",
      "(i|we) have no {tool}",
      "(i|we) do not have a {tool}",
      "what if i have no {tool}",
    ],
    typed: ["instead of [the|a] {tool}", "no {tool}"],
    make: ({ tool }) => ({ type: "InsteadOfTool", tool: tool ?? "" }),
  },
  {
    intent: "UseInstead",
    topic,
    occasion: "meal",
    example: "use lime juice instead",
    says: [
      "use [the] {stand} [instead]",
      "i (use|am using|will use|used) [the] {stand} [instead]",
      "(use|take) [the] {stand} instead of [the] {food}",
      "i will take [the] {stand}",
      "swap [the] {food} for [the] {stand}",
      "replace [the] {food} with [the] {stand}",
      "take [the] {stand} instead",
    ],
    typed: [
      "{stand} instead",
      "{stand} (for|instead of) [the] {food}",
      "(change|switch) [the] {food} (to|for|with) [the] {stand}",
    ],
    make: ({ stand, food }) => ({ type: "UseInstead", use: mention(stand), food: mention(food) }),
  },
  {
    intent: "UseInstead",
    topic,
    occasion: "meal",
    example: null,
    says: [
      "use (it|that) [instead]",
      "i will (use|take) that",
      "(make|do) the swap",
      "swap it",
      "let us use that",
    ],
    typed: ["swap that", "do that swap", "use the swap"],
    make: () => ({ type: "UseInstead", use: null, food: null }),
  },
];
