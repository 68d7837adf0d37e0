import { mention } from "../intent.ts";
import type { Intent, Topic } from "../intent.ts";
import type { PhraseEntry } from "../phrase-entry.ts";
import { plain } from "../phrase-entry.ts";
import type { Slots } from "../slots.ts";

const topic = "asking";

const convert = ({ measure, unit, heat, scale }: Slots): Intent => {
  if (heat !== null && scale !== null) return { type: "ConvertHeat", from: heat, to: scale };
  if (unit === null) throw new Error("a conversion without a unit");
  return { type: "Convert", from: measure, to: unit };
};

const help = (of: Topic): Intent => ({ type: "WhatCanISay", topic: of });

/** Questions about the evening; `phrases/amounts.ts` holds those about food. */
export const askingPhrases: readonly PhraseEntry[] = [
  plain({ type: "WhatIsLeft" }, topic, "meal", "what is left", [
    "what is left [to do]",
    "what is still to do",
    "how much is left to do",
    "what (else|all) is there to do",
    "what remains [to be done]",
    "how far are we",
    "how many steps are left",
  ], ["left", "remaining steps", "to do", "whats left", "show me what is left"]),
  {
    intent: "WhatIsLeftFor", topic, occasion: "meal", example: "what is left for the slaw",
    says: [
      "what is left (for|of|on|with|in) [the] {dish}",
      "what is still to do (for|on) [the] {dish}",
      "how far (is|are) [the] {dish}",
      "how many steps are left (for|of) [the] {dish}",
      "what does the {dish} [still] need",
      "where are we with [the] {dish}",
    ],
    typed: ["{dish} left", "what do the {dish} [still] need", "what (remains|is remaining) (for|of) [the] {dish}", "[the] {dish} steps"],
    make: ({ dish }) => ({ type: "WhatIsLeftFor", dish: mention(dish) }),
  },
  plain({ type: "WhatIsLeftForHands" }, topic, "meal", "what is left for my hands", [
    "what is left for (my hands|me|me to do)",
    "what do i [still] have to do",
    "what (else|more) do i have to do",
    "what work is left",
    "what do my hands have to do",
    "how much work is left",
  ], ["my part", "what must i do [still]", "hands on steps"]),
  {
    intent: "WhatGoesIn", topic, occasion: "meal", example: "what goes into this",
    says: [
      "what goes (in|into) (this|it|that)",
      "what do i (need|put in|add) [for this]",
      "what goes in (here|now)",
      "what is in this",
      "what are the ingredients",
      "which ingredients [do i need]",
    ],
    typed: ["ingredients", "what goes in", "list [the] ingredients"],
    make: () => ({ type: "WhatGoesIn", target: null }),
  },
  {
    intent: "WhatGoesIn", topic, occasion: "meal", example: "what goes into the slaw",
    says: [
      "what goes (in|into) [the] {target}",
      "what do i need for [the] {target}",
      "what is in the {target}",
    ],
    typed: ["{target} ingredients", "ingredients (for|of) [the] {target}", "[what are] the ingredients (for|of) [the] {target}"],
    make: ({ target }) => ({ type: "WhatGoesIn", target: mention(target) }),
  },
  {
    intent: "HowDone", topic, occasion: "meal", example: "how do I know it's done",
    says: [
      "how do i (know|tell) [that] (it is|they are) (done|ready)",
      "how do i know when (it is|they are) (done|ready)",
      "when (is it|are they) (done|ready)",
      "what (should|does) it look like [when it is done]",
      "what am i looking for",
      "what do i look for",
    ],
    typed: ["how to tell", "doneness", "how will i know", "how done", "is it done"],
    make: () => ({ type: "HowDone", target: null }),
  },
  {
    intent: "HowDone", topic, occasion: "meal", example: "how do I know the squash is done",
    says: [
      "how do i (know|tell) [that|when] [the] {target} (is|are) (done|ready)",
      "what should the {target} look like",
      "what do i look for in the {target}",
    ],
    typed: ["how do i know if [the] {target} (is|are) (done|ready)", "how done (is|are) [the] {target}", "(is|are) [the] {target} (done|ready)"],
    make: ({ target }) => ({ type: "HowDone", target: mention(target) }),
  },
  plain({ type: "InOven" }, topic, "meal", "what is in the oven", [
    "what is in the oven",
    "what (have i|do i have|do we have) in the oven",
    "how hot is the oven",
    "what is the oven (at|on|doing)",
    "what heat is the oven [at|on]",
    "is (anything|something) in the oven",
  ], ["oven", "oven temperature", "the oven", "what temperature is the oven", "what is the oven temperature", "is the oven on"]),
  plain({ type: "HeatNext" }, topic, "meal", "which heat next", [
    "(which|what) heat next",
    "(which|what) heat (comes|is) next",
    "what (heat|temperature) do i need next",
    "what is the next (heat|temperature)",
    "what (should|do) i set the oven to [next]",
    "how hot should the oven be",
    "when do i (turn on|change|set) the oven",
  ], ["next heat", "next oven temperature", "what oven temperature", "what temperature", "preheat to what"]),
  plain({ type: "WhenDoWeEat" }, topic, "meal", "when do we eat", [
    "when (do|can|will) we eat",
    "when is (dinner|supper|lunch|it all ready|everything ready)",
    "what time (is dinner|do we eat|will it be ready)",
    "when will (dinner|everything|it all) be ready",
    "how long (until|till) (dinner|we eat)",
    "how long until everything is ready",
  ], ["eta", "dinner time", "when is food", "when will we be done", "how long till dinner"]),
  plain({ type: "AreWeLate" }, topic, "meal", "are we late", [
    "are we (late|on time|in time)",
    "am i (late|on time|in time|behind)",
    "are we running late",
    "will (we|dinner) be (late|on time)",
    "how late are we",
    "are we on schedule",
    "do we have time",
  ], ["late", "on time", "are we behind", "will we make it", "is everything on time"]),
  {
    intent: "Convert", topic, occasion: "always", example: "how many tablespoons in a quarter cup",
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
    intent: "ConvertHeat", topic, occasion: "always", example: "what is one eighty celsius in fahrenheit",
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
  plain({ type: "WhereWasI" }, topic, "meal", "where was I", [
    "where was i",
    "where were we",
    "where am i",
    "where are we",
    "what was i doing",
    "what was i at",
    "i lost my place",
  ], ["where did i stop", "where did i leave off", "catch me up", "status"]),
  plain({ type: "WhatDidYouHear" }, topic, "always", "what did you hear", [
    "what did you hear",
    "what did i (say|just say)",
    "what did you (understand|think i said)",
    "what have you heard",
    "did you hear me",
    "did you (get|hear) that",
  ], ["what was heard", "you heard what"]),
  plain({ type: "WhatCanISay", topic: null }, topic, "always", "what can I say", [
    "what can i say",
    "what can i ask [you]",
    "what can you do",
    "help [me]",
    "what are my (choices|options)",
    "what do you understand",
  ], ["commands", "options", "what do i say", "how does this work"]),
  ...helpPhrases("moving", ["moving", "steps", "cooking"]),
  ...helpPhrases("timers", ["timers"]),
  ...helpPhrases("asking", ["questions", "asking", "amounts"]),
  ...helpPhrases("voice", ["your voice", "the voice", "voices"]),
];

function helpPhrases(of: Topic, names: readonly string[]): readonly PhraseEntry[] {
  const named = `(${names.join("|")})`;
  return [
    plain(help(of), topic, "always", null, [`what can i say about ${named}`, `help [me] with ${named}`], [
      `help ${named}`,
      `what can i say for ${named}`,
      `${named} help`,
    ]),
  ];
}
