import type { MomentName } from "./evening-moments.ts";

/** What is said at one moment of the evening, under the heading that it is reported by. */
export type SentenceGroup = {
  readonly name: string;
  readonly moment: MomentName;
  readonly sentences: readonly string[];
};

/**
 * What the benches say to the evening of `evening-moments.ts`: at least one sentence for everything that can be wanted
 * then, with the meal's own dishes, steps, foods and timers, and the figures that sound alike. Written before any of
 * them was heard, and none left out for being hard.
 */
export const eveningSentences: readonly SentenceGroup[] = [
  {
    name: "steps",
    moment: "busy",
    sentences: [
      "what now",
      "what next",
      "next step",
      "i am done",
      "done with the carrots",
      "it is in the oven",
      "the pears are in",
      "i have stirred it",
      "go back",
      "take up the dough again",
      "say that again",
      "skip this step",
      "go to the flatbreads",
      "go to step three of the salad",
      "flatbreads first",
      "where was i",
    ],
  },
  {
    name: "evening",
    moment: "busy",
    sentences: [
      "hold everything",
      "go on",
      "undo that",
      "end the meal",
      "the oven is at four hundred",
      "i have turned the oven off",
      "we eat at half past seven",
      "we eat in fifty minutes",
      "we eat as soon as we can",
    ],
  },
  {
    name: "new timers",
    moment: "busy",
    sentences: [
      "set a timer for twelve minutes",
      "set a timer for fifteen minutes",
      "set a timer for fifty minutes",
      "set a timer for thirteen minutes for the pears",
      "set a timer for thirty minutes",
      "set a timer for forty five minutes for the soup",
      "set a timer for fourteen minutes",
      "start a twenty minute timer",
      "set a timer for one hour",
      "set a timer for ninety seconds",
      "remind me in eighteen minutes",
    ],
  },
  {
    name: "timers",
    moment: "busy",
    sentences: [
      "how long is left",
      "how long for the soup",
      "which timers are on",
      "two more minutes",
      "two more minutes for the pears",
      "add five minutes to the dough timer",
      "take three minutes off the pears",
      "pause the soup timer",
      "resume the soup timer",
      "restart the dough timer",
      "stop the carrots timer",
      "cancel the cabbage timer",
      "cancel all timers",
      "rename the dough timer to bread",
      "i hear it",
    ],
  },
  {
    name: "amounts",
    moment: "busy",
    sentences: [
      "how much garlic",
      "how much lemon juice in the salad",
      "how much flour in this",
      "how many onions in all",
      "how much more cumin",
      "what can i use instead of cilantro",
      "use the beans instead",
      "what goes into this",
      "what goes into the salad",
      "how many tablespoons in a quarter cup",
      "how many grams in three ounces",
      "what is one eighty celsius in fahrenheit",
    ],
  },
  {
    name: "questions",
    moment: "busy",
    sentences: [
      "what is left",
      "what is left for the soup",
      "what is left for my hands",
      "how do i know that it is done",
      "how do i know the carrots are done",
      "what is in the oven",
      "which heat next",
      "when do we eat",
      "are we late",
      "what did you hear",
      "what can i say",
    ],
  },
  {
    name: "voice",
    moment: "busy",
    sentences: [
      "louder",
      "softer",
      "slower",
      "faster",
      "quiet for fifteen minutes",
      "speak again",
      "stop talking",
    ],
  },
  { name: "answers", moment: "confirm", sentences: ["yes", "no", "never mind"] },
  { name: "answers", moment: "which", sentences: ["the first one", "apple juice"] },
  { name: "answers", moment: "more", sentences: ["more", "tell me more"] },
  { name: "answers", moment: "corrected", sentences: ["no fifteen minutes", "i meant fifteen"] },
];
