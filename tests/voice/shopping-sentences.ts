import type { SentenceGroup } from "./sentence-group.ts";

/** What is said while somebody looks at the list of what to buy. */
export const shoppingSentences: SentenceGroup = {
  name: "what to buy",
  moment: "shopping",
  sentences: [
    "add lemons to the list",
    "put the garlic on the shopping list",
    "we are out of nutmeg",
    "i need more cumin",
    "we need bread",
    "put kitchen paper on the list",
    "add oat milk to the list",
    "take candles off the list",
    "what is on the list",
    "what do i still have to buy",
    "i have the lemons",
    "the candles are in the bag",
    "tick off the cabbage",
    "put the lemons back on the list",
    "untick the candles",
  ],
};
