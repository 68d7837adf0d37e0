import type { Instant } from "../units/quantity.ts";
import type { RunSheet } from "../plan/model.ts";
import type { MealLog } from "../cook/session.ts";
import type { CookingMeal } from "../recipe/model.ts";
import type { Order } from "../cook/orders.ts";
import type { Finding } from "../diet/findings.ts";
import type { FoodBook } from "../diet/food-book.ts";
import type { House, HouseLog } from "../house/house.ts";
import type { HouseOrder } from "../house/orders.ts";
import type { DeviceList, ListOrder } from "../shop/at-hand.ts";
import type { Intent, IntentOf } from "./intent.ts";
import type { Cooking, Eating, Helping, Housing, Moving } from "./intent-groups.ts";

/** What the caller's own voice is asked to do; carried out by the device, never in the meal log. */
export type VoiceOrder =
  | { readonly type: "Louder" }
  | { readonly type: "Softer" }
  | { readonly type: "Slower" }
  | { readonly type: "Faster" }
  | { readonly type: "QuietFor"; readonly minutes: number }
  | { readonly type: "SpeakAgain" }
  | { readonly type: "StopTalking" };

/** A question that the caller has put and that the next utterance may answer. */
export type Question =
  | { readonly kind: "confirm"; readonly intent: Intent; readonly prompt: string }
  | {
      readonly kind: "which";
      readonly candidates: readonly { readonly name: string; readonly intent: Intent }[];
      readonly prompt: string;
    }
  /** "More?": the parts of a long answer that were not said yet. */
  | { readonly kind: "more"; readonly rest: readonly string[]; readonly prompt: string }
  /** Half a sentence: `intent` lacks what the prompt asks for ("For how long?"). */
  | { readonly kind: "missing"; readonly intent: Intent; readonly prompt: string };

/** What one device remembers of the conversation. Not part of the meal log. */
export interface Dialogue {
  readonly question: Question | null;
  readonly lastSaid: string | null;
  readonly lastHeard: string | null;
  /** What the last utterance was taken for, in words; null where it was not understood. */
  readonly lastUnderstood: string | null;
  /** What was just done, where a figure in it may have been misheard: "no, fifteen" corrects it. */
  readonly correctable: { readonly intent: Intent; readonly utteranceId: string } | null;
}

export const silentDialogue: Dialogue = {
  question: null,
  lastSaid: null,
  lastHeard: null,
  lastUnderstood: null,
  correctable: null,
};

/** What nobody asked, but an answer may add: without which dish a dinner that is late would be ready, and when. */
export interface WhatToLeaveOut {
  readonly type: "WhatToLeaveOut";
  /** How many words there is breath for. */
  readonly words: number;
}

/** What nobody asked, but the caller may: whether something else is to be taken for what a diet does not allow. */
export interface OfferStandIn {
  readonly type: "OfferStandIn";
}

/**
 * Answers a question about the plan, or carries out what the cook wishes of it. What was not asked may be answered by "".
 * @param consent whether the cook has said yes to what destroys something
 */
export type Explain = (
  asked:
    IntentOf<Exclude<Cooking, Moving | Helping> | "Convert" | "ConvertHeat"> | WhatToLeaveOut | OfferStandIn,
  kitchen: Kitchen,
  consent: "wanted" | "given",
) => Answer;

/** What an answer comes to before it becomes a reply. */
type Answer = Pick<Reply, "say" | "orders" | "voice" | "house" | "list"> & Pick<Dialogue, "question">;

/** Answers what is asked of the house, or carries out what is wanted in it; "undo" where that means a deed in the house. */
export type AnswerHouse = (
  intent: IntentOf<Housing | "UndoThat">,
  kitchen: Kitchen,
  household: Household,
) => Answer;

/** What speaks of the house; a page fetches it after it stands. */
export interface HouseTalk {
  readonly answer: AnswerHouse;
  /** The names of all that may be left. */
  readonly names: (house: House) => readonly string[];
  /** The names of what is on the list: of all that can be ticked while somebody looks at it, else of what can be taken off. */
  readonly listed: (household: Household) => readonly string[];
  /** The names of what a household may want: listened for while somebody looks at the list. */
  readonly goods: (household: Household) => readonly string[];
  /** Whether anything is on the list. */
  readonly isListed: (household: Household) => boolean;
  /** What can be said while no meal is on. */
  readonly suggestions: (kitchen: Kitchen, household: Household) => readonly string[];
  /** Whether it is worth listening for what is said of what is left. */
  readonly isSomethingLeft: (kitchen: Kitchen, house: House) => boolean;
  /** Whether the cook's last deed was one in the house. @param lastInMeal when the meal's last one was, epoch ms */
  readonly isLastDeed: (kitchen: Kitchen, log: HouseLog, lastInMeal: number) => boolean;
}

/** The house as answers need it. */
export interface Household {
  readonly log: HouseLog;
  readonly talk: HouseTalk;
  /** The buying list of this device. */
  readonly list: DeviceList;
}

/** What speaks of foods and diets; a page fetches it after it stands. */
export interface FoodTalk {
  readonly answer: (intent: IntentOf<Eating>, kitchen: Kitchen, book: FoodBook) => Answer;
  /** The names of all that may be asked about: what is in the meal, and what the diets speak of. */
  readonly names: (book: FoodBook, meal: CookingMeal | null) => readonly string[];
  /** What the diets that hold have against a food in the meal's place, in a sentence; "" where they allow it. */
  readonly against: (food: string, kitchen: Kitchen, book: FoodBook) => string;
  /** The first that the diets do not allow and that something may stand in for; null where none is known. */
  readonly barred: (kitchen: Kitchen, book: FoodBook) => Finding | null;
  /** What another ingredient changes for the diets, in a sentence; "" where nothing. */
  readonly changed: (before: CookingMeal, now: CookingMeal, book: FoodBook) => string;
}

/** What is known of foods, as answers need it. */
export interface FoodsAtHand {
  readonly book: FoodBook;
  readonly talk: FoodTalk;
}

/** Everything an answer depends on. */
export interface Kitchen {
  readonly log: MealLog;
  /** The sheet for `log` at `now`; null before a meal has begun. */
  readonly sheet: RunSheet | null;
  readonly now: Instant;
  /** Minutes that local clock time is ahead of UTC at a moment: it changes in the night of the time change. */
  readonly utcOffsetMinutes: (at: Instant) => number;
  readonly dialogue: Dialogue;
  /** Unique for this utterance: new timers and commands are named after it. */
  readonly utteranceId: string;
  /** `explainPlan`; null as long as a page has not fetched it. */
  readonly explain: Explain | null;
  /** null as long as a page has not fetched it. */
  readonly household: Household | null;
  /** null as long as a page has not fetched it. */
  readonly foods: FoodsAtHand | null;
}

/** The caller's answer to one utterance. */
export interface Reply {
  /** null: nothing was understood (and nothing is done). */
  readonly intent: Intent | null;
  /** What is said aloud and shown as a caption; at most one breath. Never empty, except after "stop talking". */
  readonly say: string;
  /** To be decided by the server, in this order. */
  readonly orders: readonly Order[];
  readonly voice: readonly VoiceOrder[];
  /** For the household log, in this order. */
  readonly house: readonly HouseOrder[];
  /** For the buying list of this device. */
  readonly list: readonly ListOrder[];
  readonly dialogue: Dialogue;
}
