import { howMuch, whatGoesIn } from "./answers/amounts.ts";
import { whereWasI } from "./answers/evening.ts";
import * as questions from "./answers/questions.ts";
import { insteadOfTool } from "./answers/instead-of-tool.ts";
import { instead, useInstead } from "./answers/swaps.ts";
import { whyWay } from "./answers/ways.ts";
import type { IntentOf } from "./intent.ts";
import type { Cooking, Explaining, Helping, Moving, Preparing, Wishing } from "./intent-groups.ts";
import type { Kitchen } from "./model.ts";
import type { Consent, Outcome, Scene } from "./outcome.ts";

/** Answers what is asked of the meal; a swap is carried out, for it is asked for first. */
export function answerQuestion(
  intent: IntentOf<Exclude<Cooking, Moving | Explaining | Wishing | Helping | Preparing>>,
  scene: Scene,
  kitchen: Kitchen,
  consent: Consent,
): Outcome {
  switch (intent.type) {
    case "WhatIsLeft":
      return questions.whatIsLeft(scene, kitchen);
    case "WhatIsLeftFor":
      return questions.whatIsLeftFor(intent.dish, scene);
    case "WhatIsLeftForHands":
      return questions.whatIsLeftForHands(scene);
    case "HowMuch":
      return howMuch(intent, scene, kitchen);
    case "WhatGoesIn":
      return whatGoesIn(intent.target, scene, kitchen);
    case "HowDone":
      return questions.howDone(intent.target, scene, kitchen);
    case "InOven":
      return questions.inOven(scene, kitchen);
    case "HeatNext":
      return questions.heatNext(scene, kitchen);
    case "WhenDoWeEat":
      return questions.whenDoWeEat(scene, kitchen);
    case "AreWeLate":
      return questions.areWeLate(scene, kitchen);
    case "Instead":
      return instead(intent, scene, kitchen);
    case "InsteadOfTool":
      return insteadOfTool(intent, scene);
    case "UseInstead":
      return useInstead(intent, scene, kitchen, consent);
    case "WhyWay":
      return whyWay(intent, scene);
    case "WhereWasI":
      return whereWasI(scene, kitchen);
  }
}
