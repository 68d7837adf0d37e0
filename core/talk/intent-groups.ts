import type { Intent, IntentOf } from "./intent.ts";

type Types = readonly Intent["type"][];

const isOneOf =
  <T extends Intent["type"]>(types: readonly T[]) =>
  (intent: Intent): intent is IntentOf<T> =>
    types.some((type) => type === intent.type);

const anywhere = [
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
] as const satisfies Types;
/** Understood with or without a meal. */
export type Anywhere = (typeof anywhere)[number];
/** Whether an intent is one of them. */
export const isAnywhere = isOneOf<Anywhere>(anywhere);

const timing = [
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
] as const satisfies Types;
/** About timers. */
export type Timing = (typeof timing)[number];
/** Whether an intent is one of them. */
export const isTiming = isOneOf<Timing>(timing);

const dialogue = [
  "Yes",
  "No",
  "More",
  "NeverMind",
  "Correct",
  "Pick",
  "Again",
  "WhatDidYouHear",
] as const satisfies Types;
/** Answers, and questions about the talk itself. */
export type Dialogue = (typeof dialogue)[number];
/** Whether an intent is one of them. */
export const isDialogue = isOneOf<Dialogue>(dialogue);

const course = [
  "HoldEverything",
  "GoOn",
  "UndoThat",
  "EndMeal",
  "OvenAt",
  "OvenOff",
  "ServeAt",
  "ServeIn",
  "ServeSoonest",
] as const satisfies Types;
/** About the evening as a whole. */
export type Course = (typeof course)[number];
/** Whether an intent is one of them. */
export const isCourse = isOneOf<Course>(course);

const moving = [
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
  ...course,
] as const satisfies Types;
/** Going through the evening. */
export type Moving = (typeof moving)[number];
/** Whether an intent is one of them. */
export const isMoving = isOneOf<Moving>(moving);

const explaining = [
  "WhyNow",
  "WhyNotYet",
  "WhatIfServeAt",
  "WhatIfOneMore",
  "WhatAhead",
] as const satisfies Types;
/** About the plan: why it is so, and how it would be otherwise. */
export type Explaining = (typeof explaining)[number];
/** Whether an intent is one of them. */
export const isExplaining = isOneOf<Explaining>(explaining);

const helping = ["HelperComes", "HelperGoes", "HelperDone", "HandOver", "AskHelper"] as const satisfies Types;
/** About those who help. */
export type Helping = (typeof helping)[number];
/** Whether an intent is one of them. */
export const isHelping = isOneOf<Helping>(helping);

const wishing = ["KeepFree", "KeepNoneFree", "MyPace", "LeaveOut", "AskWishes"] as const satisfies Types;
/** What the cook wishes of the plan. */
export type Wishing = (typeof wishing)[number];
/** Whether an intent is one of them. */
export const isWishing = isOneOf<Wishing>(wishing);

const preparing = [
  "AskMise",
  "ChangeAmount",
  "MakeFor",
  "HaveOnly",
  "NextTime",
  "AskNotes",
  "AnswerNote",
  "DropNote",
] as const satisfies Types;
/** About what is prepared, how much of it goes in, and what is to be otherwise the next time. */
export type Preparing = (typeof preparing)[number];
/** Whether an intent is one of them. */
export const isPreparing = isOneOf<Preparing>(preparing);

const listing = ["PutOnList", "TakeOffList", "AskList", "InTheBag", "NotInTheBag"] as const satisfies Types;
/** About what is to be bought. */
export type Listing = (typeof listing)[number];
/** Whether an intent is one of them. */
export const isListing = isOneOf<Listing>(listing);

const housing = [
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
] as const satisfies Types;
/** About what outlives the evening, the buying list too: needs no meal. */
export type Housing = (typeof housing)[number];
/** Whether an intent is one of them. */
export const isHousing = isOneOf<Housing>(housing);

const eating = [
  "HowMuchValue",
  "AskValues",
  "AskSources",
  "MayIHave",
  "IsItAllowed",
] as const satisfies Types;
/** About what may be eaten and what is in it: needs no meal. */
export type Eating = (typeof eating)[number];
/** Whether an intent is one of them. */
export const isEating = isOneOf<Eating>(eating);

/** About the meal, its timers apart. */
export type Cooking = Exclude<Intent["type"], Anywhere | Timing | Dialogue | Housing | Eating>;
