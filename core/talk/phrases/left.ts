import type { Place } from "../../house/leftover.ts";
import { mention } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";

const topic = "left";
const servings = "(servings|serving|bowls|bowl|plates|plate|portions|portion)";

function putAway(place: Place, example: string | null): PhraseEntry {
  return {
    intent: "PutAway",
    topic,
    occasion: "left",
    example,
    says: [
      `put {number} ${servings} of the {left} in the ${place}`,
      `put the rest of the {left} in the ${place}`,
      `{number} ${servings} of the {left} (go|went) in the ${place}`,
    ],
    typed: [`put {number} of the {left} in the ${place}`],
    make: ({ number, left }) => ({ type: "PutAway", what: mention(left), servings: number, place }),
  };
}

const putBack = (place: Place, example: string | null): PhraseEntry => ({
  intent: "PutBack",
  topic,
  occasion: "left",
  example,
  says: [
    `put the {left} back in the ${place}`,
    `i put the {left} back in the ${place}`,
    `the {left} (goes|go) back in the ${place}`,
  ],
  typed: [`put the {left} back into the ${place}`],
  make: ({ left }) => ({ type: "PutBack", what: mention(left), place }),
});

function ofLeft(
  type: "ThrewAway" | "HowToWarm" | "HowLongKept" | "NowCooling" | "NowCold" | "NothingLeft",
  example: string,
  says: readonly string[],
  typed: readonly string[] = [],
): PhraseEntry {
  const make: PhraseEntry["make"] = ({ left }) => ({ type, what: mention(left) });
  return { intent: type, topic, occasion: "left", example, says, typed, make };
}

const asks = (place: Place): readonly string[] => [
  `what is left in the ${place}`,
  `what leftovers are in the ${place}`,
  `which leftovers are in the ${place}`,
  `(tell|read) me what is left in the ${place}`,
];

/** What is left of a meal, and what is in the fridge. */
export const leftPhrases: readonly PhraseEntry[] = [
  putAway("fridge", "put two servings of the soup in the fridge"),
  putAway("freezer", null),
  {
    intent: "PutAway",
    topic,
    occasion: "left",
    example: null,
    says: [
      `there are {number} ${servings} of the {left} left`,
      `{number} ${servings} of the {left} are left over`,
    ],
    typed: [`there are {number} ${servings} left`],
    make: ({ number, left }) => ({ type: "PutAway", what: mention(left), servings: number, place: null }),
  },
  {
    intent: "AteLeft",
    topic,
    occasion: "left",
    example: "we ate three servings of the soup",
    says: [`(we|i) ate {number} ${servings} [of the {left}]`],
    typed: ["(we|i) ate {number} [of the {left}]"],
    make: ({ number, left }) => ({ type: "AteLeft", what: mention(left), servings: number }),
  },
  {
    intent: "AteLeft",
    topic,
    occasion: "left",
    example: null,
    says: ["(we|i) ate the rest of the {left}", "(we|i) ate all of the {left}"],
    typed: ["(we|i) ate the rest"],
    make: ({ left }) => ({ type: "AteLeft", what: mention(left), servings: null }),
  },
  ofLeft("ThrewAway", "throw away the soup", [
    "(throw|threw) away the {left}",
    "(throw|threw) out the {left}",
    "i (throw|threw) the {left} (away|out)",
    "we (throw|threw) the {left} (away|out)",
  ]),
  ofLeft("NothingLeft", "nothing is left of the soup", [
    "nothing is left of the {left}",
    "there is nothing left of the {left}",
    "the {left} (is|are) all (gone|eaten)",
    "the {left} (is|are) finished up",
    "nothing remains of the {left}",
  ]),
  plain({ type: "AskFridge", place: "fridge" }, topic, "left", "what is left in the fridge", asks("fridge"), [
    "leftovers",
    "what leftovers are there",
  ]),
  plain({ type: "AskFridge", place: "freezer" }, topic, "left", null, asks("freezer")),
  ofLeft("HowLongKept", "how long does the soup keep", [
    "how long (does|do) the {left} keep",
    "how long (does|do) the {left} keep in the fridge",
    "how long (is|are) the {left} good for",
    "until when (is|are) the {left} good",
  ]),
  ofLeft("HowToWarm", "how do I warm up the soup", [
    "how do i (warm|heat) up the {left}",
    "how hot must the {left} be [again]",
    "how do i reheat the {left}",
    "how hot do i (warm|heat) the {left}",
  ]),
  {
    intent: "NowWarming",
    topic,
    occasion: "left",
    example: "I am warming up the soup",
    says: ["(i am|we are) (warming|heating) up [all of] the {left}", "(i am|we are) reheating the {left}"],
    typed: [],
    make: ({ left }) => ({ type: "NowWarming", what: mention(left), servings: null }),
  },
  {
    intent: "NowWarming",
    topic,
    occasion: "left",
    example: null,
    says: [`(i am|we are) (warming|heating) up {number} ${servings} of the {left}`],
    typed: ["(i am|we are) (warming|heating) up {number} of the {left}"],
    make: ({ number, left }) => ({ type: "NowWarming", what: mention(left), servings: number }),
  },
  putBack("fridge", "put the soup back in the fridge"),
  putBack("freezer", null),
  ofLeft("NowCooling", "the soup is cooling down", [
    "the {left} (is|are) cooling down",
    "(i am|we are) cooling down the {left}",
    "let the {left} cool down",
    "i let the {left} cool down",
  ]),
  ofLeft("NowCold", "the soup is cold now", [
    "the {left} (is|are) cold now",
    "the {left} (has|have) cooled down",
    "the {left} (is|are) down to fridge (cold|temperature)",
  ]),
  plain({ type: "NoReminders" }, topic, "left", "no reminders about leftovers", [
    "no [more] reminders about leftovers",
    "stop reminding me about leftovers",
    "do not remind me about leftovers",
    "i know about the leftovers",
    "no [more] warnings about leftovers",
    "silence the leftovers",
  ]),
];
