import { spokenIngredient } from "../food/ingredient-words.ts";
import type { CookingMeal, Dish } from "../recipe/model.ts";
import { theDish } from "../talk/speech.ts";
import { spokenNumber } from "../units/number-words.ts";
import { rational } from "../units/rational.ts";
import { amountIn } from "./apply-note.ts";
import type { Note } from "./note.ts";

function timesWords(times: string): string {
  if (times === "2/1") return "twice";
  return times === "1/2" ? "half" : `${spokenNumber(rational(times))} times`;
}

function changeWords(note: Note, dish: Dish): string {
  const { change } = note;
  const food =
    "ingredient" in change ? dish.ingredients.find(({ id }) => id === change.ingredient) : undefined;
  const item = food?.item ?? ("ingredient" in change ? (change.ingredient ?? "") : "");
  switch (change.kind) {
    case "times":
      return `${timesWords(change.times)} the ${item} in ${theDish(dish)}`;
    case "amount": {
      const amount = amountIn(note, dish);
      return `${amount === null ? item : spokenIngredient(amount, item)} in ${theDish(dish)}`;
    }
    case "leave-out":
      return `${theDish(dish)} without the ${item}`;
    case "first": {
      const step = dish.steps.find(({ id }) => id === change.step);
      return step === undefined ? `${theDish(dish)} first` : `first ${step.title}`;
    }
    case "words":
      return `${change.words}, for ${theDish(dish)}`;
  }
}

/** A note in a few words: "twice the lemon juice in the soup". */
export function sayNote(note: Note, { dishes }: CookingMeal): string {
  const dish = dishes.find(({ id }) => id === note.dish);
  return dish === undefined ? "a dish that is not cooked tonight" : changeWords(note, dish);
}

/** What is asked of a note when its dish is cooked again. */
export function askNote(note: Note, meal: CookingMeal): string {
  const said = sayNote(note, meal);
  if (note.from === "used") return `Last time you took ${said}. Again?`;
  return note.change.kind === "words"
    ? `You noted for this time: ${said}. Will you?`
    : `You noted for this time: ${said}. Do that tonight?`;
}
