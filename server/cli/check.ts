import type { MealCheck } from "../../core/diet/check.ts";
import type { Diet } from "../../core/diet/diet.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { TableRules } from "../kitchen/table-rules.ts";
import { dietsNamed } from "../pantry/load-diets.ts";
import { loadLabelled } from "../pantry/load-pantry.ts";
import { checkJson } from "./check-json.ts";
import { checkText } from "./check-text.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { dataFolder, dataFolderHelp } from "./data-folder.ts";
import { eatenIn } from "./eaten-in.ts";
import { findMeal, type FoundMeal } from "./find-meal.ts";
import { insteadHelp, mealTaking, readInstead, type Instead } from "./instead.ts";
import { printData, printMessage } from "./print.ts";

const help = `check MEAL: hold a meal against your diet: every ingredient, how much and how often of it, and what a serving,
the meal and the day hold.

  MEAL         a meal's name, or the path of its file
  --diet DIET  hold it against this diet instead of those that hold for it: a name in diets/ beside the meals, or the
               path of a file; may be given several times
  --instead "chili powder=paprika"
               ${insteadHelp}
  --data DIR   ${dataFolderHelp}; what was eaten this week is in it
  --json       one object: meal, diets, verdict, caution, findings, ingredients, notes. Each finding has diet, rule,
               dish, ingredient (null where it is about a total), verdict, why, howMuch, because, mend and
               standIns, the foods that --instead takes for it

There are three answers: allowed, not allowed, and I cannot tell, which is no yes. The exit code is 0 where all is
allowed, else 1.

It sees what foods are made with (salt in chili powder, wheat in soy sauce) by recipes/foods/groups.txt, and reckons by
recipes/foods/foods.txt. It is no medical advice: it knows only what you have written down of what your clinician
prescribed.

Example: check welcome-supper --diet lamp-room`;

const options = {
  diet: { type: "string", multiple: true },
  instead: { type: "string", multiple: true },
  data: { type: "string" },
  json: { type: "boolean", default: false },
} as const;

interface Wanted {
  readonly meal: string;
  /** Empty: those that hold for the meal. */
  readonly diets: readonly string[];
  readonly instead: readonly Instead[];
  readonly folder: string;
  readonly json: boolean;
}

function readWanted(args: readonly string[]): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const [meal, tooMuch] = positionals;
  if (meal === undefined) return err("Name the meal to check, for instance: check welcome-supper");
  if (tooMuch !== undefined) return err(`check takes one meal; "${tooMuch}" is one word too many.`);
  const instead = readInstead(values.instead);
  if (!instead.ok) return instead;
  const { diet: diets = [], json } = values;
  return ok({ meal, diets, instead: instead.value, folder: dataFolder(values.data), json });
}

async function dietsOf(
  found: FoundMeal,
  named: readonly string[],
  rules: TableRules,
): Promise<Result<readonly Diet[], string>> {
  const diets =
    named.length > 0 ? await dietsNamed(found.folder, named, rules.larder) : rules.dietsFor(found.diets);
  if (!diets.ok || diets.value.length > 0) return diets;
  return err(
    `No diet holds for ${found.meal.name}. Write one in diets/ beside the meals, or name one with --diet.`,
  );
}

async function checked(wanted: Wanted): Promise<Result<MealCheck, string>> {
  const found = await findMeal(wanted.meal);
  if (!found.ok) return found;
  const foods = await loadLabelled(found.value.folder);
  if (!foods.ok) return foods;
  const rules = await TableRules.load(found.value.folder, foods.value);
  if (!rules.ok) return rules;
  const diets = await dietsOf(found.value, wanted.diets, rules.value);
  if (!diets.ok) return diets;
  const meal = mealTaking(rules.value.withSwaps(found.value.meal, diets.value), wanted.instead);
  if (!meal.ok) return meal;
  const eaten = eatenIn(wanted.folder);
  return eaten.ok ? ok(rules.value.check(meal.value, diets.value, eaten.value)) : eaten;
}

async function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readWanted(args);
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const check = await checked(wanted.value);
  if (!check.ok) {
    printMessage(check.error);
    return exit.refused;
  }
  printData(wanted.value.json ? JSON.stringify(checkJson(check.value)) : checkText(check.value));
  return check.value.verdict === "allowed" ? exit.right : exit.refused;
}

/** `check`: what a cook's diets say of a meal. */
export const checkCommand: CliCommand = {
  name: "check",
  summary: "hold a meal against your diet: allowed, not allowed, or cannot tell",
  help,
  run,
};
