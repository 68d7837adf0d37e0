import type { Helper } from "../plan/worker.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import { spokenDuration } from "../units/duration.ts";

/** Why an order about the meal or a step was not carried out. */
type MealRefusal =
  | { readonly code: "NoMeal" }
  | { readonly code: "MealUnderway"; readonly name: string }
  | { readonly code: "MealOver" }
  | { readonly code: "NoSuchTask"; readonly asked: string }
  | { readonly code: "AlreadyDone"; readonly title: string }
  | { readonly code: "AlreadyRunning"; readonly title: string }
  | { readonly code: "StillOpen"; readonly title: string }
  | { readonly code: "FirstFinish"; readonly title: string; readonly first: string }
  | { readonly code: "TooSoon"; readonly title: string; readonly wait: Seconds }
  | { readonly code: "NoSuchMoment"; readonly title: string }
  | { readonly code: "AlreadyHeld" }
  | { readonly code: "NotHeld" }
  | { readonly code: "ServingPast"; readonly serveAt: Instant }
  | { readonly code: "NoSuchSwap"; readonly asked: string }
  | { readonly code: "SwapUsedBefore"; readonly use: string }
  | { readonly code: "NoSuchOven"; readonly asked: string }
  | { readonly code: "NothingToUndo" };

/** Why an order about who helps was not carried out. */
type HelperRefusal = { readonly code: "HelperThere" | "NoSuchHelper"; readonly helper: Helper };

/** Why a step is not done in another way. */
type WayRefusal =
  | { readonly code: "NoSuchWay"; readonly asked: string }
  | { readonly code: "WayTakenAlready" | "BegunInAWay"; readonly title: string; readonly way: string }
  /** `lack` is a sentence. */
  | { readonly code: "KitchenLacks"; readonly lack: string };

/** Why the last minutes are not kept free. */
type LullRefusal =
  { readonly code: "NoSuchLull" } | { readonly code: "LullAlready"; readonly length: Seconds | null };

/** Why an order about a timer was not carried out. */
type TimerRefusal =
  | { readonly code: "NoSuchTimer"; readonly asked: string }
  | { readonly code: "TimerTooShort" }
  | { readonly code: "TimerTooLong"; readonly most: Seconds }
  | { readonly code: "TooManyTimers"; readonly most: number }
  | {
      readonly code: "BeyondLatest";
      readonly name: string;
      readonly ceiling: Seconds;
      readonly room: Seconds;
    }
  | { readonly code: "LessThanLeft"; readonly name: string; readonly left: Seconds }
  | { readonly code: "TimerNotRunning"; readonly name: string }
  | { readonly code: "TimerNotPaused"; readonly name: string }
  | { readonly code: "TimerNotRinging"; readonly name: string }
  | { readonly code: "EmptyName" };

/** Why an order was not carried out. Nothing has changed. */
export type Refusal = MealRefusal | HelperRefusal | WayRefusal | LullRefusal | TimerRefusal;

const timerCodes = {
  NoSuchTimer: true,
  TimerTooShort: true,
  TimerTooLong: true,
  TooManyTimers: true,
  BeyondLatest: true,
  LessThanLeft: true,
  TimerNotRunning: true,
  TimerNotPaused: true,
  TimerNotRinging: true,
  EmptyName: true,
} satisfies Record<TimerRefusal["code"], true>;

const wayCodes = {
  NoSuchWay: true,
  WayTakenAlready: true,
  BegunInAWay: true,
  KitchenLacks: true,
} satisfies Record<WayRefusal["code"], true>;

const isHelperRefusal = (refusal: MealRefusal | HelperRefusal): refusal is HelperRefusal =>
  "helper" in refusal;

const isWayRefusal = (refusal: Exclude<Refusal, TimerRefusal>): refusal is WayRefusal =>
  refusal.code in wayCodes;

const isTimerRefusal = (refusal: Refusal): refusal is TimerRefusal => refusal.code in timerCodes;

/** Plain words, said aloud with wet hands: what is wrong, then what to do. */
export function sentence(refusal: Refusal): string {
  if (isTimerRefusal(refusal)) return timerSentence(refusal);
  if (refusal.code === "NoSuchLull" || refusal.code === "LullAlready") return lullSentence(refusal);
  if (isWayRefusal(refusal)) return waySentence(refusal);
  return isHelperRefusal(refusal) ? helperSentence(refusal) : mealSentence(refusal);
}

function mealSentence(refusal: MealRefusal): string {
  switch (refusal.code) {
    case "NoMeal":
      return "No meal is being cooked. Choose one on the first page.";
    case "MealUnderway":
      return `${refusal.name} is on the stove already. End it first: say "end the meal".`;
    case "MealOver":
      return "This meal has ended. Choose another on the first page.";
    case "NoSuchTask":
      return `There is no step called ${refusal.asked}. Say "what is left" to hear them.`;
    case "AlreadyDone":
      return `You have done that already: ${refusal.title}. Say "back" to do it again.`;
    case "AlreadyRunning":
      return `That is going already: ${refusal.title}.`;
    case "StillOpen":
      return `That is not done yet: ${refusal.title}.`;
    case "FirstFinish":
      return `First this: ${refusal.first}. Then ${refusal.title}.`;
    case "TooSoon":
      return `Too soon to ${refusal.title}: it wants ${spokenDuration(refusal.wait)} more.`;
    case "NoSuchMoment":
      return `Nothing is to be seen to now: ${refusal.title}.`;
    case "AlreadyHeld":
      return `Everything is on hold. Say "go on" to carry on.`;
    case "NotHeld":
      return "Nothing is on hold; we are cooking.";
    case "ServingPast":
      return "That time has gone by. Give me a later one.";
    case "NoSuchSwap":
      return `I know nothing to use instead of ${refusal.asked}.`;
    case "SwapUsedBefore":
      return `You are using ${refusal.use} already.`;
    case "NoSuchOven":
      return `There is no ${refusal.asked} in this kitchen.`;
    case "NothingToUndo":
      return "There is nothing to undo.";
  }
}

const helperSentence = ({ code, helper }: HelperRefusal): string =>
  code === "HelperThere"
    ? `The ${helper} is here already.`
    : `There is no ${helper} here. Say "someone is helping me" when there is.`;
function lullSentence(refusal: LullRefusal): string {
  if (refusal.code === "NoSuchLull")
    return "From one minute to an hour before dinner can be kept free. Say how long.";
  return refusal.length === null
    ? "No time before dinner is kept free."
    : `That is the plan already: ${spokenDuration(refusal.length)} before dinner are kept free.`;
}

function waySentence(refusal: WayRefusal): string {
  switch (refusal.code) {
    case "NoSuchWay":
      return `The recipe names no such way: ${refusal.asked}.`;
    case "WayTakenAlready":
      return `That is the plan already: ${refusal.title} ${refusal.way}.`;
    case "BegunInAWay":
      return `Too late for another way. You have begun to ${refusal.title} ${refusal.way}.`;
    case "KitchenLacks":
      return refusal.lack;
  }
}

function timerSentence(refusal: TimerRefusal): string {
  switch (refusal.code) {
    case "NoSuchTimer":
      return `There is no ${refusal.asked} timer. Ask "which timers are on" to hear them.`;
    case "TimerTooShort":
      return "A timer needs at least one second. Say how long, like twelve minutes.";
    case "TimerTooLong":
      return `A timer runs for ${spokenDuration(refusal.most)} at most. Say a shorter time.`;
    case "TooManyTimers":
      return `There are ${refusal.most} timers already. Stop one first.`;
    case "BeyondLatest":
      return beyondLatest(refusal.name, refusal.ceiling, refusal.room);
    case "LessThanLeft":
      return `${capital(refusal.name)} has only ${spokenDuration(refusal.left)} left. Say "stop the timer" to end it.`;
    case "TimerNotRunning":
      return `That timer is not running: ${refusal.name}.`;
    case "TimerNotPaused":
      return `That timer is not paused: ${refusal.name}.`;
    case "TimerNotRinging":
      return `That timer is not ringing: ${refusal.name}.`;
    case "EmptyName":
      return "A timer's name needs a word or two, sixty letters at most.";
  }
}

function beyondLatest(name: string, ceiling: Seconds, room: Seconds): string {
  const limit = `The recipe allows ${spokenDuration(ceiling)} in all for this: ${name}.`;
  return room < 1 ? `${limit} Take it off now.` : `${limit} At most ${spokenDuration(room)} more.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
