import type { DishId } from "../recipe/model.ts";
import type { Instant } from "../units/quantity.ts";
import type { Rational } from "../units/rational.ts";
import type { ThingKey } from "./wanted.ts";
import type { LeftoverId, MadeMeal, Portion, StoredLeftover } from "./leftover.ts";

/** About what is left and was put away. */
export type LeftoverHappening =
  | { readonly type: "LeftoverStored"; readonly leftover: StoredLeftover }
  /** Some of it was eaten. */
  | { readonly type: "LeftoverLessened"; readonly id: LeftoverId; readonly servings: Rational }
  /** Taken out and heated; null: all of it. */
  | { readonly type: "LeftoverHeated"; readonly id: LeftoverId; readonly some: Portion | null }
  /** All of what was left. */
  | { readonly type: "LeftoverEaten" | "LeftoverThrownAway"; readonly id: LeftoverId };

/** About the meal that was cooked last, from the stove to the fridge. */
export type MadeHappening =
  /** By the server alone: what a meal is made of, told again whenever it changes. */
  | { readonly type: "MealNoted"; readonly made: MadeMeal }
  /** Nothing of it is left. */
  | { readonly type: "DishFinished"; readonly session: string; readonly dish: DishId }
  | {
      readonly type: "CoolingBegun";
      readonly session: string;
      readonly dish: DishId;
      readonly name: string;
      /** When it left the heat. */
      readonly since: Instant;
    }
  | { readonly type: "CoolingEnded"; readonly session: string; readonly dish: DishId }
  /** The cook wants to hear no more of what stands about after this meal. */
  | { readonly type: "RemindersSilenced"; readonly session: string };

/** About what is to be bought. */
export type WantedHappening =
  | { readonly type: "ThingWanted"; readonly thing: ThingKey; readonly name: string }
  /** Taken off the list; bought, and after all not. */
  | { readonly type: "ThingDropped" | "ThingBought" | "ThingNotBought"; readonly thing: ThingKey }
  | { readonly type: "BoughtCleared" };

/** What has happened in the house. Stored for ever: a new shape gets a new name. */
export type HouseHappening =
  | LeftoverHappening
  | MadeHappening
  | WantedHappening
  /** Takes back every event that the command `undoes` produced. */
  | { readonly type: "Undone"; readonly undoes: string };

/** An event in the household log. `seq` counts from 1 without gaps; `command` names its cause. */
export interface HouseEvent {
  readonly seq: number;
  readonly at: Instant;
  readonly command: string;
  readonly happening: HouseHappening;
}
