import { noteKey, type Note, type NoteAnswer } from "../../core/next-time/note.ts";
import { leftBy, notesFor, remembered, type Left } from "../../core/next-time/remember.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import type { MealStore } from "../store/meal-store.ts";

/** Two years of Sundays: a dish may well be cooked once a season. */
const mostEvenings = 104;

/** What the cook has said to notes already, in their order. @param said by the notes' keys */
export const answersTo = (notes: readonly Note[], said: Readonly<Record<string, NoteAnswer>> = {}) =>
  notes.flatMap((note) => {
    const answer = said[noteKey(note)];
    return answer === undefined ? [] : [{ key: noteKey(note), answer }];
  });

/**
 * What the cook noted for the next time, from the evenings in a log. An evening that is over does not change, so each is
 * read once. One that cannot be read says nothing: it must not keep tonight's meal off the stove.
 */
export class NoteBook {
  readonly #store: MealStore;
  readonly #read = new Map<string, Left>();

  constructor(store: MealStore) {
    this.#store = store;
  }

  /** The notes for the dishes of a meal, the latest first. */
  for(meal: CookingMeal): readonly Note[] {
    const past = this.#store.past(mostEvenings);
    if (!past.ok) return [];
    return notesFor(meal, remembered(past.value.toReversed().map(({ session }) => this.#left(session))));
  }

  #left(session: string): Left {
    const known = this.#read.get(session);
    if (known !== undefined) return known;
    const events = this.#store.load(session);
    if (!events.ok) return [];
    const left = leftBy(events.value);
    this.#read.set(session, left);
    return left;
  }
}
