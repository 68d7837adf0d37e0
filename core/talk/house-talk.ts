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
import { cupboardOf, isLastDeed } from "./answers/left.ts";
import { askList, inTheBag, notInTheBag, putOnList, takeOffList } from "./answers/list.ts";
import { isSomethingLeft, leftNames } from "./left-names.ts";
import { houseSuggestions } from "./house-suggestions.ts";
import { isListed, listedNames } from "./listed-names.ts";
import type { AnswerHouse, HouseTalk } from "./model.ts";

const answer: AnswerHouse = (intent, kitchen, household) => {
  const cupboard = cupboardOf(kitchen, household);
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
    case "UndoThat":
      return undoInHouse(cupboard);
  }
};

/** What answers and listens where the house is spoken of. */
export const houseTalk: HouseTalk = {
  answer,
  names: leftNames,
  listed: listedNames,
  isListed,
  suggestions: houseSuggestions,
  isSomethingLeft,
  isLastDeed,
};
