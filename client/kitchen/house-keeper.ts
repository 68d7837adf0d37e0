import { computed, effect, untracked } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import type { House } from "../../core/house/house.ts";
import { remindersAt } from "../../core/house/reminders.ts";
import type { Reminder } from "../../core/house/reminders.ts";
import { noDeviceList } from "../../core/shop/at-hand.ts";
import { houseTalk } from "../../core/talk/house-talk.ts";
import type { Household } from "../../core/talk/model.ts";
import { keepSaid, readSaid } from "../storage/kept-house.ts";
import type { Clock } from "./clock.ts";
import { createHouseStore } from "./house-store.ts";
import type { HouseStore } from "./house-store.ts";
import type { MealStore } from "./meal-store.ts";
import type { HouseLine } from "./server-link.ts";

/** The house on this device, and what is said of it. */
export interface HouseKeeper {
  readonly house: ReadonlySignal<House>;
  readonly waiting: HouseStore["waiting"];
  readonly give: HouseStore["give"];
  /** For answers. */
  readonly household: ReadonlySignal<Household>;
  /** What has to be said of the food of the last meal now; the screen shows it as long as it counts. */
  readonly due: ReadonlySignal<readonly Reminder[]>;
  readonly close: () => void;
}

/** What it is joined to. */
export interface HouseNeeds {
  readonly clock: Pick<Clock, "now" | "read">;
  readonly meal: Pick<MealStore, "session">;
  readonly line: HouseLine;
  /** Says a refusal of the server's. */
  readonly tell: (sentence: string) => void;
  /** Says something unasked, and only in writing where quiet was asked for. */
  readonly remark: (sentence: string) => void;
}

/** So many keys are kept of what was said: those of the last evenings. */
const mostSaid = 60;

/** Keeps the house on this device; fetched after the page stands. */
export function createHouseKeeper({ clock, meal, line, tell, remark }: HouseNeeds): HouseKeeper {
  const store = createHouseStore(clock, line, tell);
  const house = computed(() => store.log.value.house);
  const due = computed(() => remindersAt(house.value, meal.session.value, clock.now.value));
  let said = readSaid();
  // Each once on each device, also where the page is loaded again.
  const stopReminding = effect(() => {
    const fresh = due.value.filter(({ key }) => !said.includes(key));
    if (fresh.length === 0) return;
    said = [...said, ...fresh.map(({ key }) => key)].slice(-mostSaid);
    keepSaid(said);
    untracked(() => {
      for (const { say } of fresh) remark(say);
    });
  });
  return {
    house,
    waiting: store.waiting,
    give: store.give,
    household: computed(() => ({ log: store.log.value, talk: houseTalk, list: noDeviceList })),
    due,
    close: () => {
      stopReminding();
      store.close();
    },
  };
}
