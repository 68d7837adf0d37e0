import { spokenAmount } from "../units/amount-words.ts";
import { spokenClock } from "../units/clock-words.ts";
import { spokenDuration, spokenSpan } from "../units/duration.ts";
import { spokenHeat, spokenHeatInFull } from "../units/temperature.ts";
import { unitWords } from "../units/unit.ts";
import type { Intent, Mention } from "./intent.ts";

/** What each intent is called on the screen, next to what was heard. */
const LABELS: Readonly<Record<Intent["type"], string>> = {
  WhatNow: "what now",
  WhatNext: "what next",
  Done: "done",
  Started: "started",
  Attended: "seen to",
  Back: "one step back",
  Reopen: "take up again",
  Again: "say it again",
  Skip: "leave it out",
  LeaveOut: "leave out",
  GoTo: "go to",
  GoToNumber: "go to step",
  First: "first",
  TakeWay: "another way",
  HoldEverything: "hold everything",
  GoOn: "go on",
  UndoThat: "undo",
  EndMeal: "end the meal",
  OvenAt: "oven set",
  OvenOff: "oven off",
  ServeAt: "we eat at",
  ServeIn: "we eat in",
  ServeSoonest: "we eat when it is ready",
  HelperComes: "someone helps",
  HelperGoes: "a helper leaves",
  HelperDone: "a helper is done",
  HandOver: "give it away",
  AskHelper: "what a helper does",
  KeepFree: "kept free before dinner",
  KeepNoneFree: "nothing kept free",
  MyPace: "how long you take",
  StartTimer: "new timer",
  AskTimer: "how long",
  AskTimers: "all timers",
  Lengthen: "more time",
  Shorten: "less time",
  PauseTimer: "pause timer",
  ResumeTimer: "timer runs again",
  RestartTimer: "timer from the start",
  StopTimer: "stop timer",
  CancelTimer: "cancel timer",
  CancelAllTimers: "cancel all timers",
  RenameTimer: "rename timer",
  HearRing: "ring heard",
  WhatIsLeft: "what is left",
  WhatIsLeftFor: "what is left for",
  WhatIsLeftForHands: "what is left for your hands",
  HowMuch: "how much",
  WhatGoesIn: "what goes in",
  HowDone: "how to tell it is done",
  InOven: "in the oven",
  HeatNext: "next heat",
  WhenDoWeEat: "when do we eat",
  AreWeLate: "are we late",
  WhyNow: "why now",
  WhyNotYet: "why not yet",
  WhatIfServeAt: "what if we eat at",
  WhatIfOneMore: "what if there was one more",
  WhatAhead: "what can be done ahead",
  Instead: "instead of",
  InsteadOfTool: "instead of",
  UseInstead: "use instead",
  Convert: "convert",
  ConvertHeat: "convert",
  WhyWay: "why this way",
  AskWishes: "what was wished for",
  AskMise: "what to prepare",
  ChangeAmount: "another amount",
  MakeFor: "servings",
  HaveOnly: "there is only",
  NextTime: "noted for next time",
  AskNotes: "what was noted",
  AnswerNote: "about a note",
  DropNote: "drop the note",
  WhereWasI: "where was I",
  WhatDidYouHear: "what was heard",
  WhatCanISay: "what can I say",
  Louder: "louder",
  Softer: "softer",
  Slower: "slower",
  Faster: "faster",
  QuietFor: "quiet",
  SpeakAgain: "speak again",
  StopTalking: "stop talking",
  Yes: "yes",
  No: "no",
  More: "more",
  NeverMind: "never mind",
  Correct: "correction",
  Pick: "this one",
  PutAway: "put away",
  AteLeft: "eaten",
  ThrewAway: "thrown away",
  NothingLeft: "nothing is left",
  AskFridge: "what is in the",
  HowLongKept: "how long it keeps",
  HowToWarm: "how to warm it up",
  NowWarming: "warming up",
  PutBack: "put back",
  NowCooling: "cooling down",
  NowCold: "cold",
  NoReminders: "no reminders about leftovers",
  HowMuchValue: "how much",
  AskValues: "food values",
  AskSources: "where figures come from",
  MayIHave: "may I have",
  IsItAllowed: "is it allowed",
  PutOnList: "on the list",
  TakeOffList: "off the list",
  AskList: "what to buy",
  InTheBag: "in the bag",
  NotInTheBag: "not in the bag",
};

/** An intent in a few words, for the screen: "new timer: twelve minutes, flatbreads". */
export function describe(intent: Intent): string {
  const details = detailsOf(intent).filter((detail) => detail !== "");
  return details.length === 0 ? LABELS[intent.type] : `${LABELS[intent.type]}: ${details.join(", ")}`;
}

const named = (mention: Mention | null): string => {
  if (mention === null) return "";
  switch (mention.by) {
    case "words":
      return mention.words;
    case "food":
      return mention.item;
    case "dish":
      return mention.dish.replaceAll("-", " ");
    case "task":
    case "timer":
    case "leftover":
    case "line":
      return "";
  }
};

function detailsOf(intent: Intent): readonly string[] {
  if (intent.type === "StartTimer")
    return [intent.span === null ? "" : spokenSpan(intent.span), named(intent.name)];
  if (intent.type === "Lengthen" || intent.type === "Shorten") {
    return [intent.by === null ? "" : spokenDuration(intent.by), named(intent.timer)];
  }
  if (intent.type === "RenameTimer") return [named(intent.name)];
  if (intent.type === "OvenAt") return [intent.heat === null ? "" : spokenHeat(intent.heat)];
  if (intent.type === "WhatIfOneMore") return [intent.thing];
  if (intent.type === "ServeAt" || intent.type === "WhatIfServeAt")
    return [intent.minute === null ? "" : spokenClock(intent.minute)];
  if (intent.type === "KeepFree") return [intent.span === null ? "" : spokenSpan(intent.span)];
  if (intent.type === "ServeIn") return [spokenSpan(intent.span)];
  if (intent.type === "Convert")
    return [intent.from === null ? "" : spokenAmount(intent.from), `in ${unitWords(intent.to).many}`];
  if (intent.type === "ConvertHeat") return [spokenHeatInFull(intent.from)];
  if (intent.type === "Correct") return [intent.span === null ? "" : spokenSpan(intent.span)];
  if (intent.type === "ChangeAmount")
    return [
      intent.amount === null ? `${intent.times ?? ""} times` : spokenAmount(intent.amount),
      named(intent.food),
    ];
  if (intent.type === "HaveOnly")
    return [intent.amount === null ? "" : spokenAmount(intent.amount), named(intent.food)];
  if (intent.type === "MakeFor") return [`${intent.servings ?? ""}`, named(intent.dish)];
  if (intent.type === "UseInstead") return [named(intent.use)];
  return [
    ...("nutrient" in intent ? [intent.nutrient.replace("-c", " C")] : []),
    ...("helper" in intent ? [intent.helper ?? ""] : []),
    ...("way" in intent ? [intent.way] : []),
    ...("tool" in intent ? [intent.tool] : []),
    ...("work" in intent ? [intent.work] : []),
    ...("target" in intent ? [named(intent.target)] : []),
    ...("timer" in intent ? [named(intent.timer)] : []),
    ...("place" in intent ? [intent.place ?? ""] : []),
    ...("what" in intent ? [named(intent.what)] : []),
    ...("food" in intent ? [named(intent.food)] : []),
    ...("dish" in intent ? [named(intent.dish)] : []),
  ];
}
