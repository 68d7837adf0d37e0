import type { Keeping } from "../keeping/keeping.ts";
import type { SourceId } from "../keeping/sources-table.ts";
import type { DishId } from "../recipe/model.ts";
import type { Instant } from "../units/quantity.ts";
import type { Rational } from "../units/rational.ts";

declare const leftover: unique symbol;
export type LeftoverId = string & { readonly [leftover]: true };
export const leftoverId = (text: string): LeftoverId => text as LeftoverId;

/** Where what is left is kept. */
export const places = ["fridge", "freezer"] as const;
export type Place = (typeof places)[number];

/** How much is left: in servings, exactly, or in the cook's own words. */
export type Rest =
  | { readonly kind: "servings"; readonly servings: Rational }
  | { readonly kind: "words"; readonly words: string };

/** What was put away, as the log has it. */
export interface StoredLeftover {
  readonly id: LeftoverId;
  readonly name: string;
  /** Which evening and dish it is of; null: nobody knows. */
  readonly of: { readonly session: string; readonly dish: DishId } | null;
  /** What a serving of it is called: "bowls". */
  readonly servingsOf: string;
  readonly rest: Rest;
  readonly place: Place;
  readonly storedAt: Instant;
  readonly useBy: Instant;
  /** Where the days until `useBy` come from. */
  readonly source: SourceId;
  /** Whether it is known what is in it; otherwise the strictest figure was taken. */
  readonly isKnown: boolean;
}

/** What is left now. What was heated is an entry of its own where the rest stayed cold. */
export interface Leftover extends StoredLeftover {
  /** It is heated once only, and then eaten; null: it is cold. `useBy` is then two hours later, or sooner. */
  readonly heatedAt: Instant | null;
}

/** Some of what is left, and the id by which it is known from then on. */
export interface Portion {
  readonly servings: Rational;
  readonly as: LeftoverId;
}

/** A dish of the meal that was cooked last, as far as it matters for what is left of it. */
export interface MadeDish {
  readonly dish: DishId;
  readonly name: string;
  /** Every way to say its name. */
  readonly says: readonly string[];
  readonly yield: { readonly servings: number; readonly of: string };
  /** Whether anything in it was heated. */
  readonly isHot: boolean;
  readonly keeping: Keeping;
  /** When it left the heat for the last time, and when its last step was over; null: not yet, or never. */
  readonly offHeatAt: Instant | null;
  readonly readyAt: Instant | null;
}

/** The meal that was cooked last. */
export interface MadeMeal {
  readonly session: string;
  readonly name: string;
  readonly dishes: readonly MadeDish[];
  readonly begunAt: Instant;
  /** null: it is being cooked. */
  readonly endedAt: Instant | null;
}
