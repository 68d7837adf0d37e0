import { existsSync } from "node:fs";
import type { Database } from "better-sqlite3";
import { parseEvent } from "../../core/cook/parse.ts";
import { pacesFor, type PacesOf } from "../../core/pace/known-paces.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { PaceBook } from "../kitchen/pace-book.ts";
import { storeSentence, type MealStore } from "../store/meal-store.ts";
import { mealLogIn, openMealDatabase } from "../store/open-meal-database.ts";
import { SqliteMealStore } from "../store/sqlite-meal-store.ts";

/** Does something with the file of the log of a folder. One that is not there is not made: there is nothing in it to tell. */
export function withDatabase<T>(
  folder: string,
  work: (database: Database) => Result<T, string>,
): Result<T, string> {
  if (!existsSync(mealLogIn(folder)))
    return err(`There is no meal log in ${folder}. Cook a meal first, or name its folder after --data.`);
  const database = openMealDatabase(folder);
  if (!database.ok) return err(storeSentence(database.error));
  try {
    return work(database.value);
  } finally {
    database.value.close();
  }
}

/** Does something with the meal log of a folder. */
export const withLog = <T>(
  folder: string,
  work: (store: MealStore) => Result<T, string>,
): Result<T, string> => withDatabase(folder, (database) => work(new SqliteMealStore(database, parseEvent)));

/** How this cook takes the work of any meal, as the log of a folder has it; as the recipes say where there is no log. */
export function pacesIn(folder: string): Result<PacesOf, string> {
  if (!existsSync(mealLogIn(folder))) return ok(() => []);
  const known = withLog(folder, (store) => {
    const paces = new PaceBook(store).known();
    return paces.ok ? paces : err(storeSentence(paces.error));
  });
  return known.ok ? ok((meal) => pacesFor(meal, known.value)) : known;
}
