import { deeds } from "./deeds.ts";
import { pluralOf, singularOf } from "../food/names.ts";
import type { Session } from "../cook/session.ts";
import type { CookingMeal, Dish } from "../recipe/model.ts";
import { numberWords } from "../units/number-words.ts";
import { nameWords } from "./utterance.ts";
import { workNouns, workVerbs } from "./work-words.ts";

/** The slots that hold names, as they can be said in one meal. */
export type NameSlot =
  | "dish"
  | "target"
  | "timer"
  | "food"
  | "name"
  | "stand"
  | "way"
  | "work"
  | "working"
  | "deed"
  | "note"
  | "pick"
  | "left";

/** What can be said in each name slot; each name in words without articles. */
export type NameBook = { readonly [S in NameSlot]: readonly string[] };

/** "the first", "the second": which of the candidates on offer. */
export const ordinals = ["first", "second", "third", "fourth", "fifth"] as const;

/** A name in words, and with its last word in the other number: "onion" for "onions". */
export function withNumbers(name: string): readonly string[] {
  const words = nameWords(name);
  const last = words.at(-1);
  if (last === undefined) return [];
  const head = words.slice(0, -1);
  return [...new Set([last, singularOf(last), pluralOf(last)])].map((form) => [...head, form].join(" "));
}

const ENDS_OBJECT: ReadonlySet<string> = new Set([
  "in",
  "on",
  "with",
  "for",
  "into",
  "over",
  "from",
  "and",
  "until",
  "to",
  "at",
  "under",
  "through",
]);

/** What a step is about: "roast the squash in halves" is about the squash. Empty where the title has no object. */
export function objectOf(title: string): string {
  const words = title.toLowerCase().split(/\s+/);
  const after = words.indexOf("the") >= 0 ? words.indexOf("the") + 1 : 1;
  const rest = words.slice(after);
  const end = rest.findIndex((word) => ENDS_OBJECT.has(word));
  return nameWords((end < 0 ? rest : rest.slice(0, end)).join(" ")).join(" ");
}

/** "roast the squash" as what is being done, to compare with: "roasting squash". */
export const doing = (title: string): string => nameWords(inProgress(title)).join(" ");

/** The same with its articles, for saying: "roasting the squash". */
export function inProgress(title: string): string {
  const [verb, ...rest] = title.split(" ");
  if (verb === undefined) return "";
  const stem = /[^aeiou]e$/.test(verb) ? verb.slice(0, -1) : verb;
  const doubled = /^[^aeiou]*[aeiou][bdgmnprt]$/.test(verb) ? `${stem}${stem.at(-1) ?? ""}` : stem;
  return [`${doubled}ing`, ...rest].join(" ");
}

/** All names of a dish: its own, its others, and its last word where no other dish ends in it. */
export function dishNames(dish: Dish, meal: CookingMeal): readonly string[] {
  const own = [dish.name, ...dish.says].flatMap(withNumbers);
  const last = nameWords(dish.name).at(-1) ?? "";
  const rivals = meal.dishes.filter((other) => nameWords(other.name).includes(last));
  return [...new Set(rivals.length === 1 && last.length > 2 ? [...own, ...withNumbers(last)] : own)];
}

/** All names of a food: whole, and by its last word ("lentils" for "red lentils"). */
export function foodNames(item: string): readonly string[] {
  const words = nameWords(item);
  const last = words.at(-1);
  const short = words.length > 1 && last !== undefined && last.length > 2 ? withNumbers(last) : [];
  return [...new Set([...withNumbers(item), ...short])];
}

/** What a step can be called: its title, what it is about ("red onion"), and the last word of that ("onion"). */
export function titleNames(title: string): readonly string[] {
  const object = objectOf(title).split(" ");
  const last = object.length > 1 ? (object.at(-1) ?? "") : "";
  const about = [object.join(" "), last].filter((name) => name.length > 2).flatMap(withNumbers);
  return [...new Set([nameWords(title).join(" "), ...about])];
}

/** Asked about in any meal; listened for only where the recipes leave a choice. */
const usualWays = ["oven", "pan"];

/** "In a hot pan" is named by what it is done in: "hot pan", "pan". */
export function wayNames(name: string): readonly string[] {
  const words = nameWords(name).slice(1);
  return [...new Set([words.join(" "), words.at(-1) ?? ""])];
}

/** Those that stay the same all evening. */
type MealNames = Omit<NameBook, "timer" | "pick" | "left" | "deed" | "work" | "working" | "note">;

/** Notes that the ear listens for; typed, any words will do. */
const usualNotes = [
  "cook it longer",
  "cook it less",
  "start earlier",
  "more heat",
  "less heat",
  "bigger pot",
  "bigger batch",
  "smaller batch",
];

/** Those that are the same in any meal. */
const ofAnyMeal = { note: usualNotes, deed: deeds, work: workVerbs, working: workNouns };

function mealNames(meal: CookingMeal): MealNames {
  const dish = meal.dishes.flatMap((one) => dishNames(one, meal));
  const titles = meal.dishes.flatMap((one) => one.steps.flatMap((step) => titleNames(step.title)));
  const food = meal.dishes.flatMap((one) => one.ingredients.flatMap(({ item }) => foodNames(item)));
  const stand = meal.dishes.flatMap((one) =>
    one.ingredients.flatMap(({ swaps }) => swaps.flatMap(({ use }) => foodNames(use))),
  );
  const way = meal.dishes.flatMap((one) =>
    one.steps.flatMap(({ ways }) => ways?.all.flatMap(({ name }) => wayNames(name)) ?? []),
  );
  const target = unique([...dish, ...titles]);
  return {
    dish: unique(dish),
    target,
    food: unique(food),
    stand: unique(stand),
    way: unique([...way, ...usualWays]),
    name: target,
  };
}

const unique = (names: readonly string[]): readonly string[] =>
  [...new Set(names)].filter((name) => name !== "");

// A meal's names stay the same all evening: they are worked out once for each meal object.
const known = new WeakMap<CookingMeal, MealNames>();

const nothing: MealNames = {
  dish: [],
  target: [],
  food: [],
  stand: [],
  way: [],
  name: [],
};

/** The names that a timer answers to: its own, what its step is about, and its dish's. */
export function timerNames(name: string, dish: Dish | null, meal: CookingMeal): readonly string[] {
  return [
    ...new Set([...withNumbers(name), ...titleNames(name), ...(dish === null ? [] : dishNames(dish, meal))]),
  ];
}

/** Timers of one name are told apart by their number: "second flatbreads", "flatbreads two". */
export function numberedNames(name: string, count: number): readonly string[] {
  const said = nameWords(name).join(" ");
  if (count < 2) return [];
  return ordinals
    .slice(0, count)
    .flatMap((ordinal, index) => [
      `${ordinal} ${said}`,
      `${said} ${numberWords(index + 1)}`,
      `${said} number ${numberWords(index + 1)}`,
    ]);
}

/**
 * Everything that can be named at this moment.
 * @param candidates the names on offer in an open question
 * @param left what may be left: `leftNames`
 */
export function namesIn(
  session: Session | null,
  candidates: readonly string[],
  left: readonly string[] = [],
): NameBook {
  const pick = unique([
    ...candidates.map((name) => nameWords(name).join(" ")),
    ...(candidates.length === 0 ? [] : [...ordinals, "last"]),
  ]);
  if (session === null) return { ...nothing, ...ofAnyMeal, timer: [], pick, left };
  const { meal } = session;
  const names = known.get(meal) ?? mealNames(meal);
  known.set(meal, names);
  const timers = [...session.timers.values()];
  const timer = unique(
    timers.flatMap(({ name, dish }) => [
      ...timerNames(name, meal.dishes.find((one) => one.id === dish) ?? null, meal),
      ...numberedNames(name, timers.filter((other) => other.name === name).length),
    ]),
  );
  return { ...names, ...ofAnyMeal, timer, pick, left };
}
