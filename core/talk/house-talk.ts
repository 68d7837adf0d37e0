import { askFridge, howLongKept } from "./answers/left-questions.ts";
import { howToWarm, nowWarming, putBack } from "./answers/left-warm.ts";
import {
  ate,
  noReminders,
  nothingLeft,
  nowCold,
  nowCooling,
  putAway,
  threwAway,
  undoInHouse,
} from "./answers/left-deeds.ts";
import { cupboardOf, isLastDeed, type Cupboard } from "./answers/left.ts";
import { askList, inTheBag, notInTheBag, putOnList, takeOffList } from "./answers/list.ts";
import { isSomethingLeft, leftNames } from "./left-names.ts";
import { houseSuggestions } from "./house-suggestions.ts";
import { goodsNames, isListed, listedNames } from "./listed-names.ts";
import type { IntentOf } from "./intent.ts";
import { isListing, type Housing, type Listing } from "./intent-groups.ts";
import type { AnswerHouse, HouseTalk } from "./model.ts";
import type { Outcome } from "./outcome.ts";

const answer: AnswerHouse = (intent, kitchen, household) => {
  const cupboard = cupboardOf(kitchen, household);
  return isListing(intent) ? ofList(intent, cupboard) : ofLeft(intent, cupboard);
};

function ofLeft(intent: IntentOf<Exclude<Housing, Listing> | "UndoThat">, cupboard: Cupboard): Outcome {
  switch (intent.type) {
    case "PutAway":
      return putAway(intent, cupboard);
    case "AteLeft":
      return ate(intent, cupboard);
    case "ThrewAway":
      return threwAway(intent, cupboard);
    case "NothingLeft":
      return nothingLeft(intent, cupboard);
    case "AskFridge":
      return askFridge(intent, cupboard);
    case "HowLongKept":
      return howLongKept(intent, cupboard);
    case "HowToWarm":
      return howToWarm(intent, cupboard);
    case "NowWarming":
      return nowWarming(intent, cupboard);
    case "PutBack":
      return putBack(intent, cupboard);
    case "NowCooling":
      return nowCooling(intent, cupboard);
    case "NowCold":
      return nowCold(intent, cupboard);
    case "NoReminders":
      return noReminders(cupboard);
    case "UndoThat":
      return undoInHouse(cupboard);
  }
}

function ofList(intent: IntentOf<Listing>, cupboard: Cupboard): Outcome {
  switch (intent.type) {
    case "PutOnList":
      return putOnList(intent, cupboard);
    case "TakeOffList":
      return takeOffList(intent, cupboard);
    case "AskList":
      return askList(cupboard);
    case "InTheBag":
      return inTheBag(intent, cupboard);
    case "NotInTheBag":
      return notInTheBag(intent, cupboard);
  }
}

/** What answers and listens where the house is spoken of. */
export const houseTalk: HouseTalk = {
  answer,
  names: leftNames,
  listed: listedNames,
  goods: goodsNames,
  isListed,
  suggestions: houseSuggestions,
  isSomethingLeft,
  isLastDeed,
};
