import { signal } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import type { Dialogue, FoodsAtHand, Kitchen } from "../../core/talk/model.ts";
import type { Instant } from "../../core/units/quantity.ts";
import type { Clock } from "./clock.ts";
import type { HouseKeeper } from "./house-keeper.ts";
import type { MealStore } from "./meal-store.ts";

/** What comes after the page stands; null until it is here. */
export interface Late {
  /** What outlives the evening. */
  readonly house: ReadonlySignal<HouseKeeper | null>;
  /** What is known of foods and diets. */
  readonly foods: ReadonlySignal<FoodsAtHand | null>;
}

/** What an answer is read from. */
export interface Rooms extends Late {
  readonly clock: Clock;
  readonly store: MealStore;
}

/** All of them; what is left out of the late ones never comes. */
export const roomsWith = (clock: Clock, store: MealStore, late: Partial<Late>): Rooms => ({
  clock,
  store,
  house: signal(null),
  foods: signal(null),
  ...late,
});

/** Everything that an answer depends on at a moment, but the reasons of the plan. */
export const kitchenAt = (
  now: Instant,
  { clock, store, house, foods }: Rooms,
  dialogue: Dialogue,
): Kitchen => ({
  log: store.log.value,
  sheet: store.sheet.value,
  now,
  utcOffsetMinutes: clock.utcOffsetMinutes,
  dialogue,
  utteranceId: crypto.randomUUID(),
  explain: null,
  household: house.value?.household.value ?? null,
  foods: foods.value,
});
