import { randomUUID } from "node:crypto";
import { writeFile } from "node:fs/promises";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { MOST_SERVINGS, scaleDish, type Servings } from "../../core/recipe/scale.ts";
import { buyingList } from "../../core/shop/buying-list.ts";
import { savedPage } from "../../core/shop/saved-page.ts";
import { writtenList, type WrittenList } from "../../core/shop/written-list.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { loadFoods } from "../pantry/load-foods.ts";
import { loadPlaces } from "../pantry/load-places.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { dataFolder, dataFolderHelp } from "./data-folder.ts";
import { findMeal } from "./find-meal.ts";
import { fridgeFor, houseIfKnown } from "./fridge-in.ts";
import { inProgram } from "./in-program.ts";
import { insteadHelp, readInstead, takingInstead, type Instead } from "./instead.ts";
import { printData, printMessage } from "./print.ts";
import { readHave } from "./read-have.ts";
import { shopJson } from "./shop-json.ts";
import { shopText } from "./shop-text.ts";
import { wantedBesides, withWanted } from "./wanted-besides.ts";

const help = `shop MEAL …: print what to buy for a meal, or one list for several, by place in the shop.

  MEAL               a meal's name, or the path of its file
  --servings DISH=N  so many servings of a dish; as often as you like
  --instead "chili powder=paprika"
                     ${insteadHelp}
  --have FILE        what is in the house, a line for each thing: "3 onions", "half a head of garlic"; "oil" alone means
                     that there is some. A line that cannot be read is told by its number, and nothing is taken off for it
  --data DIR         ${dataFolderHelp}; what is left from
                     before is told: of these dishes it is yours to cook fewer, nothing is taken off for it. What is
                     wanted besides the meals is in it too, and stands under "also wanted"
  --page FILE        write the list as a page to be ticked; it opens on a phone, without this machine or a network
  --json             one object: meals, buy, ifYouLike, look, enough, fridge, useFirst, notNeeded, alsoWanted
                     (the names of what is wanted besides) and caution. Each line has name, food
                     (its name in the table of foods), place, buy (in words), amounts, pieces, parts, grams (without
                     peel), boughtGrams (with it), notes, for (dish, amount and item), inHouse and notReckoned (what is
                     there but could not be taken off); null is not known, never nought

What several dishes want is one line, with what each takes. Amounts are added exactly, or by weight where the table of
foods (recipes/foods/foods.txt) knows both; what it does not know stands under its own name. Things are told whole and
weights as bought, for the upper end of a range. Where things are in the shop stands in recipes/foods/places.txt.

This checks no diet and no allergy: what you may eat is for your clinician to say, and labels are yours to read.

Example: shop welcome-supper slack-water-lunch --servings lentil-soup=8 --have cupboard.txt`;

const options = {
  servings: { type: "string", multiple: true, default: [] as string[] },
  instead: { type: "string", multiple: true },
  have: { type: "string" },
  page: { type: "string" },
  data: { type: "string" },
  json: { type: "boolean", default: false },
} as const;

interface Wanted {
  readonly meals: readonly string[];
  readonly servings: Servings;
  readonly instead: readonly Instead[];
  readonly have: string | null;
  readonly page: string | null;
  readonly folder: string;
  readonly json: boolean;
}

function readServings(words: readonly string[]): Result<Servings, string> {
  const servings: Record<string, number> = {};
  for (const word of words) {
    const [, dish, count] = /^([^=]+)=(\d{1,6})$/.exec(word) ?? [];
    if (dish === undefined || Number(count) < 1 || Number(count) > MOST_SERVINGS)
      return err(
        `--servings takes a dish and a whole number from 1 to ${MOST_SERVINGS}, for instance: --servings lentil-soup=6`,
      );
    servings[dish] = Number(count);
  }
  return ok(servings);
}

function readWanted(args: readonly string[]): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  if (positionals.length === 0) return err("Name the meals to shop for, for instance: shop welcome-supper");
  const servings = readServings(values.servings);
  if (!servings.ok) return servings;
  const instead = readInstead(values.instead);
  if (!instead.ok) return instead;
  return ok({
    meals: positionals,
    servings: servings.value,
    instead: instead.value,
    have: values.have ?? null,
    page: values.page ?? null,
    folder: dataFolder(values.data),
    json: values.json,
  });
}

/** The meals with the servings that are asked for. Error: one sentence. */
async function findMeals({
  meals: words,
  servings,
  instead,
}: Wanted): Promise<Result<readonly CookingMeal[], string>> {
  const meals: CookingMeal[] = [];
  for (const word of words) {
    const found = await findMeal(word);
    if (!found.ok) return found;
    meals.push(found.value.meal);
  }
  const dishes = meals.flatMap((meal) => meal.dishes);
  const stranger = Object.keys(servings).find((id) => dishes.every((dish) => dish.id !== id));
  if (stranger !== undefined) {
    const there = [...new Set(dishes.map(({ id }) => id))].join(", ");
    return err(`There is no dish called ${stranger} in what you cook. There are: ${there}.`);
  }
  const scaled = meals.map((meal) => ({
    ...meal,
    dishes: meal.dishes.map((dish) => scaleDish(dish, servings[dish.id] ?? dish.yield.servings)),
  }));
  return takingInstead(scaled, instead);
}

async function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readWanted(args);
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const folder = inProgram("recipes");
  const [meals, have] = [await findMeals(wanted.value), await readHave(wanted.value.have)];
  const [foods, places] = [await loadFoods(folder), await loadPlaces(folder)];
  for (const part of [meals, have, foods, places]) {
    if (part.ok) continue;
    printMessage(part.error);
    return exit.refused;
  }
  if (!meals.ok || !have.ok || !foods.ok || !places.ok) return exit.refused;
  for (const { line, sentence } of have.value.mistakes)
    printMessage(`${wanted.value.have ?? ""}, line ${line}: ${sentence} Nothing was taken off for it.`);
  const house = houseIfKnown(wanted.value.folder);
  const list = buyingList({
    meals: meals.value,
    foods: foods.value,
    places: places.value,
    house: have.value.house,
    fridge: fridgeFor(house, {
      meals: meals.value,
      foods: foods.value,
      written: have.value.house,
    }),
  });
  const besides = wantedBesides(house);
  const written = withWanted(writtenList(list, meals.value), besides);
  printData(wanted.value.json ? JSON.stringify(shopJson(list, meals.value, besides)) : shopText(written));
  return writePage(wanted.value.page, written);
}

async function writePage(file: string | null, list: WrittenList): Promise<ExitCode> {
  if (file === null) return exit.right;
  const problem = await writeFile(file, savedPage(list, randomUUID())).then(
    () => null,
    () => `${file} cannot be written. Name a file in a folder that is there.`,
  );
  if (problem !== null) printMessage(problem);
  return problem === null ? exit.right : exit.refused;
}

/** `shop`: what to buy for one meal or several, and where it is in the shop. */
export const shopCommand: CliCommand = {
  name: "shop",
  summary: "tell what to buy for a meal or several, by place in the shop, less what is in the house",
  help,
  run,
};
