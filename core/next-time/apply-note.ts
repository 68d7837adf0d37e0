import type { AmountWanted } from "../cook/amount-wanted.ts";
import type { Dish, IngredientId, Step } from "../recipe/model.ts";
import type { Measured } from "../units/amount.ts";
import { scaleAmount } from "../units/amount.ts";
import { fromNumber, div, rational } from "../units/rational.ts";
import type { Change, Note } from "./note.ts";

/** The longest sentence that fits on the plate. */
const mostLetters = 140;

/** The amount that a note asks for in a dish as it is cooked tonight; null where it asks for none, or cannot be told. */
export function amountIn({ change }: Note, dish: Dish): Measured | null {
  if (change.kind === "amount") {
    const factor = div(fromNumber(dish.yield.servings), fromNumber(change.servings));
    const scaled = scaleAmount(change.amount, factor);
    return scaled.kind === "measured" ? scaled : null;
  }
  if (change.kind !== "times") return null;
  const listed = dish.ingredients.find(({ id }) => id === change.ingredient)?.amount;
  const scaled = listed === undefined ? null : scaleAmount(listed, rational(change.times));
  return scaled?.kind === "measured" ? scaled : null;
}

/** The same as an order for another amount. */
export function amountWanted(note: Note, dish: Dish): AmountWanted | null {
  const amount = amountIn(note, dish);
  return amount === null || !("ingredient" in note.change) || note.change.ingredient === null
    ? null
    : { dish: dish.id, ingredient: note.change.ingredient, step: null, amount };
}

/** A step's sentence with a remark behind it, where both fit. */
function remarked(step: Step, remark: string): Step {
  const said = `${step.do.replace(/[.!]?$/, ".")} ${remark}`;
  return said.length > mostLetters ? step : { ...step, do: said };
}

const takes = (step: Step, id: IngredientId): boolean =>
  step.uses.some(({ ingredient }) => ingredient === id);

/** The dish with what a note changes in its words and its list; amounts are not its affair. */
export function dishNoted(dish: Dish, change: Change): Dish {
  if (change.kind === "words" && change.ingredient !== null) {
    const { ingredient, words } = change;
    const steps = dish.steps.map((step) =>
      takes(step, ingredient) ? remarked(step, `Noted: ${words}.`) : step,
    );
    return { ...dish, steps };
  }
  if (change.kind !== "leave-out") return dish;
  const food = dish.ingredients.find(({ id }) => id === change.ingredient);
  if (food === undefined) return dish;
  return {
    ...dish,
    ingredients: dish.ingredients.filter(({ id }) => id !== food.id),
    steps: dish.steps.map((step) =>
      takes(step, food.id)
        ? {
            ...remarked(step, `Leave out the ${food.item}.`),
            uses: step.uses.filter(({ ingredient }) => ingredient !== food.id),
          }
        : step,
    ),
  };
}

/** Whether a dish still has what a note speaks of. */
export function fits({ change }: Note, dish: Dish): boolean {
  if (change.kind === "first") return change.step === null || dish.steps.some(({ id }) => id === change.step);
  const { ingredient } = change;
  return ingredient === null || dish.ingredients.some(({ id }) => id === ingredient);
}
