import { mention } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";

const by = "(in|on|with|over|under)";

/** How a step is done that can be done in several ways. */
export const wayPhrases: readonly PhraseEntry[] = [
  {
    intent: "TakeWay",
    topic: "moving",
    occasion: "ways",
    example: "use the pan",
    says: [
      "use (the|a) {way} [for (this|that|it)]",
      "i (will use|am using) (the|a) {way}",
      `do (this|that|it|them) ${by} (the|a) {way}`,
      `(make|cook) (this|that|it|them) ${by} (the|a) {way}`,
      `let us do (this|that|it|them) ${by} (the|a) {way}`,
      "take (the|a) {way} instead",
    ],
    typed: ["{way} instead", `${by} (the|a) {way} instead`],
    make: ({ way }) => ({ type: "TakeWay", way: way ?? "", target: null }),
  },
  {
    intent: "TakeWay",
    topic: "moving",
    occasion: "ways",
    example: "do the flatbreads in the oven",
    says: [
      "use (the|a) {way} for the {target}",
      `(do|make|cook) the {target} ${by} (the|a) {way}`,
      `let us do the {target} ${by} (the|a) {way}`,
    ],
    typed: [`[the] {target} ${by} (the|a) {way} instead`],
    make: ({ way, target }) => ({ type: "TakeWay", way: way ?? "", target: mention(target) }),
  },
  {
    intent: "WhyWay",
    topic: "asking",
    occasion: "ways",
    example: "why the oven",
    says: [
      "why the {way}",
      `why ${by} (the|a) {way}`,
      "why not the {way}",
      `why not ${by} (the|a) {way}`,
      "why not use (the|a) {way}",
      "why (do|should) i use (the|a) {way}",
      `why (is it|are they) ${by} (the|a) {way}`,
    ],
    typed: ["why {way}", "why not {way}"],
    make: ({ way }) => ({ type: "WhyWay", way: way ?? "" }),
  },
];
