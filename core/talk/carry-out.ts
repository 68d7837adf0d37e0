import * as evening from "./answers/evening.ts";
import { attended, back, goToNumber, reopen, skip, undoThat } from "./answers/going-back.ts";
import { helping } from "./answers/helpers.ts";
import { choose, done, start, whatNext, whatNow } from "./answers/steps.ts";
import { quietFor, stopTalking, voiceOrder, whatCanISay } from "./answers/talking.ts";
import * as timers from "./answers/timers.ts";
import { takeWay } from "./answers/ways.ts";
import { lastCommand } from "../cook/last-command.ts";
import type { Intent, IntentOf } from "./intent.ts";
import type { Anywhere, Cooking, Course, Eating, Helping, Housing, Moving, Timing } from "./intent-groups.ts";
import {
  isAnywhere,
  isCourse,
  isDialogue,
  isEating,
  isHelping,
  isHousing,
  isMoving,
  isTiming,
} from "./intent-groups.ts";
import type { Kitchen } from "./model.ts";
import type { Consent, Outcome, Scene } from "./outcome.ts";
import { asksFor, sceneOf, told } from "./outcome.ts";

/**
 * Carries an intent out, whether or not a meal is on.
 * @param consent whether the cook has said yes to what destroys something
 */
export function carryOut(intent: Intent, kitchen: Kitchen, consent: Consent): Outcome {
  if (isAnywhere(intent)) return anywhere(intent, kitchen);
  if (isDialogue(intent)) return told("All right.");
  if (isHousing(intent) || meansHouse(intent, kitchen)) return housing(intent, kitchen);
  if (isEating(intent)) return eating(intent, kitchen);
  const scene = sceneOf(kitchen.log, kitchen);
  if (scene === null) return evening.noMeal();
  return isTiming(intent)
    ? timing(intent, scene, kitchen, consent)
    : cooking(intent, scene, kitchen, consent);
}

/** The same after the cook has chosen or corrected: a figure is not doubted twice. */
export function carryOutSurely(intent: Intent, kitchen: Kitchen): Outcome {
  const scene = sceneOf(kitchen.log, kitchen);
  return intent.type === "StartTimer" && scene !== null
    ? timers.startSurely(intent, scene, kitchen)
    : carryOut(intent, kitchen, "wanted");
}

function anywhere(intent: IntentOf<Anywhere>, kitchen: Kitchen): Outcome {
  switch (intent.type) {
    case "Convert":
    case "ConvertHeat":
      return explained(intent, kitchen, "wanted");
    case "WhatCanISay":
      return whatCanISay(intent.examples, kitchen);
    case "QuietFor":
      return quietFor(intent);
    case "StopTalking":
      return stopTalking(kitchen);
    case "Louder":
    case "Softer":
    case "Slower":
    case "Faster":
    case "SpeakAgain":
      return voiceOrder(intent);
  }
}

function timing(intent: IntentOf<Timing>, scene: Scene, kitchen: Kitchen, consent: Consent): Outcome {
  switch (intent.type) {
    case "StartTimer":
      return timers.startTimer(intent, scene, kitchen);
    case "AskTimer":
      return timers.askTimer(intent, scene, kitchen);
    case "AskTimers":
      return timers.askTimers(scene, kitchen);
    case "Lengthen":
      return timers.lengthen(intent, scene, kitchen);
    case "Shorten":
      return timers.shorten(intent, scene, kitchen);
    case "PauseTimer":
    case "ResumeTimer":
    case "RestartTimer":
    case "StopTimer":
    case "CancelTimer":
      return timers.changeTimer(intent, scene, kitchen);
    case "CancelAllTimers":
      return timers.cancelAll(scene, kitchen, consent);
    case "RenameTimer":
      return timers.rename(intent, scene, kitchen);
    case "HearRing":
      return timers.hearRing(intent.timer, scene, kitchen);
  }
}

function cooking(intent: IntentOf<Cooking>, scene: Scene, kitchen: Kitchen, consent: Consent): Outcome {
  if (isHelping(intent)) return helping(intent, scene, kitchen);
  return isMoving(intent) ? moving(intent, scene, kitchen, consent) : explained(intent, kitchen, consent);
}

function moving(intent: IntentOf<Moving>, scene: Scene, kitchen: Kitchen, consent: Consent): Outcome {
  if (isCourse(intent)) return course(intent, scene, kitchen, consent);
  switch (intent.type) {
    case "WhatNow":
      return whatNow(scene, kitchen);
    case "WhatNext":
      return whatNext(scene, kitchen);
    case "Done":
      return done(intent.target, scene, kitchen);
    case "Started":
      return start(intent.target, scene, kitchen);
    case "Attended":
      return attended(intent.deed, scene, kitchen);
    case "Back":
      return back(scene, kitchen);
    case "Reopen":
      return reopen(intent.target, scene, kitchen);
    case "Skip":
      return skip(intent.target, scene, kitchen, consent);
    case "GoTo":
    case "First":
      return intent.target === null
        ? asksFor(intent, "Where to?")
        : choose(intent.target, intent.type, scene, kitchen);
    case "TakeWay":
      return takeWay(intent, scene, kitchen);
    case "GoToNumber":
      return goToNumber(intent.number, intent.dish, scene, kitchen);
  }
}

function course(intent: IntentOf<Course>, scene: Scene, kitchen: Kitchen, consent: Consent): Outcome {
  switch (intent.type) {
    case "HoldEverything":
      return evening.hold(scene, kitchen);
    case "GoOn":
      return evening.goOn(scene, kitchen);
    case "UndoThat":
      return undoThat(scene, kitchen);
    case "EndMeal":
      return evening.endMeal(scene, kitchen, consent);
    case "OvenAt":
      return evening.ovenAt(intent.heat, scene, kitchen);
    case "OvenOff":
      return evening.ovenOff(scene, kitchen);
    case "ServeAt":
      return evening.serveAt(intent.minute, kitchen);
    case "ServeIn":
      return evening.serveIn(intent.span.high, kitchen);
    case "ServeSoonest":
      return evening.serveSoonest(kitchen);
  }
}

const notYet = "I am not ready for that yet. Say it again in a moment.";

/** What is only asked, wished, prepared or converted no touch wants: a page fetches what answers it after all else. */
function explained(
  intent: IntentOf<Exclude<Cooking, Moving | Helping> | "Convert" | "ConvertHeat">,
  kitchen: Kitchen,
  consent: Consent,
): Outcome {
  return kitchen.explain === null ? told(notYet) : kitchen.explain(intent, kitchen, consent);
}

/** "Undo that" takes back a deed in the house where that was the last. */
function meansHouse(intent: Intent, kitchen: Kitchen): intent is IntentOf<"UndoThat"> {
  const { household, log } = kitchen;
  if (intent.type !== "UndoThat" || household === null) return false;
  const command = lastCommand(log);
  const last = log.events.findLast((event) => event.command === command);
  return household.talk.isLastDeed(kitchen, household.log, last?.at ?? 0);
}

/** What is left and where it is: a page fetches what knows of it after all else. */
function housing(intent: IntentOf<Housing | "UndoThat">, kitchen: Kitchen): Outcome {
  const { household } = kitchen;
  return household === null ? told(notYet) : household.talk.answer(intent, kitchen, household);
}

/** What may be eaten and what is in it: the table of foods comes to a page after all else. */
function eating(intent: IntentOf<Eating>, kitchen: Kitchen): Outcome {
  const { foods } = kitchen;
  return foods === null
    ? told("I cannot look foods up yet. Ask me again in a moment.")
    : foods.talk.answer(intent, kitchen, foods.book);
}
