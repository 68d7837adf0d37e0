import type { Task } from "../plan/model.ts";
import type { CookingMeal, Dish, Step } from "../recipe/model.ts";

/** The kinds of work by hand that a cook may be slower or faster at, in the trade's words. */
export const workKinds = ["washing", "cutting", "mixing", "shaping", "stove", "plating", "other"] as const;
export type WorkKind = (typeof workKinds)[number];

/** What the cook may say of a kind of work; it wins over what was learnt. */
export const paceWishes = ["slower", "as-written", "faster"] as const;
export type PaceWish = (typeof paceWishes)[number];

/** How long this cook takes for a kind of work, against what the recipes say. */
export interface KnownPace {
  readonly kind: WorkKind;
  /** Learnt from the log: 1.3 is three tenths longer than the recipes say; 1 until enough is known. */
  readonly times: number;
  /** What it was learnt from; where that is too little, what there is so far. */
  readonly steps: number;
  readonly evenings: number;
  /** null: as learnt. */
  readonly wish: PaceWish | null;
}

/** A pace as an evening uses it. */
export interface Pace extends KnownPace {
  /** The evening's steps of this kind, by `stepKey`. Kept in the log, so that a replay needs no table of verbs. */
  readonly of: readonly string[];
}

/** Names a step of a meal; every batch of it has the same name. */
export const stepKey = (dish: Dish, step: Step): string => `${dish.id}/${step.id}`;

/**
 * What "slower" and "faster" come to. An assumption, no source; the same as the slow and the quick evening of
 * core/plan/on-time.ts.
 */
const wished: Readonly<Record<PaceWish, number>> = { slower: 1.3, "as-written": 1, faster: 0.85 };

/** What a pace comes to. At the stove the heat has its say: nothing there is planned shorter than the recipe has it. */
export function timesOf({ kind, times, wish }: KnownPace): number {
  const taken = wish === null ? times : wished[wish];
  return kind === "stove" ? Math.max(1, taken) : taken;
}

/**
 * The tasks with the paces that hold from now on; what no pace names takes as long as its recipe says, and so does a step
 * that is by now done in a way that runs by itself.
 */
export function atPace(tasks: readonly Task[], paces: readonly Pace[]): readonly Task[] {
  return tasks.map((task) => {
    const key = stepKey(task.dish, task.step);
    const pace = task.step.hands === "on" ? paces.find(({ of }) => of.includes(key)) : undefined;
    return { ...task, pace: pace === undefined ? 1 : timesOf(pace) };
  });
}

/** The steps of a meal that `is` holds for, by `stepKey`. */
export const stepKeys = ({ dishes }: CookingMeal, is: (step: Step) => boolean): readonly string[] =>
  dishes.flatMap((dish) => dish.steps.filter(is).map((step) => stepKey(dish, step)));
