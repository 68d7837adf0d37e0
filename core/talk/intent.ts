import type { Nutrient } from "../food/nutrients.ts";
import type { PaceWish } from "../pace/pace.ts";
import type { Span } from "../units/duration.ts";
import type { Seconds } from "../units/quantity.ts";
import type { Measured } from "../units/amount.ts";
import type { Heat, Scale } from "../units/temperature.ts";
import type { Unit } from "../units/unit.ts";
import type { TimerId } from "../cook/orders.ts";
import type { LeftoverId, Place } from "../house/leftover.ts";
import type { NoteAnswer } from "../next-time/note.ts";
import type { Helper } from "../plan/worker.ts";
import type { TaskId } from "../plan/model.ts";
import type { DishId } from "../recipe/model.ts";

/**
 * Something the cook named. `words` is what was said, looked up later among what this meal has;
 * the others are what a question about the words was answered with.
 */
export type Mention =
  | { readonly by: "words"; readonly words: string }
  | { readonly by: "dish"; readonly dish: DishId }
  | { readonly by: "task"; readonly task: TaskId }
  | { readonly by: "timer"; readonly timer: TimerId }
  /** A food by its spoken name, which several dishes may share. */
  | { readonly by: "food"; readonly item: string }
  /** Something in the fridge. */
  | { readonly by: "leftover"; readonly leftover: LeftoverId }
  /** A line of the buying list, by its id. */
  | { readonly by: "line"; readonly line: string };

/** Which part of the meal a question is about. */
export type Scope =
  | { readonly of: "step" }
  | { readonly of: "dish"; readonly dish: Mention }
  | { readonly of: "meal" }
  | { readonly of: "to-come" };

/** What the kitchen might have one more of. */
export type OneMore = "burner" | "rack" | "oven" | "cook";

/** What is to be otherwise the next time that a dish is cooked. */
export type NextTimeWish =
  | { readonly kind: "times"; readonly times: string; readonly food: Mention }
  | { readonly kind: "amount"; readonly amount: Measured | null; readonly food: Mention }
  /** More or less, nobody says how much. */
  | { readonly kind: "some"; readonly words: "more" | "less"; readonly food: Mention }
  | { readonly kind: "leave-out"; readonly food: Mention }
  | { readonly kind: "first"; readonly target: Mention }
  | { readonly kind: "words"; readonly words: string };

/** A chapter of what can be said. */
export type Topic = "moving" | "timers" | "asking" | "eating" | "voice" | "left" | "list";

type Moving =
  | { readonly type: "WhatNow" }
  | { readonly type: "WhatNext" }
  | { readonly type: "Done"; readonly target: Mention | null }
  | { readonly type: "Started"; readonly target: Mention | null }
  /** "Stirred": something that a running step wanted was done; `deed` is the word used. */
  | { readonly type: "Attended"; readonly deed: string | null }
  | { readonly type: "Back" }
  /** A step that is over is taken up once more. */
  | { readonly type: "Reopen"; readonly target: Mention | null }
  | { readonly type: "Again" }
  | { readonly type: "Skip"; readonly target: Mention | null }
  /** A dish with all its steps; words that are no dish's mean a step. */
  | { readonly type: "LeaveOut"; readonly target: Mention }
  | { readonly type: "GoTo"; readonly target: Mention | null }
  | { readonly type: "GoToNumber"; readonly number: number; readonly dish: Mention | null }
  | { readonly type: "First"; readonly target: Mention | null }
  /** `way` in words without its "in a": "pan". */
  | { readonly type: "TakeWay"; readonly way: string; readonly target: Mention | null }
  | { readonly type: "HoldEverything" }
  | { readonly type: "GoOn" }
  | { readonly type: "UndoThat" }
  | { readonly type: "EndMeal" }
  | { readonly type: "OvenAt"; readonly heat: Heat | null }
  | { readonly type: "OvenOff" }
  /** Minutes from midnight on the kitchen's clock, 0 to 1439. */
  | { readonly type: "ServeAt"; readonly minute: number | null }
  | { readonly type: "ServeIn"; readonly span: Span }
  | { readonly type: "ServeSoonest" }
  /** How long before dinner the hands are to be free. */
  | { readonly type: "KeepFree"; readonly span: Span | null }
  | { readonly type: "KeepNoneFree" }
  /** `work` in words: "chop", "chopping"; a wish of null: as learnt. */
  | { readonly type: "MyPace"; readonly work: string; readonly wish: PaceWish | null };

type Helping =
  | { readonly type: "HelperComes" }
  /** null: whoever helps. */
  | { readonly type: "HelperGoes"; readonly helper: Helper | null }
  | { readonly type: "HelperDone"; readonly helper: Helper }
  /** null: what the cook has in hand. */
  | { readonly type: "HandOver"; readonly target: Mention | null; readonly helper: Helper }
  | { readonly type: "AskHelper"; readonly helper: Helper };

type Timing =
  | { readonly type: "StartTimer"; readonly span: Span | null; readonly name: Mention | null }
  | { readonly type: "AskTimer"; readonly timer: Mention | null }
  | { readonly type: "AskTimers" }
  | { readonly type: "Lengthen"; readonly timer: Mention | null; readonly by: Seconds | null }
  | { readonly type: "Shorten"; readonly timer: Mention | null; readonly by: Seconds | null }
  | { readonly type: "PauseTimer"; readonly timer: Mention | null }
  | { readonly type: "ResumeTimer"; readonly timer: Mention | null }
  | { readonly type: "RestartTimer"; readonly timer: Mention | null }
  | { readonly type: "StopTimer"; readonly timer: Mention | null }
  | { readonly type: "CancelTimer"; readonly timer: Mention | null }
  | { readonly type: "CancelAllTimers" }
  | { readonly type: "RenameTimer"; readonly timer: Mention | null; readonly name: Mention | null }
  /** null: every ring that goes on. */
  | { readonly type: "HearRing"; readonly timer: Mention | null };

type Asking =
  | { readonly type: "WhatIsLeft" }
  | { readonly type: "WhatIsLeftFor"; readonly dish: Mention | null }
  | { readonly type: "WhatIsLeftForHands" }
  | { readonly type: "HowMuch"; readonly food: Mention | null; readonly scope: Scope | null }
  | { readonly type: "WhatGoesIn"; readonly target: Mention | null }
  | { readonly type: "HowDone"; readonly target: Mention | null }
  | { readonly type: "InOven" }
  | { readonly type: "HeatNext" }
  | { readonly type: "WhenDoWeEat" }
  | { readonly type: "AreWeLate" }
  /** Why the step that was called is wanted now. */
  | { readonly type: "WhyNow" }
  /** What a step waits for, or why later is better. */
  | { readonly type: "WhyNotYet"; readonly target: Mention | null }
  /** Only a question: minutes from midnight, 0 to 1439. */
  | { readonly type: "WhatIfServeAt"; readonly minute: number | null }
  | { readonly type: "WhatIfOneMore"; readonly thing: OneMore }
  | { readonly type: "WhatAhead" }
  | { readonly type: "Instead"; readonly food: Mention | null }
  /** `tool` by a name of `toolNames`. */
  | { readonly type: "InsteadOfTool"; readonly tool: string }
  | { readonly type: "UseInstead"; readonly use: Mention | null; readonly food: Mention | null }
  | { readonly type: "Convert"; readonly from: Measured | null; readonly to: Unit }
  | { readonly type: "ConvertHeat"; readonly from: Heat; readonly to: Scale }
  | { readonly type: "WhyWay"; readonly way: string }
  | { readonly type: "AskWishes" }
  | {
      readonly type: "ChangeAmount";
      /** "used": it went in already. */
      readonly how: "used" | "wanted";
      readonly amount: Measured | null;
      /** How many times as much, "n/d", where no amount was said. */
      readonly times: string | null;
      readonly food: Mention | null;
      readonly dish: Mention | null;
    }
  /** So many servings of a dish; null: of every dish that is not begun. */
  | { readonly type: "MakeFor"; readonly servings: number | null; readonly dish: Mention | null }
  /** There is no more of a food in the house than this. */
  | {
      readonly type: "HaveOnly";
      readonly amount: Measured | null;
      readonly food: Mention | null;
      readonly dish: Mention | null;
    }
  | { readonly type: "NextTime"; readonly wish: NextTimeWish; readonly dish: Mention | null }
  | { readonly type: "AskNotes" }
  /** A note from an evening before: `key` names it. */
  | { readonly type: "AnswerNote"; readonly key: string; readonly answer: NoteAnswer }
  | { readonly type: "DropNote" }
  | { readonly type: "AskMise"; readonly work: "all" | "cutting" | "washing" }
  | { readonly type: "WhereWasI" }
  | { readonly type: "WhatDidYouHear" }
  /** With what can be said in one chapter; null: what fits the moment. */
  | { readonly type: "WhatCanISay"; readonly examples: readonly string[] | null };

/** Of what a food value is asked: a helping by its word ("bowl"), a whole dish, the meal, or all that is eaten today. */
export type ValueOf = { readonly helping: string } | "dish" | "meal" | "day";

type Eating =
  | {
      readonly type: "HowMuchValue";
      readonly nutrient: Nutrient;
      readonly of: ValueOf;
      readonly dish: Mention | null;
    }
  /** null: of the whole meal. */
  | { readonly type: "AskValues"; readonly dish: Mention | null }
  | { readonly type: "AskSources" }
  /** A dish or an ingredient of the meal, or any food or group of foods. */
  | { readonly type: "MayIHave"; readonly food: Mention | null }
  | { readonly type: "IsItAllowed" };

type Voicing =
  | { readonly type: "Louder" }
  | { readonly type: "Softer" }
  | { readonly type: "Slower" }
  | { readonly type: "Faster" }
  | { readonly type: "QuietFor"; readonly minutes: number | null }
  | { readonly type: "SpeakAgain" }
  | { readonly type: "StopTalking" };

type Housing =
  /** `servings` and `place` are null where they were not said. */
  | {
      readonly type: "PutAway";
      readonly what: Mention | null;
      readonly servings: number | null;
      readonly place: Place | null;
    }
  /** `servings` null: all that was left. */
  | { readonly type: "AteLeft"; readonly what: Mention | null; readonly servings: number | null }
  | { readonly type: "ThrewAway"; readonly what: Mention | null }
  | { readonly type: "NothingLeft"; readonly what: Mention | null }
  | { readonly type: "HowLongKept"; readonly what: Mention | null }
  | { readonly type: "HowToWarm"; readonly what: Mention | null }
  /** `servings` null: all of it. */
  | { readonly type: "NowWarming"; readonly what: Mention | null; readonly servings: number | null }
  | { readonly type: "PutBack"; readonly what: Mention | null; readonly place: Place }
  | { readonly type: "NowCooling"; readonly what: Mention | null }
  | { readonly type: "NowCold"; readonly what: Mention | null }
  | { readonly type: "AskFridge"; readonly place: Place }
  | { readonly type: "NoReminders" };

type Listing =
  /** Wanted from the shop, for no meal in particular. */
  | { readonly type: "PutOnList"; readonly what: Mention | null }
  | { readonly type: "TakeOffList"; readonly what: Mention | null }
  | { readonly type: "AskList" }
  | { readonly type: "InTheBag"; readonly what: Mention | null }
  | { readonly type: "NotInTheBag"; readonly what: Mention | null };

type Answering =
  | { readonly type: "Yes" }
  | { readonly type: "No" }
  | { readonly type: "More" }
  | { readonly type: "NeverMind" }
  /** "No, fifteen": the figure just heard was another; a bare number counts in the unit it replaces. */
  | { readonly type: "Correct"; readonly span: Span | null; readonly number: number | null }
  /** One of the candidates that the caller has just offered, counted from 0. */
  | { readonly type: "Pick"; readonly candidate: number };

/** What one utterance wants; null in a slot means that it was not said. */
export type Intent = Moving | Helping | Timing | Asking | Eating | Voicing | Answering | Housing | Listing;

export type IntentType = Intent["type"];

/** The intent of one type. */
export type IntentOf<T extends IntentType> = Extract<Intent, { readonly type: T }>;

/** A mention of something by the words for it; null stays null. */
export const mention = (words: string | null): Mention | null =>
  words === null ? null : { by: "words", words };
