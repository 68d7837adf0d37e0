import type { SourceId } from "./sources-table.ts";

/** What can hurt in a plant kitchen beside heat and knives. */
export const hazardKinds = [
  "raw-beans",
  "rice",
  "garlic-in-oil",
  "raw-sprouts",
  "honey",
  "potatoes-in-foil",
  "green-potatoes",
] as const;
export type HazardKind = (typeof hazardKinds)[number];

/** What is said of a hazard. */
export interface HazardWords {
  /** One sentence, as said aloud. */
  readonly caution: string;
  readonly source: SourceId;
  /** Where a recipe's own words match every one of these, it says so already. */
  readonly said: readonly RegExp[];
}

/** The cautions, each with its source. */
export const hazardWords: Readonly<Record<HazardKind, HazardWords>> = {
  "raw-beans": {
    caution:
      "Soak dry beans for five hours, pour that water away, and boil them for thirty minutes in fresh water; never slow-cook them from raw.",
    source: "beans",
    said: [/\bbeans?\b/i, /\bsoak/i, /\bboil/i],
  },
  rice: {
    caution:
      "Cool cooked rice within an hour, keep it in the fridge for one day at most, and heat it up only once.",
    source: "rice",
    said: [/\brice\b/i, /\bcool|\bchill/i, /\bfridge\b/i],
  },
  "garlic-in-oil": {
    caution:
      "Garlic or herbs in oil go into the fridge at once, and keep there for seven days at most; never leave them out.",
    source: "garlicOil",
    said: [/\boil\b/i, /\bfridge\b/i, /\b(?:garlic|herbs?)\b/i],
  },
  "raw-sprouts": {
    caution:
      "Raw sprouts can carry germs that washing leaves behind; cook them through for who is old, very young, pregnant or ill.",
    source: "sprouts",
    said: [/\bsprouts?\b/i, /\bcook(?:ed)? (?:them )?through\b|\bgerms\b/i],
  },
  honey: {
    caution: "No honey for a child under one year, not even cooked.",
    source: "honey",
    said: [/\bhoney\b/i, /\b(?:one year|infants?|bab(?:y|ies)|twelve months)\b/i],
  },
  "potatoes-in-foil": {
    caution:
      "Keep potatoes in foil hot until they are eaten, or unwrap them and chill them; never let them cool in their foil.",
    source: "foil",
    said: [/\bfoil\b/i, /\b(?:unwrap|keep .*hot)\b/i],
  },
  // The source says that cooking does not help; to throw them away is common practice, no source.
  "green-potatoes": {
    caution: "Throw away potatoes that are green or sprouting; cooking does not take the poison out.",
    source: "greenPotatoes",
    said: [/\bpotato/i, /\bgreen\b|\bsprouting\b/i, /\bthrow\b|\bcut out\b/i],
  },
};
