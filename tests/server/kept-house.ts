import { parseHouseEvent } from "../../core/house/parse.ts";
import type { HouseLog } from "../../core/house/house.ts";
import type { HouseEvent } from "../../core/house/events.ts";
import { instant } from "../../core/units/quantity.ts";
import { Household } from "../../server/kitchen/household.ts";
import { openMealDatabase } from "../../server/store/open-meal-database.ts";
import { SqliteHouseStore } from "../../server/store/sqlite-house-store.ts";

/** Does something with the household log that lies in a folder, which is made where there is none. */
function withStore<T>(folder: string, work: (store: SqliteHouseStore) => T): T {
  const opened = openMealDatabase(folder);
  if (!opened.ok) throw new Error(opened.error.code);
  try {
    return work(new SqliteHouseStore(opened.value, parseHouseEvent));
  } finally {
    opened.value.close();
  }
}

/** Writes a household log into a folder, as a server would have done. */
export const keepHouse = (folder: string, { events }: HouseLog): void =>
  withStore(folder, (store) => {
    for (const event of events) {
      const { command, at, seq } = event;
      const kept = store.append({ command, receivedAt: at, outcome: { ok: true, seq }, events: [event] });
      if (!kept.ok) throw new Error(kept.error.code);
    }
  });

/** The house of a folder wants these; what ends in "!" was bought since. */
export const wantIn = (folder: string, ...names: readonly string[]): void =>
  withStore(folder, (store) => {
    let ids = 0;
    const newId = (): string => `want-${(ids += 1)}`;
    const house = Household.open({ store, now: () => instant(1_000), newId });
    if (!house.ok) throw new Error(house.error.code);
    for (const name of names) {
      const order = (type: "WantThing" | "BuyThing") =>
        house.value.order({ id: newId(), at: 1_000, order: { type, name: name.replace("!", "") } });
      order("WantThing");
      if (name.endsWith("!")) order("BuyThing");
    }
  });

/** The household log that lies in a folder. */
export const keptEvents = (folder: string): readonly HouseEvent[] =>
  withStore(folder, (store) => {
    const events = store.load();
    if (!events.ok) throw new Error(events.error.code);
    return events.value;
  });
