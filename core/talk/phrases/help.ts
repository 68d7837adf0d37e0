import type { Intent, Topic } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";
import type { Slots } from "../slots.ts";

const topic = "asking";

type ExamplesOf = (topic: Topic) => readonly string[];

const convert = ({ measure, unit, heat, scale }: Slots): Intent => {
  if (heat !== null && scale !== null) return { type: "ConvertHeat", from: heat, to: scale };
  if (unit === null) throw new Error("a conversion without a unit");
  return { type: "Convert", from: measure, to: unit };
};

const conversions: readonly PhraseEntry[] = [
  {
    intent: "Convert",
    topic,
    occasion: "always",
    example: "how many tablespoons in a quarter cup",
    says: [
      "how many {unit} [are|is] in {measure}",
      "how many {unit} are there in {measure}",
      "how many {unit} make {measure}",
      "how many {unit} is {measure}",
      "(what is|what are) {measure} in {unit}",
      "(convert|change|turn) {measure} (to|into) {unit}",
      "how much is {measure} in {unit}",
    ],
    typed: ["{measure} (in|to|into|as) {unit}", "how many {unit} to {measure}", "{unit} in {measure}"],
    make: convert,
  },
  {
    intent: "ConvertHeat",
    topic,
    occasion: "always",
    example: "what is one eighty celsius in fahrenheit",
    says: [
      "what is {heat} in {scale}",
      "how (hot|much) is {heat} in {scale}",
      "(convert|change|turn) {heat} (to|into) {scale}",
      "{heat} in {scale}",
      "how many degrees {scale} is {heat}",
    ],
    typed: ["{heat} (to|into|as) {scale}"],
    make: convert,
  },
];

const whatCanISay: PhraseEntry = plain(
  { type: "WhatCanISay", examples: null },
  topic,
  "always",
  "what can I say",
  [
    "what can i say",
    "what can i ask [you]",
    "what can you do",
    "help [me]",
    "what are my (choices|options)",
    "what do you understand",
  ],
  ["commands", "options", "what do i say", "how does this work"],
);

/**
 * Conversions, and what can be said at all.
 * @param examplesOf what can be said in a chapter; asked when the phrasebook is whole
 */
export const helpfulPhrases = (examplesOf: ExamplesOf): readonly PhraseEntry[] => [
  ...conversions,
  whatCanISay,
  helpPhrase(examplesOf, "moving", ["moving", "steps", "cooking"]),
  helpPhrase(examplesOf, "timers", ["timers"]),
  helpPhrase(examplesOf, "asking", ["questions", "asking", "amounts"]),
  helpPhrase(examplesOf, "left", ["leftovers"]),
  helpPhrase(examplesOf, "eating", ["diet", "my diet", "food values"]),
  helpPhrase(examplesOf, "list", ["the list", "shopping"]),
  helpPhrase(examplesOf, "voice", ["your voice", "the voice", "voices"]),
];

function helpPhrase(examplesOf: ExamplesOf, of: Topic, names: readonly string[]): PhraseEntry {
  const named = `(${names.join("|")})`;
  return {
    intent: "WhatCanISay",
    topic,
    occasion: "always",
    example: null,
    says: [`what can i say about ${named}`, `help [me] with ${named}`],
    typed: [`help ${named}`, `what can i say for ${named}`, `${named} help`],
    make: () => ({ type: "WhatCanISay", examples: examplesOf(of) }),
  };
}
