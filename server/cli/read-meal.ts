import { err, ok, type Result } from "../../core/units/result.ts";
import { readArguments } from "./command.ts";

const options = { json: { type: "boolean", default: false } } as const;

/** What a command is asked that takes one meal, and prints for people or with --json. */
export interface WantedMeal {
  readonly meal: string;
  readonly json: boolean;
}

/**
 * Reads the words after such a command.
 * @param command its name, "values"
 * @param does what it does to the meal, "reckon"
 * Error: one sentence about the word that is wrong or missing.
 */
export function readMeal(args: readonly string[], command: string, does: string): Result<WantedMeal, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const meal = theMeal(positionals, command, does);
  return meal.ok ? ok({ meal: meal.value, json: values.json }) : meal;
}

/** The one meal among the words after a command. Error: one sentence, as for `readMeal`. */
export function theMeal(words: readonly string[], command: string, does: string): Result<string, string> {
  const [meal, tooMuch] = words;
  if (meal === undefined) return err(`Name the meal to ${does}, for instance: ${command} welcome-supper`);
  if (tooMuch !== undefined) return err(`${command} takes one meal; "${tooMuch}" is one word too many.`);
  return ok(meal);
}
