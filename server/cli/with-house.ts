import { randomUUID } from "node:crypto";
import { existsSync } from "node:fs";
import type { House } from "../../core/house/house.ts";
import { parseHouseEvent } from "../../core/house/parse.ts";
import { instant } from "../../core/units/quantity.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { Household } from "../kitchen/household.ts";
import { holdLog } from "../store/hold-log.ts";
import { storeSentence } from "../store/meal-store.ts";
import { mealLogIn } from "../store/open-meal-database.ts";
import { SqliteHouseStore } from "../store/sqlite-house-store.ts";
import { withDatabase } from "./with-log.ts";

const withHousehold = <T>(
  folder: string,
  work: (household: Household) => Result<T, string>,
): Result<T, string> =>
  withDatabase(folder, (database) => {
    const store = new SqliteHouseStore(database, parseHouseEvent);
    const now = () => instant(Date.now());
    const household = Household.open({ store, now, newId: randomUUID });
    return household.ok ? work(household.value) : err(storeSentence(household.error));
  });

/** What the house of a folder holds, also while a server has it. Error: one sentence. */
export const houseIn = (folder: string): Result<House, string> =>
  withHousehold(folder, (household) => ok(household.house()));

/**
 * Changes the house of a folder. A server that runs has the log in memory and would not see it, so that nothing is
 * changed then; nor can one start in between. Error: one sentence.
 */
export function changeHouse<T>(
  folder: string,
  work: (household: Household) => Result<T, string>,
): Result<T, string> {
  // The lock is a file of its own, and none is to be made in a folder that was named by mistake.
  if (!existsSync(mealLogIn(folder))) return withHousehold(folder, work);
  const hold = holdLog(folder);
  if (!hold.ok)
    return err(
      hold.error.code === "InUse"
        ? `Stovecall is running with the log in ${folder}, so nothing was changed. Say it to its page, or stop it first.`
        : storeSentence(hold.error),
    );
  try {
    return withHousehold(folder, work);
  } finally {
    hold.value();
  }
}
