import type { Grammar, Phrase } from "../../core/speech/grammar.ts";

const words = (text: string): Phrase => ({ kind: "words", text });
const sequence = (...of: readonly Phrase[]): Phrase => ({ kind: "sequence", of });
const choice = (...of: readonly Phrase[]): Phrase => ({ kind: "choice", of });
const optional = (of: Phrase): Phrase => ({ kind: "optional", of });
const rule = (name: string): Phrase => ({ kind: "rule", name });
const oneOf = (...texts: readonly string[]): Phrase => choice(...texts.map(words));

/** A grammar of the size and shape of an evening's phrasebook: four dishes, their foods, timers and questions. */
export const kitchenGrammar: Grammar = {
  root: "command",
  rules: new Map<string, Phrase>([
    ["command", choice(rule("moving"), rule("timing"), rule("asking"), rule("voice"))],
    ["dish", sequence(optional(words("the")), oneOf("carrots", "lentil stew", "flatbreads", "roast squash", "slaw", "rice"))],
    ["food", oneOf("chickpeas", "onion", "garlic", "flour", "lemon juice", "za'atar", "cumin", "water", "parsley", "jalapeño")],
    ["unit", oneOf("tablespoons", "teaspoons", "cups", "grams", "ounces")],
    ["ones", oneOf("one", "two", "three", "four", "five", "six", "seven", "eight", "nine")],
    ["number", choice(
      rule("ones"),
      oneOf("ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"),
      sequence(oneOf("twenty", "thirty", "forty", "fifty", "sixty"), optional(rule("ones"))),
    )],
    ["moving", choice(
      oneOf("what now", "what next", "next step", "done", "i am done", "go back", "say that again", "repeat that"),
      oneOf("skip this step", "hold everything", "go on", "undo that", "where was i", "yes", "no", "yes please", "no thanks"),
      sequence(words("done with"), rule("dish")),
      sequence(words("go to"), rule("dish")),
      sequence(words("go to step"), rule("ones")),
      sequence(rule("dish"), words("first")),
    )],
    ["timing", choice(
      sequence(words("set a timer for"), rule("number"), oneOf("minute", "minutes", "seconds"), optional(sequence(words("for"), rule("dish")))),
      sequence(rule("number"), oneOf("more minutes", "minutes more")),
      sequence(oneOf("stop", "pause", "resume", "cancel", "restart"), rule("dish"), words("timer")),
      sequence(words("how long for"), rule("dish")),
      sequence(words("add"), rule("number"), words("minutes to"), rule("dish"), words("timer")),
      oneOf("list timers", "cancel all timers", "stop the timer", "how long is left"),
    )],
    ["asking", choice(
      oneOf("what is left", "what is in the oven", "when do we eat", "are we late", "which heat next", "what can i say", "what did you hear"),
      oneOf("how do i know that it is done", "what goes into this"),
      sequence(words("what is left for"), rule("dish")),
      sequence(words("how much"), rule("food")),
      sequence(words("how much"), rule("food"), words("in"), rule("dish")),
      sequence(words("what can i use instead of"), rule("food")),
      sequence(words("how many"), rule("unit"), words("in"), oneOf("a cup", "half a cup", "a quarter cup", "one pound")),
    )],
    ["voice", oneOf("louder", "softer", "slower", "be quiet for ten minutes", "stop talking")],
  ]),
};

/** Sentences of that grammar, a spread over all intents; spoken by each voice after the address. */
export const kitchenSentences: readonly string[] = [
  "what now", "what next", "next step", "i am done", "go back", "say that again", "skip this step", "hold everything",
  "go on", "undo that", "where was i", "done with the carrots", "go to the lentil stew", "go to step four",
  "flatbreads first", "the roast squash first", "set a timer for twelve minutes", "set a timer for fifteen minutes",
  "set a timer for fifty minutes", "set a timer for one minute", "set a timer for twenty five minutes for the rice",
  "set a timer for forty minutes", "set a timer for thirty seconds for the flatbreads",
  "two more minutes", "five minutes more", "stop the rice timer", "pause the lentil stew timer",
  "resume the carrots timer", "cancel the roast squash timer", "restart the slaw timer",
  "how long for the carrots", "how long for the roast squash", "add three minutes to the rice timer", "list timers",
  "cancel all timers", "stop the timer", "how long is left", "what is left", "what is in the oven", "when do we eat",
  "are we late", "which heat next", "what can i say", "what did you hear", "how do i know that it is done",
  "what goes into this", "what is left for the slaw", "what is left for the flatbreads", "how much garlic",
  "how much flour in the flatbreads", "how much lemon juice", "how much za'atar", "how much cumin in the carrots",
  "what can i use instead of parsley", "what can i use instead of jalapeño", "how many tablespoons in a quarter cup",
  "how many grams in one pound", "how many ounces in half a cup", "louder", "softer", "be quiet for ten minutes",
  "stop talking",
];
