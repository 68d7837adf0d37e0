import type { Amount } from "../units/amount.ts";
import type { Heat } from "../units/temperature.ts";
import type { Seconds } from "../units/quantity.ts";

declare const name: unique symbol;
type Id<Kind extends string> = string & { readonly [name]: Kind };

/** A dish's file stem, for instance `ember-squash-soup`. */
export type DishId = Id<"dish">;
/** A step's name within its dish. */
export type StepId = Id<"step">;
/** An ingredient's name within its dish. */
export type IngredientId = Id<"ingredient">;
/** A meal's file stem. */
export type MealId = Id<"meal">;

export const dishId = (text: string): DishId => text as DishId;
export const stepId = (text: string): StepId => text as StepId;
export const ingredientId = (text: string): IngredientId => text as IngredientId;
export const mealId = (text: string): MealId => text as MealId;

/** A range of time, `low <= high`; both equal when the recipe names one figure. */
export interface Span {
  readonly low: Seconds;
  readonly high: Seconds;
}

/** A range of oven heat, `low <= high`, both in the scale that the recipe was written in. */
export interface HeatRange {
  readonly low: Heat;
  readonly high: Heat;
}

/** What may stand in for an ingredient, and what else changes then. */
export interface Swap {
  /** What to use instead, as spoken: "sweet potato". */
  readonly use: string;
  /** How much of it; null means the same amount as the ingredient. */
  readonly amount: Amount | null;
  /** The side effect as one spoken sentence ("Use half a cup less water."); null means there is none. */
  readonly effect: string | null;
  /** Other ingredients of the dish whose amount becomes another. */
  readonly changes: readonly { readonly ingredient: IngredientId; readonly amount: Amount }[];
  /** How much longer (below nought: shorter) the steps run by themselves that it goes into; left out: as long. */
  readonly longer?: Seconds;
  /** It is common practice and not the recipe's own; left out: it is the recipe's. */
  readonly isCommon?: true;
}

export interface Ingredient {
  readonly id: IngredientId;
  /** As spoken: "red lentils". */
  readonly item: string;
  /** In all, for the dish's yield (a scaled dish holds the scaled amount). */
  readonly amount: Amount;
  /** "rinsed", "minced"; null where it goes in as it is. */
  readonly preparation: string | null;
  /** Its food in the table or on a label, "dry white bean" or "blueberry or raspberry"; null: the item says it. */
  readonly food: string | null;
  /** What all of it weighs as eaten, where the dish tells it; null: by the food's measures. */
  readonly weighs: Amount | null;
  readonly optional: boolean;
  readonly swaps: readonly Swap[];
}

/** How much of an ingredient goes in at one step. */
export interface Use {
  readonly ingredient: IngredientId;
  readonly amount: Amount;
}

/** What a step occupies from its start to its end. */
export type Need =
  | { readonly kind: "burner"; readonly count: number }
  | { readonly kind: "oven"; readonly heat: HeatRange; readonly racks: number }
  | { readonly kind: "appliance"; readonly name: string }
  | { readonly kind: "bowl"; readonly name: string }
  | { readonly kind: "fridge" };

/** A moment at which an unattended step wants the cook. `within`: how far it may slip. */
export type Attention =
  | { readonly kind: "every"; readonly every: Seconds; readonly within: Seconds; readonly do: string }
  | { readonly kind: "at"; readonly after: Seconds; readonly within: Seconds; readonly do: string }
  | { readonly kind: "before-end"; readonly before: Seconds; readonly within: Seconds; readonly do: string };

/** "This step may start `atLeast` after that one ended, and at most `atMost` after it." */
export interface Link {
  readonly step: StepId;
  readonly atLeast: Seconds;
  /** null: any time later. 0: at once. */
  readonly atMost: Seconds | null;
}

/** What sets one way of doing a step's work apart. What goes in, comes before and after, and must hold is the step's. */
export interface Way {
  /** As said after the step's title: "in the oven". */
  readonly name: string;
  readonly do: string;
  readonly hands: "on" | "off";
  readonly time: Span;
  readonly extend: { readonly by: Span; readonly atMost: Seconds } | null;
  readonly attend: readonly Attention[];
  readonly needs: readonly Need[];
  readonly batch: { readonly of: number; readonly holds: number; readonly pieces: string } | null;
}

/** Why a step is done in one of its ways. */
export type WayChosen =
  | { readonly by: "recipe" }
  /** Over each other way, what speaks for this one as the rest of a sentence; the next best way first. */
  | { readonly by: "plan"; readonly over: readonly { readonly way: string; readonly because: string }[] }
  | { readonly by: "cook" };

/** The ways of a step that has several: two or more, the recipe's own first. */
export interface Ways {
  readonly all: readonly Way[];
  /** The name of the one that the step's own fields tell. */
  readonly taken: string;
  readonly chosen: WayChosen;
}

export interface Step {
  readonly id: StepId;
  /** A short spoken name for lists and the run sheet: "roast the squash". */
  readonly title: string;
  /** What to do: one spoken sentence, at most 140 characters. */
  readonly do: string;
  readonly uses: readonly Use[];
  /** `on`: the cook's hands all the time. `off`: a minute to start it, then it runs by itself. */
  readonly hands: "on" | "off";
  /** From the earliest to the latest end. */
  readonly time: Span;
  /** The doneness cue: "a knife slides in without pushing"; null where the time says it all. */
  readonly until: string | null;
  /** `hard`: never beyond `time.high` plus `extend.atMost`. `soft`: the cook may go on. */
  readonly latest: "hard" | "soft";
  /** How much more it may get when it is not done; null: nothing beyond a hard latest. */
  readonly extend: { readonly by: Span; readonly atMost: Seconds } | null;
  readonly attend: readonly Attention[];
  readonly needs: readonly Need[];
  readonly after: readonly Link[];
  /** `of` pieces in all, `holds` at a time; null: all at once. Scaling multiplies `of`. */
  readonly batch: { readonly of: number; readonly holds: number; readonly pieces: string } | null;
  /** How long before serving its result keeps; null: not a thing to make ahead. */
  readonly ahead: Seconds | null;
  /** It must end at most this long before serving (a dressing that wilts); null: no such limit. */
  readonly endsBeforeServing: Seconds | null;
  /** How long its hot result may wait before it suffers (a soft limit); null: it keeps. */
  readonly hold: Seconds | null;
  /** null: there is one way to do it. */
  readonly ways: Ways | null;
}

export interface Dish {
  readonly id: DishId;
  readonly name: string;
  /** Every way to say its name: in full first, then the short ones, the handiest first. */
  readonly says: readonly string[];
  readonly about: string;
  /** What can hurt: said once when the dish begins. */
  readonly cautions: readonly string[];
  readonly yield: { readonly servings: number; readonly of: string };
  readonly ingredients: readonly Ingredient[];
  readonly steps: readonly Step[];
}

export interface Oven {
  readonly name: string;
  readonly racks: number;
  /** Degrees a minute, in Fahrenheit degrees. */
  readonly heats: number;
  readonly cools: number;
  readonly hottest: Heat;
}

export interface Kitchen {
  readonly burners: number;
  readonly ovens: readonly Oven[];
  readonly appliances: readonly string[];
}

/** A meal as it stands in its file. */
export interface Meal {
  readonly id: MealId;
  readonly name: string;
  readonly about: string;
  readonly dishes: readonly { readonly dish: DishId; readonly servings: number }[];
  /** Minutes from midnight; null: as soon as possible. */
  readonly serveAt: number | null;
  /** The diets that it names, by their file stems; those that hold for every meal hold besides. */
  readonly diets: readonly string[];
  readonly kitchen: Kitchen;
}

/** A meal ready to cook: its dishes looked up and scaled. It goes whole into the log's first event. */
export interface CookingMeal {
  readonly id: MealId;
  readonly name: string;
  readonly dishes: readonly Dish[];
  readonly kitchen: Kitchen;
}
