import { taskId } from "../../core/plan/model.ts";
import type { Order } from "../../core/cook/orders.ts";
import type { Snapshot } from "../../core/sync/protocol.ts";
import { days, instant, minutes, plus, seconds, type Instant } from "../../core/units/quantity.ts";
import { ok } from "../../core/units/result.ts";
import { Kitchen } from "../../server/kitchen/kitchen.ts";
import type { MealStore } from "../../server/store/meal-store.ts";
import { chop, five, simmer, smallMeal } from "./small-meal.ts";

const season = taskId("leek-soup/season");

/** A kitchen over a log, with a clock that is turned by hand. */
export class CookedEvenings {
  readonly kitchen: Kitchen;
  #now: Instant = five;
  #ids = 0;

  constructor(store: MealStore) {
    const opened = Kitchen.open({
      store,
      meal: () => ok(smallMeal),
      now: () => this.#now,
      newId: () => `id-${(this.#ids += 1)}`,
    });
    if (!opened.ok) throw new Error(opened.error.code);
    this.kitchen = opened.value;
  }

  /** Begins the small meal on a day. @returns what every device is told */
  begin(day: number): Snapshot {
    this.#now = plus(five, days(day));
    this.#ids += 1;
    const id = `day-${day}-${this.#ids}`;
    const begun = this.kitchen.begin({ id, meal: "small-meal", servings: {}, serveAt: null });
    if (!begun.ok) throw new Error(begun.sentence);
    return this.kitchen.snapshot();
  }

  give(order: Order): void {
    const session = this.kitchen.snapshot().session ?? "none";
    this.#ids += 1;
    const given = this.kitchen.order({ session, id: `order-${this.#ids}`, at: this.#now, order });
    if (!given.ok) throw new Error(given.sentence);
  }

  pass(minutesLong: number): void {
    this.#now = instant(plus(this.#now, seconds(minutes(minutesLong))));
  }

  /** A whole evening: the leeks take so many minutes to chop, for which the recipe has five. */
  cook(day: number, chopping: number, ...orders: readonly Order[]): void {
    this.begin(day);
    for (const order of orders) this.give(order);
    this.pass(chopping);
    this.give({ type: "FinishTask", task: chop });
    this.give({ type: "StartTask", task: simmer });
    this.pass(22);
    this.give({ type: "FinishTask", task: simmer });
    this.pass(2);
    this.give({ type: "FinishTask", task: season });
    this.give({ type: "EndMeal" });
  }
}
