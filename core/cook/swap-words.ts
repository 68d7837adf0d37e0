import { pluralOf, singularOf } from "../food/names.ts";
import type { Attention, Dish, Ingredient, Step } from "../recipe/model.ts";
import { capital } from "../units/capital.ts";

const numbers = (name: string): readonly string[] => [name, singularOf(name), pluralOf(name)];

const asPattern = (names: readonly string[]): string =>
  [...new Set(names)]
    .toSorted((a, b) => b.length - a.length)
    .map((name) => name.replace(/[^a-z0-9 ]/g, "\\$&"))
    .join("|");

/** The names that a dish's steps may have for an ingredient: its own, and the last word where nothing else ends in it. */
function namesFor(item: string, others: readonly string[]): readonly string[] {
  const last = item.split(" ").at(-1) ?? "";
  const isAlone = others.every((other) => numbers(last).every((form) => !other.split(" ").includes(form)));
  return [...numbers(item), ...(isAlone && last.length > 2 ? numbers(last) : [])];
}

/**
 * Puts another food's name in a text wherever that of an ingredient stands. What only begins or ends like it ("salt-free",
 * "garlic salt" of another line) keeps its name, and so does a deed: "salt the water".
 */
function renaming(dish: Dish, ingredient: Ingredient, use: string): (text: string) => string {
  const item = ingredient.item.toLowerCase();
  const others = dish.ingredients
    .filter(({ id }) => id !== ingredient.id)
    .map((one) => one.item.toLowerCase());
  const names = namesFor(item, others);
  const kept = others.filter(
    (other) => other !== item && names.some((name) => ` ${other} `.includes(` ${name} `)),
  );
  // Longer names are met first, and so a food that is kept before what is only a part of its name.
  const either = asPattern([...kept, ...names]);
  const wanted = new RegExp(`(?<![\\w-])(?:${either})(?![\\w-])(?! (?:the|it|them|each)\\b)`, "gi");
  return (text) =>
    text.replace(wanted, (found) => {
      if (kept.includes(found.toLowerCase())) return found;
      return /^[A-Z]/.test(found) ? capital(use) : use;
    });
}

/** The steps of a dish as they are told when another food is used for an ingredient. */
export function stepsNaming(dish: Dish, ingredient: Ingredient, use: string): readonly Step[] {
  const renamed = renaming(dish, ingredient, use);
  const attended = (attend: readonly Attention[]): readonly Attention[] =>
    attend.map((one) => ({ ...one, do: renamed(one.do) }));
  return dish.steps.map((step) => ({
    ...step,
    title: renamed(step.title),
    do: renamed(step.do),
    until: step.until === null ? null : renamed(step.until),
    attend: attended(step.attend),
    ways: step.ways && {
      ...step.ways,
      all: step.ways.all.map((way) => ({ ...way, do: renamed(way.do), attend: attended(way.attend) })),
    },
  }));
}
