import type { Intent, IntentOf } from "./intent.ts";

/** Understood with or without a meal. */
export type Anywhere =
  | "Convert"
  | "ConvertHeat"
  | "WhatCanISay"
  | "Louder"
  | "Softer"
  | "Slower"
  | "Faster"
  | "QuietFor"
  | "SpeakAgain"
  | "StopTalking";
/** About timers. */
export type Timing =
  | "StartTimer"
  | "AskTimer"
  | "AskTimers"
  | "Lengthen"
  | "Shorten"
  | "PauseTimer"
  | "ResumeTimer"
  | "RestartTimer"
  | "StopTimer"
  | "CancelTimer"
  | "CancelAllTimers"
  | "RenameTimer"
  | "HearRing";
/** Answers, and questions about the talk itself. */
export type Dialogue = "Yes" | "No" | "More" | "NeverMind" | "Correct" | "Pick" | "Again" | "WhatDidYouHear";
/** About the meal, its timers apart. */
export type Cooking = Exclude<Intent["type"], Anywhere | Timing | Dialogue | Housing | Eating>;

const isOneOf =
  <T extends Intent["type"]>(types: readonly T[]) =>
  (intent: Intent): intent is IntentOf<T> =>
    types.some((type) => type === intent.type);

/** Whether an intent is one of them. */
export const isAnywhere = isOneOf<Anywhere>([
  "Convert",
  "ConvertHeat",
  "WhatCanISay",
  "Louder",
  "Softer",
  "Slower",
  "Faster",
  "QuietFor",
  "SpeakAgain",
  "StopTalking",
]);
/** Answers to the caller, and questions about the talk itself: they need no kitchen. */
export const isDialogue = isOneOf<Dialogue>([
  "Yes",
  "No",
  "More",
  "NeverMind",
  "Correct",
  "Pick",
  "Again",
  "WhatDidYouHear",
]);
/** Whether an intent is one of them. */
export const isTiming = isOneOf<Timing>([
  "StartTimer",
  "AskTimer",
  "AskTimers",
  "Lengthen",
  "Shorten",
  "PauseTimer",
  "ResumeTimer",
  "RestartTimer",
  "StopTimer",
  "CancelTimer",
  "CancelAllTimers",
  "RenameTimer",
  "HearRing",
]);

/** Going through the evening. */
export type Moving =
  | "WhatNow"
  | "WhatNext"
  | "Done"
  | "Started"
  | "Attended"
  | "Back"
  | "Reopen"
  | "Skip"
  | "GoTo"
  | "GoToNumber"
  | "First"
  | "TakeWay"
  | "HoldEverything"
  | "GoOn"
  | "UndoThat"
  | "EndMeal"
  | "OvenAt"
  | "OvenOff"
  | "ServeAt"
  | "ServeIn"
  | "ServeSoonest";

/** Whether an intent is one of them. */
export const isMoving = isOneOf<Moving>([
  "WhatNow",
  "WhatNext",
  "Done",
  "Started",
  "Attended",
  "Back",
  "Reopen",
  "Skip",
  "GoTo",
  "GoToNumber",
  "First",
  "TakeWay",
  "HoldEverything",
  "GoOn",
  "UndoThat",
  "EndMeal",
  "OvenAt",
  "OvenOff",
  "ServeAt",
  "ServeIn",
  "ServeSoonest",
]);

/** About the evening as a whole. */
export type Course =
  | "HoldEverything"
  | "GoOn"
  | "UndoThat"
  | "EndMeal"
  | "OvenAt"
  | "OvenOff"
  | "ServeAt"
  | "ServeIn"
  | "ServeSoonest";

/** Whether an intent is one of them. */
export const isCourse = isOneOf<Course>([
  "HoldEverything",
  "GoOn",
  "UndoThat",
  "EndMeal",
  "OvenAt",
  "OvenOff",
  "ServeAt",
  "ServeIn",
  "ServeSoonest",
]);

/** About the plan: why it is so, and how it would be otherwise. */
export type Explaining = "WhyNow" | "WhyNotYet" | "WhatIfServeAt" | "WhatIfOneMore" | "WhatAhead";

/** Whether an intent is one of them. */
export const isExplaining = isOneOf<Explaining>([
  "WhyNow",
  "WhyNotYet",
  "WhatIfServeAt",
  "WhatIfOneMore",
  "WhatAhead",
]);

/** About those who help. */
export type Helping = "HelperComes" | "HelperGoes" | "HelperDone" | "HandOver" | "AskHelper";

/** Whether an intent is one of them. */
export const isHelping = isOneOf<Helping>([
  "HelperComes",
  "HelperGoes",
  "HelperDone",
  "HandOver",
  "AskHelper",
]);

/** What the cook wishes of the plan. */
export type Wishing = "KeepFree" | "KeepNoneFree" | "MyPace" | "LeaveOut" | "AskWishes";

/** Whether an intent is one of them. */
export const isWishing = isOneOf<Wishing>(["KeepFree", "KeepNoneFree", "MyPace", "LeaveOut", "AskWishes"]);

/** About what outlives the evening, the buying list too: needs no meal. */
export type Housing =
  | "PutAway"
  | "AteLeft"
  | "ThrewAway"
  | "NothingLeft"
  | "AskFridge"
  | "HowLongKept"
  | "HowToWarm"
  | "NowWarming"
  | "PutBack"
  | "NowCooling"
  | "NowCold"
  | "NoReminders"
  | Listing;

/** About what is to be bought. */
export type Listing = "PutOnList" | "TakeOffList" | "AskList" | "InTheBag" | "NotInTheBag";

const listing = ["PutOnList", "TakeOffList", "AskList", "InTheBag", "NotInTheBag"] as const;

/** Whether an intent is one of them. */
export const isListing = isOneOf<Listing>(listing);

/** Whether an intent is one of them. */
export const isHousing = isOneOf<Housing>([
  "PutAway",
  "AteLeft",
  "ThrewAway",
  "NothingLeft",
  "AskFridge",
  "HowLongKept",
  "HowToWarm",
  "NowWarming",
  "PutBack",
  "NowCooling",
  "NowCold",
  "NoReminders",
  ...listing,
]);

/** About what may be eaten and what is in it: needs no meal. */
export type Eating = "HowMuchValue" | "AskValues" | "AskSources" | "MayIHave" | "IsItAllowed";

/** Whether an intent is one of them. */
export const isEating = isOneOf<Eating>([
  "HowMuchValue",
  "AskValues",
  "AskSources",
  "MayIHave",
  "IsItAllowed",
]);

/** About what is prepared, how much of it goes in, and what is to be otherwise the next time. */
export type Preparing =
  "AskMise" | "ChangeAmount" | "MakeFor" | "HaveOnly" | "NextTime" | "AskNotes" | "AnswerNote" | "DropNote";

/** Whether an intent is one of them. */
export const isPreparing = isOneOf<Preparing>([
  "AskMise",
  "ChangeAmount",
  "MakeFor",
  "HaveOnly",
  "NextTime",
  "AskNotes",
  "AnswerNote",
  "DropNote",
]);
