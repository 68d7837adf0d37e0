import type { Session } from "../../cook/session.ts";
import { checkMeal } from "../../diet/check.ts";
import type { Diet } from "../../diet/diet.ts";
import { dietsIn, type FoodBook } from "../../diet/food-book.ts";
import type { Finding, Verdict } from "../../diet/findings.ts";
import { strictest } from "../../diet/findings.ts";
import { mayEat, type AskedFood, type FoodAnswer } from "../../diet/may-eat.ts";
import { isPlural } from "../../food/names.ts";
import type { CookingMeal, Dish } from "../../recipe/model.ts";
import { listed } from "../../recipe/nearest.ts";
import { err, ok, type Result } from "../../units/result.ts";
import { asksWhich, findDish, findFood, wordsIn, type FoodLine } from "../find.ts";
import type { IntentOf } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import { dishNames } from "../names.ts";
import type { Outcome } from "../outcome.ts";
import { asksFor, told } from "../outcome.ts";
import { onTheTable } from "../on-the-table.ts";
import { capital } from "../../units/capital.ts";
import { inBreaths, sentencesOf, theDish } from "../speech.ts";

const noDiet =
  "No diet is written down, so I cannot say. Write into recipes slash diets what your clinician tells you.";

/** What an answer is found from, or one sentence that says why nobody can tell. */
interface Table {
  readonly diets: readonly Diet[];
  readonly book: FoodBook;
  readonly meal: CookingMeal;
  readonly eaten: Parameters<typeof checkMeal>[3];
}

function tableOf(session: Session | null, book: FoodBook): Result<Table, string> {
  const diets = dietsIn(book, session?.meal.id ?? null);
  if (!diets.ok) return diets;
  if (diets.value.length === 0) return err(noDiet);
  if (!book.eaten.ok) return book.eaten;
  return ok({ diets: diets.value, book, meal: onTheTable(session), eaten: book.eaten.value });
}

const check = ({ meal, diets, book, eaten }: Table) => checkMeal(meal, diets, book.larder, eaten);

const sentences = ({ why, mend }: Finding): readonly string[] =>
  [why, ...(mend === null ? [] : [mend])].flatMap(sentencesOf);

/** A caution is no matter of "more?": it comes with the yes. */
const yes = (say: string, notes: readonly string[]): string => [say, ...notes].join(" ");

const OPENING: Readonly<Record<Verdict, string>> = {
  allowed: "Yes.",
  "not allowed": "No.",
  "cannot tell": "I am not sure.",
};

/** Several rules may say the same of one thing: each sentence once. */
const once = (sentences: readonly string[]): readonly string[] => [...new Set(sentences)];

/** Whether all of the meal in hand is allowed. */
export function isItAllowed(kitchen: Kitchen, book: FoodBook): Outcome {
  const { session } = kitchen.log;
  if (session === null) return told("No meal is on. Ask me about one food, or begin a meal.");
  const table = tableOf(session, book);
  if (!table.ok) return told(table.error);
  return sayCheck(`Yes, all of it, by ${listed(table.value.diets.map(({ name }) => name))}.`, table.value);
}

function sayCheck(allowed: string, table: Table): Outcome {
  const { verdict, findings, notes } = check(table);
  return verdict === "allowed"
    ? told(yes(allowed, notes))
    : inBreaths(once([OPENING[verdict], ...findings.flatMap(sentences), ...notes]));
}

/** Of what the diets say of the whole meal, what is about one dish. */
function isDishAllowed(dish: Dish, table: Table): Outcome {
  return sayCheck(`Yes, ${theDish(dish)} is allowed.`, { ...table, meal: { ...table.meal, dishes: [dish] } });
}

const areAllowed = (item: string): string => `${item} ${isPlural(item) ? "are" : "is"} allowed`;

function say(item: string, { verdict, told: why, notes }: FoodAnswer, mends: readonly string[]): Outcome {
  if (verdict === "allowed") return inBreaths([yes(`Yes, ${areAllowed(item)}.`, notes), ...why]);
  const opening = verdict === "not allowed" ? [OPENING[verdict]] : [];
  return inBreaths(once([...opening, ...[...why, ...mends].flatMap(sentencesOf), ...notes]));
}

const mayHave = (asked: AskedFood, { diets, book, meal, eaten }: Table): FoodAnswer =>
  mayEat(asked, { diets, larder: book.larder, meal, eaten });

function ofMeal(lines: readonly FoodLine[], table: Table): Outcome {
  const [line] = lines;
  if (line === undefined) return told("There is no such food in this meal.");
  const { item } = line.ingredient;
  // The strictest of what the dishes write: one may take the beans from a can.
  const answers = lines.map(({ ingredient }) => mayHave(ingredient, table));
  const verdict = strictest(answers.map((one) => one.verdict));
  const worst = answers.find((one) => one.verdict === verdict);
  const mends = check(table).findings.flatMap((one) =>
    one.ingredient === item && one.mend !== null ? [one.mend] : [],
  );
  return say(item, worst ?? { verdict: "cannot tell", told: [], notes: [] }, mends);
}

/** Whether a food may be eaten: a dish of the meal, something in it, or any food or group of foods by its name. */
export function mayIHave(intent: IntentOf<"MayIHave">, kitchen: Kitchen, book: FoodBook): Outcome {
  const { food } = intent;
  if (food === null) return asksFor(intent, "Which food?");
  const { session } = kitchen.log;
  const table = tableOf(session, book);
  if (!table.ok) return told(table.error);
  const said = food.by === "food" ? food.item : wordsIn(food);
  if (session !== null) {
    const dish = findDish(food, session);
    const isName =
      dish.kind === "one" && (food.by === "dish" || dishNames(dish.value, session.meal).includes(said));
    const hit = findFood(food, session);
    if (isName && (hit.kind === "none" || food.by === "dish")) return isDishAllowed(dish.value, table.value);
    if (hit.kind === "one") return ofMeal(hit.value, table.value);
    if (hit.kind === "several")
      return asksWhich(
        hit.values.flatMap((lines) => {
          const item = lines[0]?.ingredient.item;
          return item === undefined
            ? []
            : [{ name: item, intent: { ...intent, food: { by: "food", item } } }];
        }),
      );
  }
  return say(said, mayHave({ item: said, preparation: null, food: null }, table.value), []);
}

/** What the diets that hold have against a food that may stand in for another; "" where they allow it, or none holds. */
export function against(item: string, kitchen: Kitchen, book: FoodBook): string {
  const table = tableOf(kitchen.log.session, book);
  if (!table.ok) return "";
  const { verdict, told: why } = mayHave({ item, preparation: null, food: null }, table.value);
  return verdict === "not allowed" ? (why[0] ?? `${capital(item)} is not allowed.`) : "";
}

/** The first that the diets do not allow in the meal in hand and that something may stand in for; null where none is known. */
export function barred(kitchen: Kitchen, book: FoodBook): Finding | null {
  const table = tableOf(kitchen.log.session, book);
  if (!table.ok) return null;
  const isMendable = ({ verdict, standIns }: Finding): boolean =>
    verdict === "not allowed" && standIns !== null;
  return check(table.value).findings.find(isMendable) ?? null;
}

/** What another ingredient changes for the diets: what is allowed now, or is not any more. */
export function changed(before: CookingMeal, now: CookingMeal, book: FoodBook): string {
  const diets = dietsIn(book, now.id);
  if (!diets.ok || diets.value.length === 0 || !book.eaten.ok) return "";
  const { eaten, larder } = { eaten: book.eaten.value, larder: book.larder };
  const [was, is] = [before, now].map((meal) => checkMeal(meal, diets.value, larder, eaten));
  if (was === undefined || is === undefined) return "";
  const fresh = is.findings.find((one) => !was.findings.some(({ why }) => why === one.why));
  if (fresh !== undefined) return fresh.why;
  if (was.findings.length === is.findings.length) return "";
  return is.verdict === "allowed" ? "All of it is allowed now." : "That is one thing less against your diet.";
}
