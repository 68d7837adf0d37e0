import type { ReadonlySignal, Signal } from "@preact/signals";
import type { BuyingDesk } from "../kitchen/buying-model.ts";
import type { Caller } from "../kitchen/caller.ts";
import type { Clock } from "../kitchen/clock.ts";
import type { Ear } from "../kitchen/ear-model.ts";
import type { EarTrial } from "../kitchen/ear-trial.ts";
import type { HouseKeeper } from "../kitchen/house-keeper.ts";
import type { MisheardRecord } from "../kitchen/misheard-model.ts";
import type { MealStore } from "../kitchen/meal-store.ts";
import type { Settings } from "../kitchen/settings.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import type { MealRequest } from "../../core/sync/meal-request.ts";
import { minuteOfDay } from "../../core/talk/minute-of-day.ts";
import type { FoodsAtHand } from "../../core/talk/model.ts";
import { formatClock } from "../../core/units/clock-words.ts";
import type { Instant } from "../../core/units/quantity.ts";
import type { Result } from "../../core/units/result.ts";

/** All that the screen knows: signals to read and functions to call. It holds no socket, no storage, no sound. */
export interface Galley {
  readonly clock: Clock;
  readonly store: MealStore;
  readonly caller: Caller;
  readonly ear: Ear;
  readonly settings: Signal<Settings>;
  /** Says a text as the caller would, apart from the conversation. */
  readonly sayAloud: (text: string) => void;
  /** Set it and the ear is tried out: it hands over what it hears, and nothing is obeyed. */
  readonly trial: Signal<EarTrial | null>;
  /** The record of misheard sentences; its code comes when it is first asked for. Fails where it cannot be fetched. */
  readonly misheard: () => Promise<MisheardRecord>;
  /** The list of what to buy; its code comes when it is first asked for. Fails where it cannot be fetched. */
  readonly buying: () => Promise<BuyingDesk>;
  /** What is known of foods and diets; null until it is here. */
  readonly foods: ReadonlySignal<FoodsAtHand | null>;
  /** A meal before it is begun; its code comes when it is first asked for. Error: one sentence. Fails where it cannot be fetched. */
  readonly meal: (wanted: MealRequest) => Promise<Result<CookingMeal, string>>;
  /** What is left of meals, and what outlives an evening otherwise; null until its code is here. */
  readonly house: ReadonlySignal<HouseKeeper | null>;
  /** Why the screen may go dark, as one sentence; null while it is kept awake or need not be. */
  readonly awake: ReadonlySignal<string | null>;
  /** Call it from the touch that begins a meal: sound, microphone and a screen that stays on need one. */
  readonly wake: () => void;
}

/** A moment by the kitchen's clock: "6:34 pm". */
export const clockTime = (at: Instant, clock: Clock): string =>
  formatClock(minuteOfDay({ now: at, utcOffsetMinutes: clock.utcOffsetMinutes }));
