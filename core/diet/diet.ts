import type { Nutrient } from "../food/nutrients.ts";
import type { Measured } from "../units/amount.ts";
import type { Rational } from "../units/rational.ts";
import type { Claim } from "./claims-table.ts";
import type { FoodGroup } from "./groups.ts";

declare const name: unique symbol;
/** A diet's file stem, "lamp-room". */
export type DietId = string & { readonly [name]: "diet" };
export const dietId = (text: string): DietId => text as DietId;

/** What a rule is about. A group goes before a food of the same name, for it holds more. */
export type DietName = { readonly said: string } & (
  | { readonly kind: "group"; readonly group: FoodGroup }
  /** By the main name of the food in the table. */
  | { readonly kind: "food"; readonly food: string }
  /** In no table: known by these words alone, as `normaliseFood` gives them. */
  | { readonly kind: "words"; readonly words: readonly string[] }
);

/** How much of a food a diet allows. */
export type Allowance =
  /** In so many meals. */
  | { readonly kind: "times"; readonly times: number; readonly every: "day" | "week" }
  | { readonly kind: "amount"; readonly amount: Measured; readonly every: "serving" | "day" | "week" };

/** What must be true of a food that is allowed. */
export const CONDITIONS = ["nonfat", "low-fat", "unsalted", "unsweetened", "organic", "whole-grain"] as const;
export type Condition = (typeof CONDITIONS)[number];

/** What a diet says of a food or a group. */
export interface FoodRule {
  readonly name: DietName;
  readonly verdict: "allowed" | "avoided";
  /** null: as much as one likes. */
  readonly allowance: Allowance | null;
  readonly only: Condition | null;
  /** Of the group only these; null: all of it. */
  readonly these: readonly DietName[] | null;
  readonly because: string | null;
}

/** What a limit is reckoned over: a serving of each dish, a serving of the whole meal, or all meals of a day. */
export type Scope = "serving" | "meal" | "day";

/** What a diet says of what the food holds. */
export type ValueRule = { readonly in: Scope; readonly because: string | null } & (
  | {
      readonly kind: "at most" | "at least";
      readonly nutrient: Nutrient;
      /** In the value's own unit: kilocalories, grams or milligrams. */
      readonly figure: Rational;
      /** As the cook wrote it. */
      readonly written: string;
    }
  | { readonly kind: "claim"; readonly claim: Claim }
);

/** What a cook may eat, as their clinician and they have written it down. */
export interface Diet {
  readonly id: DietId;
  readonly name: string;
  readonly about: string;
  /** It holds for every meal; else only for those that name it. */
  readonly isEveryMeal: boolean;
  /** "only": nothing but what is listed; "but": all but what is listed. */
  readonly listed: "only" | "but";
  readonly foods: readonly FoodRule[];
  /** Nothing lifts these, and a trace is too much. */
  readonly allergies: readonly DietName[];
  readonly values: readonly ValueRule[];
}
