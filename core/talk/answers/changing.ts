import { dishWith } from "../../cook/change-amount.ts";
import type { AmountWanted } from "../../cook/amount-wanted.ts";
import { spokenIngredient } from "../../food/ingredient-words.ts";
import type { Task } from "../../plan/model.ts";
import type { Dish } from "../../recipe/model.ts";
import type { Amount, Measured } from "../../units/amount.ts";
import { scaleAmount } from "../../units/amount.ts";
import { spokenAmount } from "../../units/amount-words.ts";
import { convert } from "../../units/measures.ts";
import { rational } from "../../units/rational.ts";
import { sumAmounts } from "../../units/sum-amounts.ts";
import type { FoodLine } from "../find.ts";
import { asksWhich, findDish } from "../find.ts";
import { currentTask, isOpen, lastOver } from "../find-task.ts";
import type { IntentOf, Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import type { Outcome, Scene } from "../outcome.ts";
import { asksFor, ordered, told } from "../outcome.ts";
import { capital } from "../../units/capital.ts";
import { inBreath, oneDish, theDish } from "../speech.ts";
import { withFood } from "./amounts.ts";

/** "I used three cloves of garlic", "twice the cumin": another amount from now on, told with the old one. */
export function changeAmount(intent: IntentOf<"ChangeAmount">, scene: Scene, kitchen: Kitchen): Outcome {
  if (intent.food === null) return asksFor(intent, "How much of what?");
  return withLine({ ...intent, food: intent.food }, "In which dish", scene, kitchen, (line) =>
    changed(line, intent, scene, kitchen),
  );
}

/**
 * Finds the food, and the dish that takes it, and goes on with them; asks which one, or says what there is.
 * @param which the question where several dishes take it: "In which dish"
 */
export function withLine(
  intent: IntentOf<"ChangeAmount" | "HaveOnly"> & { readonly food: Mention },
  which: string,
  scene: Scene,
  kitchen: Kitchen,
  go: (line: FoodLine) => Outcome,
): Outcome {
  return withFood(
    intent.food,
    scene,
    kitchen,
    (item) => ({ ...intent, food: { by: "food", item } }),
    (lines) => {
      const meant = linesMeant(lines, intent.dish, scene, kitchen);
      const [line] = meant;
      if (line === undefined)
        return told(
          `That does not go in there. It goes into ${lines.map(({ dish }) => theDish(dish)).join(" and ")}.`,
        );
      return meant.length > 1 ? asksWhichDish(meant, intent, which) : go(line);
    },
  );
}

function asksWhichDish(
  lines: readonly FoodLine[],
  intent: IntentOf<"ChangeAmount" | "HaveOnly">,
  which: string,
): Outcome {
  return asksWhich(
    lines.map(({ dish, ingredient }) => ({
      name: oneDish(dish),
      intent: { ...intent, food: { by: "food", item: ingredient.item }, dish: { by: "dish", dish: dish.id } },
    })),
    which,
  );
}

/** The dish that was named; else the one in hand, where it takes the food; else all that take it. */
export function linesMeant(
  lines: readonly FoodLine[],
  dish: Mention | null,
  scene: Scene,
  kitchen: Kitchen,
): readonly FoodLine[] {
  if (dish !== null) {
    const hit = findDish(dish, scene.session);
    const dishes: readonly Dish[] =
      hit.kind === "one" ? [hit.value] : hit.kind === "several" ? hit.values : [];
    return lines.filter((line) => dishes.some(({ id }) => id === line.dish.id));
  }
  const task = stepMeant(lines, scene, kitchen);
  const inHand = lines.filter((line) => line.dish.id === task?.dish.id);
  return inHand.length > 0 ? inHand : lines;
}

/** The step in hand, or else the last one that ended, where it takes the food. */
function stepMeant(lines: readonly FoodLine[], scene: Scene, kitchen: Kitchen): Task | null {
  const takes = ({ dish, step }: Task): boolean =>
    lines.some(
      (line) =>
        line.dish.id === dish.id && step.uses.some(({ ingredient }) => ingredient === line.ingredient.id),
    );
  const current = currentTask(scene, kitchen);
  const [last] = lastOver(scene.session.tasks, scene);
  return [current, last ?? null].find((task) => task !== null && takes(task)) ?? null;
}

/** What the cook says to have used is what went in at the step; what is wanted is meant in all. */
function wantedOf(
  { dish, ingredient }: FoodLine,
  { amount, times, how }: IntentOf<"ChangeAmount">,
  scene: Scene,
  kitchen: Kitchen,
): AmountWanted | null {
  const scaled = times === null ? amount : scaleAmount(ingredient.amount, rational(times));
  if (scaled?.kind !== "measured") return null;
  const whole = { dish: dish.id, ingredient: ingredient.id, step: null, amount: scaled };
  const task = how === "used" ? stepMeant([{ dish, ingredient }], scene, kitchen) : null;
  const uses = dish.steps.flatMap((step) => step.uses.filter((use) => use.ingredient === ingredient.id));
  const isOfStep =
    task !== null &&
    uses.length > 1 &&
    canAdd(
      scaled,
      uses.map((use) => use.amount),
    );
  return isOfStep ? { ...whole, step: task.step.id } : whole;
}

const canAdd = (amount: Measured, others: readonly Amount[]): boolean =>
  others.every((other) => other.kind === "measured" && convert(other, amount.unit).ok);

function changed(line: FoodLine, intent: IntentOf<"ChangeAmount">, scene: Scene, kitchen: Kitchen): Outcome {
  const wanted = wantedOf(line, intent, scene, kitchen);
  const { dish, ingredient } = line;
  if (wanted === null)
    return told(`The recipe has ${ingredient.item} to taste. Say how much, like half a teaspoon.`);
  const before =
    dish.steps.find(({ id }) => id === wanted.step)?.uses.find((use) => use.ingredient === ingredient.id)
      ?.amount ?? ingredient.amount;
  return ordered(kitchen, [{ type: "ChangeAmount", ...wanted }], (then) => {
    const where = wanted.step === null ? `in ${theDish(dish)}` : "in this step";
    const now = `${capital(spokenIngredient(wanted.amount, ingredient.item))} ${where}, instead of ${spokenAmount(before)}.`;
    return inBreath([now, ...inAll(wanted, scene), ...stillToCome(wanted, then)]);
  });
}

/** The new whole, where a step's share was told. */
function inAll(wanted: AmountWanted, scene: Scene): readonly string[] {
  if (wanted.step === null) return [];
  const whole = dishWith(scene.session, wanted)?.ingredients.find(
    ({ id }) => id === wanted.ingredient,
  )?.amount;
  return whole === undefined ? [] : [`${capital(spokenAmount(whole))} in all.`];
}

/** What of it has still to go in, where some of it is in already. */
function stillToCome({ dish, ingredient }: AmountWanted, then: Scene): readonly string[] {
  const tasks = then.session.tasks.filter(
    (task) =>
      task.dish.id === dish &&
      (task.batch?.number ?? 1) === 1 &&
      task.step.uses.some((use) => use.ingredient === ingredient),
  );
  const open = tasks.filter((task) => isOpen(task, then));
  if (open.length === 0 || open.length === tasks.length) return [];
  const rest = sumAmounts(
    open.flatMap(({ step }) =>
      step.uses.filter((use) => use.ingredient === ingredient).map(({ amount }) => amount),
    ),
  );
  return rest.length === 1 && rest[0] !== undefined
    ? [`${capital(spokenAmount(rest[0]))} still to go in.`]
    : [];
}
