import { mealValues } from "../../core/food/values.ts";
import { loadLabelled } from "../pantry/load-pantry.ts";
import { exit, type CliCommand, type ExitCode } from "./command.ts";
import { findMeal } from "./find-meal.ts";
import { printData, printMessage } from "./print.ts";
import { readMeal } from "./read-meal.ts";
import { valuesJson } from "./values-json.ts";
import { valuesText } from "./values-text.ts";

const help = `values MEAL: print what each dish holds, in all and in a serving, and the whole meal: energy, protein, fat,
carbohydrate, sodium, potassium, phosphorus and more, reckoned from the recipe.

  MEAL    a meal's name, or the path of its file
  --json  one object: meal, source, caution, counted, inAll, aServing, dishes; each dish with its ingredients, the food
          that each was taken for with its number in the source (ndb) or its label, and its grams

An ingredient that is not in the table of foods (recipes/foods/foods.txt), or whose weight nobody can tell, stays
unknown: it is named, and never reckoned as nought. What goes in to taste or may be left out is not counted.

A label of your own (recipes/labels/) goes before the table. A figure printed on it is known to its rounding only, so
both ends are kept; what it does not print stays unknown.

The other figures are those of USDA SR28, averages for raw materials. They are no medical advice: your food differs, and
who eats by a clinician's orders asks the clinician.

Example: values welcome-supper`;

async function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readMeal(args, "values", "reckon");
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const found = await findMeal(wanted.value.meal);
  const foods = found.ok ? await loadLabelled(found.value.folder) : found;
  if (!found.ok || !foods.ok) {
    printMessage(foods.ok ? "" : foods.error);
    return exit.refused;
  }
  const values = mealValues(found.value.meal, foods.value);
  printData(wanted.value.json ? JSON.stringify(valuesJson(values)) : valuesText(values));
  return exit.right;
}

/** `values`: what a meal and its dishes hold, and what of it is unknown. */
export const valuesCommand: CliCommand = {
  name: "values",
  summary: "tell what a meal holds: energy, sodium, potassium and more, and what is unknown",
  help,
  run,
};
