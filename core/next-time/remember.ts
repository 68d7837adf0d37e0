import type { MealEvent } from "../cook/events.ts";
import { appendEvents, emptyLog, undoneCommands } from "../cook/fold.ts";
import type { CookingMeal, Ingredient } from "../recipe/model.ts";
import { convert } from "../units/measures.ts";
import { amountIn, fits } from "./apply-note.ts";
import type { Note } from "./note.ts";
import { noteKey } from "./note.ts";

/** What an evening leaves behind, in order: a note, or that there is none any more. */
export type Left = readonly { readonly key: string; readonly note: Note | null }[];

/** What one evening's log leaves for the next time its dishes are cooked. */
export function leftBy(events: readonly MealEvent[]): Left {
  const { session } = appendEvents(emptyLog, events);
  if (session === null) return [];
  const dropped = session.offered.flatMap(({ key, state }) =>
    state === "dropped" ? [{ key, note: null }] : [],
  );
  const undone = undoneCommands(events);
  const used = events.flatMap(({ command, happening }) => {
    if (happening.type !== "AmountChanged" || undone.has(command)) return [];
    // Where something else was used, its amounts say nothing of the recipe's own foods.
    if (session.swaps.some(({ dish: id }) => id === happening.dish)) return [];
    const dish = session.meal.dishes.find(({ id }) => id === happening.dish);
    const food = dish?.ingredients.find(({ id }) => id === happening.ingredient);
    if (dish === undefined || food?.amount.kind !== "measured") return [];
    const { amount, id: ingredient } = food;
    const change = { kind: "amount", ingredient, amount, servings: dish.yield.servings } as const;
    const note: Note = { dish: dish.id, change, from: "used" };
    return [{ key: noteKey(note), note }];
  });
  const noted = session.noted.map((note) => ({ key: noteKey(note), note }));
  return [...dropped, ...used, ...noted];
}

/** What holds after several evenings, the earliest first. */
export function remembered(evenings: readonly Left[]): readonly Note[] {
  const notes = new Map<string, Note>();
  for (const { key, note } of evenings.flat()) {
    notes.delete(key);
    if (note !== null) notes.set(key, note);
  }
  return [...notes.values()];
}

/** More are too many to be asked one by one. */
const mostNotes = 12;

function isAsWritten(note: Note, food: Ingredient | undefined, amount: ReturnType<typeof amountIn>): boolean {
  if (note.from === "asked" || amount === null || food?.amount.kind !== "measured") return false;
  const like = convert(amount, food.amount.unit);
  return like.ok && like.value.low === food.amount.low && like.value.high === food.amount.high;
}

/** The notes that a meal's dishes have, the latest first; none that its recipes have come up with by now. */
export function notesFor({ dishes }: CookingMeal, notes: readonly Note[]): readonly Note[] {
  return notes
    .filter((note) => {
      const dish = dishes.find(({ id }) => id === note.dish);
      if (dish === undefined || !fits(note, dish)) return false;
      const { change } = note;
      const food =
        "ingredient" in change ? dish.ingredients.find(({ id }) => id === change.ingredient) : undefined;
      return !isAsWritten(note, food, amountIn(note, dish));
    })
    .toReversed()
    .slice(0, mostNotes);
}
