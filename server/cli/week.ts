import { readFile } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import type { WantedThings } from "../../core/house/wanted.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { buyingList, type BuyingList } from "../../core/shop/buying-list.ts";
import type { HouseRead } from "../../core/shop/in-house.ts";
import { writtenList } from "../../core/shop/written-list.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { checkWeek, type WeekCheck } from "../../core/week/check-week.ts";
import { dishId } from "../../core/recipe/model.ts";
import { readWeek, type WrittenWeek } from "../../core/week/read-week.ts";
import type { Sitting, Week } from "../../core/week/week.ts";
import { MealBook } from "../kitchen/meal-book.ts";
import { TableRules } from "../kitchen/table-rules.ts";
import { toldMistake } from "../pantry/load-diets.ts";
import { loadLabelled } from "../pantry/load-pantry.ts";
import { loadPlaces } from "../pantry/load-places.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { dataFolder, dataFolderHelp } from "./data-folder.ts";
import { eatenIn } from "./eaten-in.ts";
import { fridgeFor, houseIfKnown } from "./fridge-in.ts";
import { inProgram } from "./in-program.ts";
import { printData, printMessage } from "./print.ts";
import { readHave } from "./read-have.ts";
import { weekAtStart } from "./week-at-start.ts";
import { weekJson } from "./week-json.ts";
import { wantedBesides, withWanted } from "./wanted-besides.ts";
import { weekText } from "./week-text.ts";

const help = `week WEEK: hold a week of meals against your diet and the fridge, and print one shopping list for it.

  WEEK         a week's name in recipes/weeks, or the path of its file
  --have FILE  what is in the house, a line each; it comes off the list
  --data DIR   ${dataFolderHelp}; the week is taken
               to begin today, after what the log has, with what is left in the fridge; what is
               wanted besides stands on the list
  --json       one object: week, eaters, verdict, days with their sittings, unused, fridge, shop

Each meal is checked with all that is eaten before it, so that "once a week" counts. What a meal makes beyond those who
eat is left, keeps as long as published guidance says, and must be enough and fresh where the week eats it. Nothing is
proposed: what is wrong is told. The exit code is 0 where nothing is, else 1. It is no medical advice.

Example: week tide-week --have cupboard.txt`;

const options = {
  have: { type: "string" },
  data: { type: "string" },
  json: { type: "boolean", default: false },
} as const;

interface Wanted {
  readonly week: string;
  readonly have: string | null;
  readonly folder: string;
  readonly json: boolean;
}

function readWanted(args: readonly string[]): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const [week, tooMuch] = positionals;
  if (week === undefined) return err("Name the week to check, for instance: week tide-week");
  if (tooMuch !== undefined) return err(`week takes one week; "${tooMuch}" is one word too many.`);
  return ok({ week, have: values.have ?? null, folder: dataFolder(values.data), json: values.json });
}

interface FoundWeek {
  readonly week: WrittenWeek;
  /** The folder of recipes that it is from. */
  readonly folder: string;
}

async function findWeek(word: string): Promise<Result<FoundWeek, string>> {
  const isFile = /\.ya?ml$/i.test(word);
  const path = isFile ? resolve(word) : join(inProgram("recipes"), "weeks", `${word}.yaml`);
  const text = await readFile(path, "utf8").catch(() => null);
  if (text === null)
    return err(`There is no week ${word}. Name one in recipes/weeks, or the path of its file.`);
  const { week, mistakes } = readWeek(`weeks/${basename(path)}`, text);
  const [mistake] = mistakes;
  if (week === null || mistake !== undefined)
    return err(mistake === undefined ? `${word} cannot be read.` : toldMistake(mistake));
  return ok({ week, folder: dirname(dirname(path)) });
}

/** The meals of a week looked up, with the diets that hold for each. Error: one sentence. */
function openWeek(
  { name, eaters, days }: WrittenWeek,
  book: MealBook,
  rules: TableRules,
): Result<Week, string> {
  const opened: Week["days"][number][] = [];
  for (const { day, number, sittings } of days) {
    const here: Sitting[] = [];
    for (const one of sittings) {
      if (one.kind === "leftover") {
        here.push({ ...one, dish: dishId(one.dish) });
        continue;
      }
      const meal = book.meal(one.meal, one.servings);
      if (!meal.ok) return err(`On ${day}: ${meal.error}`);
      const diets = rules.dietsFor(book.dietsOf(one.meal));
      if (!diets.ok) return diets;
      here.push({ kind: "cooked", meal: meal.value, diets: diets.value });
    }
    opened.push({ day, number, sittings: here });
  }
  return ok({ name, eaters, days: opened });
}

const cookedIn = ({ days }: Week): readonly CookingMeal[] =>
  days.flatMap(({ sittings }) => sittings.flatMap((one) => (one.kind === "cooked" ? [one.meal] : [])));

interface Checked {
  readonly check: WeekCheck;
  readonly list: BuyingList;
  readonly meals: readonly CookingMeal[];
  /** What the house wants besides. */
  readonly besides: WantedThings;
}

async function checked(wanted: Wanted, house: HouseRead): Promise<Result<Checked, string>> {
  const found = await findWeek(wanted.week);
  if (!found.ok) return found;
  const { folder } = found.value;
  const [foods, places] = [await loadLabelled(folder), await loadPlaces(inProgram("recipes"))];
  if (!foods.ok) return foods;
  if (!places.ok) return places;
  const rules = await TableRules.load(folder, foods.value);
  if (!rules.ok) return rules;
  const book = await MealBook.open(folder);
  const week = openWeek(found.value.week, book, rules.value);
  if (!week.ok) return week;
  const eaten = eatenIn(wanted.folder);
  if (!eaten.ok) return eaten;
  const meals = cookedIn(week.value);
  const known = houseIfKnown(wanted.folder);
  const fridge = fridgeFor(known, { meals, foods: foods.value, written: house.house });
  const atStart = weekAtStart(wanted.folder, known, book, rules.value);
  return ok({
    check: checkWeek(week.value, rules.value.larder, eaten.value, atStart),
    list: buyingList({ meals, foods: foods.value, places: places.value, house: house.house, fridge }),
    meals,
    besides: wantedBesides(known),
  });
}

async function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readWanted(args);
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const have = await readHave(wanted.value.have);
  const found = have.ok ? await checked(wanted.value, have.value) : have;
  if (!have.ok || !found.ok) {
    printMessage(found.ok ? "" : found.error);
    return exit.refused;
  }
  for (const { line, sentence } of have.value.mistakes)
    printMessage(`${wanted.value.have ?? ""}, line ${line}: ${sentence} Nothing was taken off for it.`);
  const { check, list, meals, besides } = found.value;
  printData(
    wanted.value.json
      ? JSON.stringify(weekJson(check, list, meals, besides))
      : weekText(check, withWanted(writtenList(list, meals), besides)),
  );
  return check.verdict === "allowed" ? exit.right : exit.refused;
}

/** `week`: what a cook's diets and fridge say of a week, and what to buy for it. */
export const weekCommand: CliCommand = {
  name: "week",
  summary: "hold a week against your diet and the fridge, with one shopping list",
  help,
  run,
};
