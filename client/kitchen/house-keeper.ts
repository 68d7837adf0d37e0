import { computed, effect, signal, untracked } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import type { House } from "../../core/house/house.ts";
import { remindersAt } from "../../core/house/reminders.ts";
import type { Reminder } from "../../core/house/reminders.ts";
import type { HouseOrder } from "../../core/house/orders.ts";
import { noDeviceList } from "../../core/shop/at-hand.ts";
import type { ListOrder } from "../../core/shop/at-hand.ts";
import { keyOfThing } from "../../core/house/wanted.ts";
import { houseTalk } from "../../core/talk/house-talk.ts";
import type { Household } from "../../core/talk/model.ts";
import { keepSaid, readSaid } from "../storage/kept-house.ts";
import type { BuyingDesk, HandedOver } from "./buying-model.ts";
import type { Clock } from "./clock.ts";
import { createHouseStore } from "./house-store.ts";
import type { HouseStore } from "./house-store.ts";
import type { MealStore } from "./meal-store.ts";
import type { HouseLine } from "./server-link.ts";

/** The house on this device, and what is said of it. */
export interface HouseKeeper {
  readonly house: ReadonlySignal<House>;
  readonly waiting: HouseStore["waiting"];
  /** For the house, and for the buying list of this device. */
  readonly give: (orders: readonly HouseOrder[], list?: readonly ListOrder[]) => void;
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
  /** The buying list of this device. Fails where it cannot be fetched. */
  readonly buying: () => Promise<BuyingDesk>;
  /** Says a refusal of the server's. */
  readonly tell: (sentence: string) => void;
  /** Says something unasked, and only in writing where quiet was asked for. */
  readonly remark: (sentence: string) => void;
}

/** So many keys are kept of what was said: those of the last evenings. */
const mostSaid = 60;

/**
 * Fetches the buying list, and has the house keep what was written on it by hand while there was no house to tell.
 * @returns the list, and what ends this
 */
function joinList({ line, buying }: HouseNeeds, { give, log }: HouseStore) {
  const desk = signal<BuyingDesk | null>(null);
  const stopFetching = effect(() => {
    // Where it cannot be fetched, again at the next join.
    if (line.state.value !== "connecting")
      void buying().then(
        (here) => (desk.value = here),
        () => undefined,
      );
  });
  const stopHandingOver = effect(() => {
    const here = desk.value;
    if (here === null || here.kept.value === null || here.kept.value.own.length === 0) return;
    untracked(() => {
      const { wanted } = log.peek().house;
      const isNew = ({ name }: HandedOver): boolean => wanted.get(keyOfThing(name))?.boughtAt !== null;
      give(here.handOver().filter(isNew).flatMap(ordersFor));
    });
  });
  return { desk, close: () => [stopFetching, stopHandingOver].forEach((stop) => stop()) };
}

const ordersFor = ({ name, isBought }: HandedOver): readonly HouseOrder[] => [
  { type: "WantThing", name },
  ...(isBought ? [{ type: "BuyThing", name } as const] : []),
];

/** Keeps the house on this device; fetched after the page stands. */
export function createHouseKeeper(needs: HouseNeeds): HouseKeeper {
  const { clock, meal, line, tell, remark } = needs;
  const store = createHouseStore(clock, line, tell);
  const list = joinList(needs, store);
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
    give: (orders, ticks = []) => {
      store.give(orders);
      list.desk.peek()?.obey(ticks);
    },
    household: computed(() => ({
      log: store.log.value,
      talk: houseTalk,
      list: list.desk.value?.device.value ?? noDeviceList,
    })),
    due,
    close: () => {
      stopReminding();
      list.close();
      store.close();
    },
  };
}
