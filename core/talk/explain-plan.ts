import { answerQuestion } from "./answer-question.ts";
import { convertAmount, convertHeat } from "./answers/converting.ts";
import { changeAmount } from "./answers/changing.ts";
import { whyNotYet, whyNow } from "./answers/explaining.ts";
import { leaveOut, sayWithout } from "./answers/leave-out.ts";
import { askMise } from "./answers/mise.ts";
import { haveOnly, makeFor } from "./answers/servings.ts";
import { whatAhead, whatIfOneMore, whatIfServeAt } from "./answers/what-if.ts";
import { answerNote, askNotes, dropNote, nextTime } from "./answers/next-time.ts";
import { myPace } from "./answers/pace.ts";
import { offerStandIn } from "./answers/swaps.ts";
import { askWishes, keepFree, keepNoneFree } from "./answers/wishes.ts";
import type { IntentOf } from "./intent.ts";
import type { Explaining, Preparing, Wishing } from "./intent-groups.ts";
import { isExplaining, isPreparing, isWishing } from "./intent-groups.ts";
import type { Explain, Kitchen } from "./model.ts";
import type { Consent, Outcome, Scene } from "./outcome.ts";
import { sceneOf, told } from "./outcome.ts";

function explanation(intent: IntentOf<Explaining>, scene: Scene, kitchen: Kitchen): Outcome {
  switch (intent.type) {
    case "WhyNow":
      return whyNow(scene, kitchen);
    case "WhyNotYet":
      return whyNotYet(intent.target, scene, kitchen);
    case "WhatIfServeAt":
      return whatIfServeAt(intent.minute, scene, kitchen);
    case "WhatIfOneMore":
      return whatIfOneMore(intent.thing, scene, kitchen);
    case "WhatAhead":
      return whatAhead(scene, kitchen);
  }
}

function wished(intent: IntentOf<Wishing>, scene: Scene, kitchen: Kitchen, consent: Consent): Outcome {
  switch (intent.type) {
    case "KeepFree":
      return keepFree(intent.span, kitchen);
    case "KeepNoneFree":
      return keepNoneFree(kitchen);
    case "MyPace":
      return myPace(intent, scene, kitchen);
    case "LeaveOut":
      return leaveOut(intent.target, scene, kitchen, consent);
    case "AskWishes":
      return askWishes(scene);
  }
}

function prepared(intent: IntentOf<Preparing>, scene: Scene, kitchen: Kitchen): Outcome {
  switch (intent.type) {
    case "AskMise":
      return askMise(intent.work, scene, kitchen);
    case "ChangeAmount":
      return changeAmount(intent, scene, kitchen);
    case "MakeFor":
      return makeFor(intent, scene, kitchen);
    case "HaveOnly":
      return haveOnly(intent, scene, kitchen);
    case "NextTime":
      return nextTime(intent, scene, kitchen);
    case "AskNotes":
      return askNotes(scene);
    case "AnswerNote":
      return answerNote(intent, scene, kitchen);
    case "DropNote":
      return dropNote(scene, kitchen);
  }
}

/**
 * Answers what is asked of the meal and of its plan, carries out what the cook wishes of it, and converts. Apart from the
 * other answers: no touch asks for it, so a page need not fetch it before it stands.
 */
export const explainPlan: Explain = (asked, kitchen, consent) => {
  if (asked.type === "Convert") return convertAmount(asked);
  if (asked.type === "ConvertHeat") return convertHeat(asked);
  const scene = sceneOf(kitchen.log, kitchen);
  if (asked.type === "OfferStandIn") return (scene && offerStandIn(scene, kitchen)) ?? told("");
  if (asked.type === "WhatToLeaveOut")
    return told(scene === null ? "" : sayWithout(scene, kitchen, asked.words));
  if (scene === null) return told("There is no plan to explain.");
  if (isWishing(asked)) return wished(asked, scene, kitchen, consent);
  if (isPreparing(asked)) return prepared(asked, scene, kitchen);
  return isExplaining(asked)
    ? explanation(asked, scene, kitchen)
    : answerQuestion(asked, scene, kitchen, consent);
};
