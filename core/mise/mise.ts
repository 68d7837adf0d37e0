import { normaliseFood } from "../food/names.ts";
import { workKind } from "../pace/work-kind.ts";
import type { Progress, RunSheet, Task, TaskId } from "../plan/model.ts";
import type { Dish, Ingredient, Step } from "../recipe/model.ts";
import { sumAmounts } from "../units/sum-amounts.ts";
import type { Amount } from "../units/amount.ts";
import { earlier } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import { inOrder } from "./order.ts";
import type { Due } from "./order.ts";
import { portionId } from "./portion.ts";
import type { PortionId } from "./portion.ts";
import type { Act, Work } from "./preparation.ts";
import { readPreparation } from "./preparation.ts";
import { rawFoods } from "./preparation-words-table.ts";
import { isTold } from "./told-by-step.ts";

/** What goes in at one step and is to be prepared before it begins. */
export interface Portion {
  readonly id: PortionId;
  readonly dish: Dish;
  readonly ingredient: Ingredient;
  readonly step: Step;
  readonly amount: Amount;
  readonly work: Work;
  /** When its step begins by the run sheet. */
  readonly neededAt: Instant;
}

/** One thing to prepare, for one dish or several. */
export interface Preparation extends Due {
  readonly work: Work;
  /** The exact sum; several where the units cannot be added. */
  readonly amounts: readonly Amount[];
  /** In the order of need. */
  readonly portions: readonly Portion[];
  readonly isOptional: boolean;
}

/** What the preparation is read from: a session, or a plan that nobody has begun. */
export interface Evening {
  readonly tasks: readonly Task[];
  readonly progress: ReadonlyMap<TaskId, Progress>;
  /** What the cook has ticked off. */
  readonly prepared: ReadonlySet<PortionId>;
}

/** Whether what goes in at a step has not gone in: it waits, or is in the hands of somebody who may still need it. */
function isAhead({ id, step }: Task, { progress }: Evening): boolean {
  const state = progress.get(id)?.state ?? "waiting";
  return state === "waiting" || (state === "running" && step.hands === "on");
}

/** What is left to do to it once the steps have told their part; null: nothing. */
function workLeft(dish: Dish, step: Step, ingredient: Ingredient): Work | null {
  if (ingredient.preparation === null) return null;
  const work = readPreparation(ingredient.preparation);
  const acts = work.acts.filter((act: Act) => !isTold(act, dish, step, ingredient));
  return work.acts.length > 0 && acts.length === 0 ? null : { acts, words: work.words };
}

/** Every portion that has a preparation and whose step has not begun, whether or not it was ticked off. */
export function portionsOf(evening: Evening, sheet: RunSheet): readonly Portion[] {
  const starts = new Map(sheet.entries.map(({ task, start }) => [task, start]));
  return evening.tasks.flatMap((task) => {
    // With the first batch all of it has been prepared.
    if ((task.batch?.number ?? 1) > 1 || !isAhead(task, evening)) return [];
    const { dish, step } = task;
    return step.uses.flatMap(({ ingredient: id, amount }): readonly Portion[] => {
      const ingredient = dish.ingredients.find((one) => one.id === id);
      const work = ingredient === undefined ? null : workLeft(dish, step, ingredient);
      if (ingredient === undefined || work === null) return [];
      const neededAt = starts.get(task.id) ?? sheet.readyAt;
      return [{ id: portionId(dish.id, step.id, id), dish, ingredient, step, amount, work, neededAt }];
    });
  });
}

function placeOf({ ingredient, work }: Portion): Preparation["place"] {
  const words = normaliseFood(ingredient.item).split(" ");
  const isRaw = words.some((word) => rawFoods.has(word)) && !words.includes("cooked");
  const place = work.acts.at(-1)?.place ?? null;
  return isRaw && place !== null ? "raw" : place;
}

/** The same food, and the same is done to it. */
const keyOf = ({ ingredient, work }: Portion): string =>
  JSON.stringify([normaliseFood(ingredient.item), work.acts, work.words, ingredient.optional]);

/** Portions of one food to which the same is done, put together; the amounts exactly. */
export function merged(portions: readonly Portion[]): readonly Preparation[] {
  const groups = new Map<string, Portion[]>();
  for (const portion of portions)
    groups.set(keyOf(portion), [...(groups.get(keyOf(portion)) ?? []), portion]);
  return [...groups.values()].flatMap((group): readonly Preparation[] => {
    const inNeed = group.toSorted((a, b) => a.neededAt - b.neededAt);
    const [first] = inNeed;
    if (first === undefined) return [];
    return [
      {
        food: first.ingredient.item,
        work: first.work,
        amounts: sumAmounts(inNeed.map(({ amount }) => amount)),
        portions: inNeed,
        neededAt: inNeed.reduce((soonest, { neededAt }) => earlier(soonest, neededAt), first.neededAt),
        place: placeOf(first),
        isOptional: first.ingredient.optional,
      },
    ];
  });
}

/** The steps whose own work is cutting or washing: that much is theirs to tell. */
export const stepsThatPrepare = (tasks: readonly Task[], kinds = ["cutting", "washing"]): readonly Task[] =>
  tasks.filter(({ step, batch }) => kinds.includes(workKind(step) ?? "") && (batch?.number ?? 1) === 1);

/** Mise en place: all that is still to be prepared, over all dishes, in the order in which it is best done from `now` on. */
export function miseOf(evening: Evening, sheet: RunSheet, now: Instant): readonly Preparation[] {
  const open = portionsOf(evening, sheet).filter(({ id }) => !evening.prepared.has(id));
  return inOrder(merged(open), now);
}

/** The same, ticked off: to be seen, and to be opened again. */
export const preparedOf = (evening: Evening, sheet: RunSheet): readonly Preparation[] =>
  merged(portionsOf(evening, sheet).filter(({ id }) => evening.prepared.has(id)));
