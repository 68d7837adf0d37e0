import { existsSync } from "node:fs";
import { instant } from "../../core/units/quantity.ts";
import { err, ok } from "../../core/units/result.ts";
import { eatenBefore, type Eaten } from "../kitchen/eaten-book.ts";
import { storeSentence } from "../store/meal-store.ts";
import { mealLogIn } from "../store/open-meal-database.ts";
import { withLog } from "./with-log.ts";

/** What was eaten in the week up to now by the log of a folder; a log that is not there has no meals in it. */
export function eatenIn(folder: string): Eaten {
  if (!existsSync(mealLogIn(folder))) return ok([]);
  return withLog(folder, (store) => {
    const eaten = eatenBefore(store, instant(Date.now()));
    return eaten.ok ? eaten : err(storeSentence(eaten.error));
  });
}
