import type { Session, Timer } from "../cook/session.ts";
import { ringOf } from "../cook/timer.ts";
import { singularOf } from "../food/names.ts";
import type { Dish, Ingredient } from "../recipe/model.ts";
import type { Instant } from "../units/quantity.ts";
import type { Intent, Mention } from "./intent.ts";
import { dishNames, foodNames, numberedNames, timerNames, withNumbers } from "./names.ts";
import type { Outcome } from "./outcome.ts";
import { asks } from "./outcome.ts";
import { nameWords } from "./utterance.ts";

/** What a mention came to. `none` keeps the words, so that the answer can repeat them. */
export type Found<T> =
  | { readonly kind: "one"; readonly value: T }
  | { readonly kind: "several"; readonly values: readonly T[] }
  | { readonly kind: "none"; readonly asked: string };

/** The outcome of a search, from its hits. */
export function found<T>(values: readonly T[], asked: string): Found<T> {
  const [only] = values;
  if (only === undefined) return { kind: "none", asked };
  return values.length === 1 ? { kind: "one", value: only } : { kind: "several", values };
}

/** The words of a mention; "" where it is by id. */
export const wordsIn = (mention: Mention): string => (mention.by === "words" ? mention.words : "");

const stems = (text: string): ReadonlySet<string> => new Set(nameWords(text).map(singularOf));

/** Whether every word that was said stands in the name, in either number: "onion" in "chop the red onions". */
export function isWithin(said: string, name: string): boolean {
  const known = stems(name);
  const asked = stems(said);
  return asked.size > 0 && [...asked].every((word) => known.has(word));
}

/** The dish that is meant. */
export function findDish(mention: Mention, session: Session): Found<Dish> {
  const { dishes } = session.meal;
  if (mention.by === "dish")
    return found(
      dishes.filter((dish) => dish.id === mention.dish),
      mention.dish,
    );
  const said = wordsIn(mention);
  const exact = dishes.filter((dish) => dishNames(dish, session.meal).includes(said));
  return found(exact.length > 0 ? exact : dishes.filter((dish) => isWithin(said, dish.name)), said);
}

/** One ingredient line of one dish. */
export interface FoodLine {
  readonly dish: Dish;
  readonly ingredient: Ingredient;
}

/** The food that is meant: all lines of one item, over all dishes. */
export function findFood(mention: Mention, session: Session): Found<readonly FoodLine[]> {
  const lines = session.meal.dishes.flatMap((dish) =>
    dish.ingredients.map((ingredient) => ({ dish, ingredient })),
  );
  const said = mention.by === "food" ? mention.item : wordsIn(mention);
  const byItem = (fits: (item: string) => boolean): readonly (readonly FoodLine[])[] => {
    const hits = lines.filter(({ ingredient }) => fits(ingredient.item));
    const items = [...new Set(hits.map(({ ingredient }) => ingredient.item))];
    return items.map((item) => hits.filter(({ ingredient }) => ingredient.item === item));
  };
  if (mention.by === "food")
    return found(
      byItem((item) => item === said),
      said,
    );
  const tries = [
    byItem((item) => withNumbers(item).includes(said)),
    byItem((item) => foodNames(item).includes(said)),
    byItem((item) => isWithin(said, item)),
  ];
  return found(tries.find((hits) => hits.length > 0) ?? [], said);
}

/**
 * The timer that is meant. Without a name it is the one that rings, or else the only one;
 * `fits` says which timers the order can be about at all.
 */
export function findTimer(
  mention: Mention | null,
  session: Session,
  now: Instant,
  fits: (timer: Timer) => boolean,
): Found<Timer> {
  const all = [...session.timers.values()];
  if (mention === null) {
    const usable = all.filter(fits);
    const ringing = usable.filter((timer) => ringOf(timer, now) !== null);
    // A ring that was answered still stands before the cook until the food is off or has more time.
    const looked = usable.filter(({ run }) => run.state === "running" && run.lookAt <= now);
    return found([ringing, looked, usable].find((some) => some.length > 0) ?? [], "");
  }
  if (mention.by === "timer")
    return found(
      all.filter((timer) => timer.id === mention.timer),
      mention.timer,
    );
  const said = wordsIn(mention);
  const tries = [
    all.filter((timer) => numberOf(timer, all).includes(said)),
    all.filter((timer) => withNumbers(timer.name).includes(said)),
    all.filter((timer) => timerNames(timer.name, dishOfTimer(timer, session), session.meal).includes(said)),
    all.filter((timer) => isWithin(said, `${timer.name} ${dishOfTimer(timer, session)?.name ?? ""}`)),
  ];
  const hits = tries.find((some) => some.length > 0) ?? [];
  const usable = hits.filter(fits);
  return found(usable.length > 0 ? usable : hits, said);
}

/** The dish that a timer was set for; null where it was set for none. */
export const dishOfTimer = (timer: Timer, session: Session): Dish | null =>
  session.meal.dishes.find((dish) => dish.id === timer.dish) ?? null;

function numberOf(timer: Timer, all: readonly Timer[]): readonly string[] {
  const namesakes = all.filter((other) => other.name === timer.name);
  const names = numberedNames(timer.name, namesakes.length);
  const at = namesakes.indexOf(timer);
  return names.slice(at * 3, at * 3 + 3);
}

/** What can be told apart aloud: a name, and what is to happen when it is chosen. */
export interface Choice {
  readonly name: string;
  readonly intent: Intent;
}

/** Nobody keeps more than this many names in mind. */
const MOST_CHOICES = 5;

/** Asks which one is meant. */
export function asksWhich(choices: readonly Choice[], lead = "Which one"): Outcome {
  const candidates = choices.slice(0, MOST_CHOICES);
  const names = candidates.map(({ name }) => name);
  const offered = `${names.slice(0, -1).join(", ")} or ${names.at(-1) ?? ""}`;
  return asks({ kind: "which", candidates, prompt: `${lead}: ${offered}?` });
}
