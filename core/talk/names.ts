import { pluralOf, singularOf } from "../food/names.ts";
import type { CookingMeal, Dish } from "../recipe/model.ts";
import { numberWords } from "../units/number-words.ts";
import { nameWords } from "./utterance.ts";

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

/** "In a hot pan" is named by what it is done in: "hot pan", "pan". */
export function wayNames(name: string): readonly string[] {
  const words = nameWords(name).slice(1);
  return [...new Set([words.join(" "), words.at(-1) ?? ""])];
}

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
