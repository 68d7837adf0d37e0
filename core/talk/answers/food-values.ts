import type { Session } from "../../cook/session.ts";
import { dayValues, type DayValues } from "../../diet/day-values.ts";
import { dietsIn, type FoodBook } from "../../diet/food-book.ts";
import { limitWords } from "../../diet/limit-words.ts";
import { endsWords, missingWords, rounded as roundedTo } from "../../food/figures.ts";
import { aHelping } from "../../food/helping.ts";
import { NUTRIENT_NAMES, nutrientWords as wordsOf, type Nutrient } from "../../food/nutrients.ts";
import { singularOf } from "../../food/names.ts";
import { mealValues, type DishValues, type MealValues, type Total } from "../../food/values.ts";
import type { Dish } from "../../recipe/model.ts";
import { listed } from "../../recipe/nearest.ts";
import { toNumber, type Rational } from "../../units/rational.ts";
import { findDish, wordsIn } from "../find.ts";
import type { IntentOf, Mention } from "../intent.ts";
import type { Kitchen } from "../model.ts";
import { nutrientName } from "../nutrient-names.ts";
import type { Outcome } from "../outcome.ts";
import { asks, told } from "../outcome.ts";
import { onTheTable } from "../on-the-table.ts";
import { capital } from "../../units/capital.ts";
import { inBreaths, inParts, oneDish, theDish } from "../speech.ts";

const UNITS = { kcal: "kilocalories", g: "grams", mg: "milligrams" } as const;

/** As finely as anybody can use it at the stove. */
const rounded = (figure: Rational, nutrient: Nutrient): string =>
  roundedTo(figure, toNumber(figure) < 10 ? wordsOf(nutrient).places : 0);

/** "58 milligrams of sodium", "at least 58 milligrams of sodium", "50 to 60 grams of fat". */
function figure(nutrient: Nutrient, total: Total, from = "at least "): string {
  const { low, high, unknown } = total;
  const [least, most] = [rounded(low, nutrient), rounded(high, nutrient)];
  const much = unknown.length > 0 ? `${from}${least}` : endsWords(least, most);
  const unit = UNITS[wordsOf(nutrient).unit];
  return nutrient === "energy" ? `${much} ${unit}` : `${much} ${unit} of ${nutrientName(nutrient)}`;
}

const missingNames = 3;

/** Who of the ingredients has no figure: what is unknown is not nought. */
const missing = (total: Total, counted: number): readonly string[] =>
  total.unknown.length === 0 ? [] : [missingWords(total, counted, missingNames)];

/** A sentence about a total, with what nobody knows of it. */
function sentences(what: string, nutrient: Nutrient, total: Total, counted: number): readonly string[] {
  if (total.unknown.length >= counted)
    return [
      `I do not know how much ${nutrientName(nutrient)} ${what} has: no ingredient has a value for it.`,
    ];
  return [`${capital(what)} has ${figure(nutrient, total)}.`, ...missing(total, counted)];
}

/** What a value of the meal in hand is asked of. */
interface Asked {
  readonly nutrient: Nutrient;
  readonly values: MealValues;
  /** The limits of the diets that hold, in words. */
  readonly limits: (scope: "serving" | "meal" | "day", dish: string | null) => readonly string[];
}

function ofHelping({ dish, aServing, counted }: DishValues, { nutrient, limits }: Asked): Outcome {
  const what = `${aHelping(dish)} of ${theDish(dish)}`;
  return inBreaths([
    ...sentences(what, nutrient, aServing[nutrient], counted.length),
    ...limits("serving", dish.name),
  ]);
}

function ofDish(values: DishValues, asked: Asked): Outcome {
  const { dish, inAll, aServing, counted } = values;
  const { nutrient, limits } = asked;
  const total = inAll[nutrient];
  if (total.unknown.length >= counted.length) return ofHelping(values, asked);
  return inBreaths([
    `All of ${theDish(dish)} has ${figure(nutrient, total)}.`,
    `${capital(aHelping(dish))} has ${figure(nutrient, aServing[nutrient])}.`,
    ...missing(total, counted.length),
    ...limits("serving", dish.name),
  ]);
}

/** Three to a sentence: more of them nobody keeps in mind. */
const inThrees = (items: readonly string[]): readonly string[] =>
  items.flatMap((_, at) => (at % 3 === 0 ? [`${capital(listed(items.slice(at, at + 3)))}.`] : []));

function ofMeal({ nutrient, values, limits }: Asked): Outcome {
  const total = values.aServing[nutrient];
  if (total.unknown.length >= values.counted)
    return inBreaths(sentences("the meal", nutrient, total, values.counted));
  const shares = values.dishes.map(
    ({ dish, aServing }) =>
      `${rounded(aServing[nutrient].low, nutrient)} from ${aHelping(dish)} of ${theDish(dish)}`,
  );
  const whole = `One serving of everything has ${figure(nutrient, total)}.`;
  return inBreaths([
    whole,
    ...(values.dishes.length === 1 ? [] : inThrees(shares)),
    ...missing(total, values.counted),
    ...limits("meal", null),
  ]);
}

function ofDay({ nutrient, values, limits }: Asked, day: DayValues): Outcome {
  const here =
    values.counted === 0
      ? []
      : [`One serving of what you cook now has ${figure(nutrient, values.aServing[nutrient])}.`];
  if (day.before === null)
    return inBreaths([
      "By the meal log nothing was eaten today before this.",
      ...here,
      ...limits("day", null),
    ]);
  const sum = day.together[nutrient];
  const together = values.counted === 0 ? [] : [`Together ${figure(nutrient, sum)}.`];
  return inBreaths([
    `By the meal log today had ${figure(nutrient, day.before[nutrient])} before this, a serving of each dish.`,
    ...here,
    ...together,
    ...missing(sum, day.counted),
    ...limits("day", null),
  ]);
}

/** The dishes that are eaten by a helping of this name: "bowl". */
const servedBy = (helping: string, dishes: readonly Dish[]): readonly Dish[] =>
  dishes.filter((dish) => singularOf(dish.yield.of.split(" ").at(-1) ?? "") === singularOf(helping));

/** Which dish is meant; asks where it may be several. `none`: no name was said and no helping tells. */
function dishMeant(intent: IntentOf<"HowMuchValue" | "AskValues">, session: Session): Dish | Outcome | null {
  const { dishes } = session.meal;
  if (intent.dish !== null) {
    const hit = findDish(intent.dish, session);
    if (hit.kind === "one") return hit.value;
    return hit.kind === "none"
      ? told(`There is no ${wordsIn(intent.dish)} in this meal. We have ${listed(dishes.map(theDish))}.`)
      : whichOf(hit.values, intent);
  }
  if (intent.type === "AskValues" || typeof intent.of === "string") return null;
  if (dishes.length === 1) return dishes[0] ?? null;
  const served = servedBy(intent.of.helping, dishes);
  return served.length > 1 ? whichOf(served, intent) : (served[0] ?? null);
}

function whichOf(dishes: readonly Dish[], intent: IntentOf<"HowMuchValue" | "AskValues">): Outcome {
  const candidates = dishes.slice(0, 5).map((dish) => {
    const meant: Mention = { by: "dish", dish: dish.id };
    return { name: oneDish(dish), intent: { ...intent, dish: meant } };
  });
  return asks({
    kind: "which",
    candidates,
    prompt: `Of ${listed(dishes.slice(0, 5).map(theDish), "or")}?`,
  });
}

const isOutcome = (thing: Dish | Outcome | null): thing is Outcome => thing !== null && "say" in thing;

/** How much of a value there is, in a helping, a dish, the meal or the day, and what the diets allow of it. */
export function howMuchValue(intent: IntentOf<"HowMuchValue">, kitchen: Kitchen, book: FoodBook): Outcome {
  const { session } = kitchen.log;
  if (intent.of === "day") return today(intent.nutrient, session, book);
  if (session === null) return told("No meal is on. Begin one, then ask me.");
  const asked = askedOf(intent.nutrient, session, book);
  const dish = dishMeant(intent, session);
  if (isOutcome(dish)) return dish;
  const values = asked.values.dishes.find((one) => one.dish.id === dish?.id);
  if (values === undefined) return ofMeal(asked);
  return typeof intent.of === "string" ? ofDish(values, asked) : ofHelping(values, asked);
}

function askedOf(nutrient: Nutrient, session: Session | null, book: FoodBook): Asked {
  const meal = onTheTable(session);
  const diets = dietsIn(book, session?.meal.id ?? null);
  return {
    nutrient,
    values: mealValues(meal, book.larder.foods),
    limits: (scope, dish) =>
      diets.ok ? limitWords(nutrient, { scope, dish }, { meal, diets: diets.value, book }) : [],
  };
}

function today(nutrient: Nutrient, session: Session | null, book: FoodBook): Outcome {
  const asked = askedOf(nutrient, session, book);
  const day = dayValues(asked.values, book);
  if (!day.ok) return told(day.error);
  if (session === null && day.value.before === null) return told("By the meal log nothing was eaten today.");
  return ofDay(asked, day.value);
}

/** Every value of a serving, of a dish or of all of them. */
export function askValues(intent: IntentOf<"AskValues">, kitchen: Kitchen, book: FoodBook): Outcome {
  const { session } = kitchen.log;
  if (session === null) return told("No meal is on. Begin one, then ask me.");
  const dish = dishMeant(intent, session);
  if (isOutcome(dish)) return dish;
  const all = mealValues(onTheTable(session), book.larder.foods);
  const of = all.dishes.find((one) => one.dish.id === dish?.id);
  const counted = of?.counted.length ?? all.counted;
  const { aServing } = of ?? all;
  const what =
    of === undefined
      ? "One serving of everything has"
      : `${capital(aHelping(of.dish))} of ${theDish(of.dish)} has`;
  const known = NUTRIENT_NAMES.filter((one) => aServing[one].unknown.length < counted);
  const isLeast = known.every((one) => aServing[one].unknown.length > 0);
  return inParts(
    isLeast ? `${what} at least:` : `${what}:`,
    known.map((one) => figure(one, aServing[one], isLeast ? "" : undefined)),
  );
}

/** Where the figures of the meal in hand come from. */
export function askSources(kitchen: Kitchen, book: FoodBook): Outcome {
  const { dishes } = mealValues(onTheTable(kitchen.log.session), book.larder.foods);
  const labels = dishes.flatMap(({ counted }) =>
    counted.flatMap(({ ingredient, food }) => ((food?.label ?? null) === null ? [] : [ingredient.item])),
  );
  return inBreaths([
    "The figures are averages for raw foods from the tables of the US Department of Agriculture, release 28.",
    ...(labels.length === 0 ? [] : [`From labels of your own: ${listed([...new Set(labels)])}.`]),
    "Your food differs, and cooking changes it. The screen names each number.",
    "Who eats by a clinician's orders asks the clinician.",
  ]);
}
