import { isNutrient, NUTRIENT_NAMES, type Nutrient } from "../../core/food/nutrients.ts";
import { mealValues, type MealValues } from "../../core/food/values.ts";
import { listed } from "../../core/recipe/nearest.ts";
import { nutrientName, nutrientNamed } from "../../core/talk/nutrient-names.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { loadLabelled } from "../pantry/load-pantry.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { findMeal } from "./find-meal.ts";
import { insteadHelp, mealTaking, readInstead, type Instead } from "./instead.ts";
import { printData, printMessage } from "./print.ts";
import { partsText } from "./parts-text.ts";
import { theMeal } from "./read-meal.ts";
import { partsJson, valuesJson } from "./values-json.ts";
import { valuesText } from "./values-text.ts";

const help = `values MEAL: print what each dish holds, in all and in a serving, and the whole meal: energy, protein, fat,
carbohydrate, sodium, potassium, phosphorus and more, reckoned from the recipe.

  MEAL    a meal's name, or the path of its file
  --json  one object: meal, source, caution, counted, inAll, aServing, dishes; each dish with its ingredients, the food
          that each was taken for with its number in the source (ndb) or its label, and its grams
  --of VALUE
          only where this one value comes from: for each ingredient its food and number or label, its grams, the figure
          in 100 g and what it brings, the most first; with --json one object: meal, of, unit, source, caution, dishes
  --instead "chili powder=paprika"
          ${insteadHelp}

An ingredient that is not in the table of foods (recipes/foods/foods.txt), or whose weight nobody can tell, stays
unknown: it is named, and never reckoned as nought. What goes in to taste or may be left out is not counted.

A label of your own (recipes/labels/) goes before the table. A figure printed on it is known to its rounding only, so
both ends are kept; what it does not print stays unknown.

The other figures are those of USDA SR28, averages for raw materials. They are no medical advice: your food differs, and
who eats by a clinician's orders asks the clinician.

Examples: values welcome-supper; values welcome-supper --of sodium`;

const options = {
  json: { type: "boolean", default: false },
  of: { type: "string" },
  instead: { type: "string", multiple: true },
} as const;

interface Wanted {
  readonly meal: string;
  readonly json: boolean;
  /** null: all of them. */
  readonly of: Nutrient | null;
  readonly instead: readonly Instead[];
}

/** By its name in the table, or as a cook says it: "vitamin-c", "vitamin C", "fiber". */
function readNutrient(text: string): Result<Nutrient, string> {
  const plain = text.trim().toLowerCase();
  if (isNutrient(plain)) return ok(plain);
  const words = plain.split(/[\s-]+/);
  const said = nutrientNamed(words, 0);
  return said?.next === words.length
    ? ok(said.value)
    : err(`There is no value called "${text}"; they are ${listed(NUTRIENT_NAMES.map(nutrientName))}.`);
}

function readWanted(args: readonly string[]): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const meal = theMeal(positionals, "values", "reckon");
  const of = values.of === undefined ? ok(null) : readNutrient(values.of);
  if (!meal.ok) return meal;
  const instead = readInstead(values.instead);
  if (!instead.ok) return instead;
  return of.ok ? ok({ meal: meal.value, json: values.json, of: of.value, instead: instead.value }) : of;
}

async function reckoned({ meal: word, instead }: Wanted): Promise<Result<MealValues, string>> {
  const found = await findMeal(word);
  if (!found.ok) return found;
  const meal = mealTaking(found.value.meal, instead);
  if (!meal.ok) return meal;
  const foods = await loadLabelled(found.value.folder);
  return foods.ok ? ok(mealValues(meal.value, foods.value)) : foods;
}

async function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readWanted(args);
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const values = await reckoned(wanted.value);
  if (!values.ok) {
    printMessage(values.error);
    return exit.refused;
  }
  const { json, of } = wanted.value;
  if (json) printData(JSON.stringify(of === null ? valuesJson(values.value) : partsJson(of, values.value)));
  else printData(of === null ? valuesText(values.value) : partsText(of, values.value));
  return exit.right;
}

/** `values`: what a meal and its dishes hold, and what of it is unknown. */
export const valuesCommand: CliCommand = {
  name: "values",
  summary: "tell what a meal holds: energy, sodium, potassium and more, and what is unknown",
  help,
  run,
};
