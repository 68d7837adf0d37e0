import { beforeEach, describe, expect, it } from "vitest";
import { timerId, type Order } from "../../core/cook/orders.ts";
import type { MealEvent } from "../../core/cook/events.ts";
import { taskId } from "../../core/plan/model.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { ringOf } from "../../core/cook/timer.ts";
import { hours, minus, minutes, plus, seconds, type Instant } from "../../core/units/quantity.ts";
import { ok } from "../../core/units/result.ts";
import { Kitchen } from "../../server/kitchen/kitchen.ts";
import { MemoryMealStore } from "../../server/store/memory-meal-store.ts";
import { chop, five, simmer, smallMeal } from "./small-meal.ts";

const season = taskId("leek-soup/season");
/** The same soup, which has to rest for ten minutes before it is seasoned. */
const rested: CookingMeal = {
  ...smallMeal,
  dishes: smallMeal.dishes.map((dish) => ({
    ...dish,
    steps: dish.steps.map((step) => ({
      ...step,
      after: step.after.map((link) => ({ ...link, atLeast: minutes(link.step === "simmer" ? 10 : 0) })),
    })),
  })),
};

let meal: CookingMeal;
let store: MemoryMealStore;
/** What the machine's clock shows. */
let wall: Instant;
let ids: number;

function open(): Kitchen {
  const opened = Kitchen.open({
    store,
    meal: () => ok(meal),
    now: () => wall,
    newId: () => `id-${(ids += 1)}`,
  });
  if (!opened.ok) throw new Error(opened.error.code);
  return opened.value;
}

beforeEach(() => {
  meal = smallMeal;
  store = new MemoryMealStore();
  wall = five;
  ids = 0;
});

function begun(kitchen: Kitchen): (at: Instant, order: Order) => void {
  const answer = kitchen.begin({ id: "begin-1", meal: "small-meal", servings: {}, serveAt: null });
  if (!answer.ok) throw new Error(answer.sentence);
  return (at, order) => {
    const done = kitchen.order({ session: answer.session, id: `c${(ids += 1)}`, at, order });
    if (!done.ok) throw new Error(done.sentence);
  };
}

const bread = timerId("bread");
const startTimer = (length: number): Order => ({
  type: "StartTimer",
  timer: bread,
  name: "bread",
  span: { low: minutes(length), high: minutes(length) },
  dish: null,
});

/** What the bread's timer does at the kitchen's own time. */
function ring(kitchen: Kitchen): ReturnType<typeof ringOf> {
  const evening = kitchen.evening();
  const timer = evening?.state.timers.get(bread);
  if (evening === null || timer === undefined) throw new Error("the bread has no timer");
  return ringOf(timer, evening.at);
}

const times = (kitchen: Kitchen): readonly Instant[] => kitchen.snapshot().events.map(({ at }) => at);
const last = (kitchen: Kitchen): MealEvent | undefined => kitchen.snapshot().events.at(-1);

describe("a clock that is set in mid-meal", () => {
  it("[N80] set back, the kitchen's time goes on from where it was, and a timer keeps what it had left", () => {
    const kitchen = open();
    const give = begun(kitchen);
    give(five, startTimer(10));
    wall = plus(five, minutes(4));
    kitchen.tick();
    wall = minus(wall, hours(1));
    kitchen.tick();
    expect(kitchen.snapshot().serverNow).toBe(plus(five, minutes(4)));
    give(plus(five, minutes(4)), { type: "FinishTask", task: chop });
    wall = plus(wall, seconds(359));
    expect(ring(kitchen)).toBeNull();
    wall = plus(wall, seconds(1));
    expect(ring(kitchen)).toEqual({ ring: "end", since: plus(five, minutes(10)), round: 0 });
    give(plus(five, minutes(10)), { type: "AnswerRing", timer: bread });
    expect(times(kitchen)).toEqual(times(kitchen).toSorted((a, b) => a - b));
    expect(last(kitchen)?.at).toBe(plus(five, minutes(10)));
  });

  it("[N80] the next meal goes by the new time", () => {
    const kitchen = open();
    const give = begun(kitchen);
    wall = minus(five, hours(1));
    give(five, { type: "EndMeal" });
    expect(kitchen.snapshot()).toEqual({ session: null, events: [], serverNow: wall });
    kitchen.begin({ id: "begin-2", meal: "small-meal", servings: {}, serveAt: null });
    expect(times(kitchen)[0]).toBe(wall);
  });

  it("[N81] a server that starts again behind the last event goes on from that event", () => {
    const before = open();
    const give = begun(before);
    wall = plus(five, minutes(4));
    give(wall, startTimer(10));
    wall = minus(five, hours(3));
    const after = open();
    expect(after.snapshot().serverNow).toBe(plus(five, minutes(4)));
    wall = plus(wall, minutes(10));
    expect(ring(after)?.since).toBe(plus(five, minutes(14)));
  });
});

describe("a machine that slept", () => {
  it("[N82] what should have rung rings, with its own moment, and what is due is called now", () => {
    const kitchen = open();
    const give = begun(kitchen);
    give(five, startTimer(10));
    kitchen.tick();
    wall = plus(five, minutes(40));
    kitchen.tick();
    expect(ring(kitchen)).toEqual({ ring: "end", since: plus(five, minutes(10)), round: 90 });
    expect(kitchen.snapshot().serverNow).toBe(wall);
    give(wall, { type: "AnswerRing", timer: bread });
    expect(ring(kitchen)).toBeNull();
  });

  it("[N82] what a device has done meanwhile comes in at its own time, before the clock acts again", () => {
    meal = rested;
    const kitchen = open();
    const give = begun(kitchen);
    give(five, { type: "FinishTask", task: chop });
    give(five, { type: "FinishTask", task: simmer });
    kitchen.tick();
    const asleep = kitchen.snapshot().events;
    wall = plus(five, minutes(40));
    kitchen.tick();
    expect(kitchen.snapshot().events).toEqual(asleep);
    give(plus(five, minutes(5)), startTimer(60));
    expect(last(kitchen)?.at).toBe(plus(five, minutes(5)));
    wall = plus(wall, seconds(9));
    kitchen.tick();
    expect(last(kitchen)?.happening.type).toBe("TimerStarted");
    wall = plus(wall, seconds(1));
    kitchen.tick();
    expect(last(kitchen)).toMatchObject({ at: wall, happening: { type: "TaskCalled", task: season } });
    wall = plus(five, minutes(65));
    expect(ring(kitchen)).toEqual({ ring: "end", since: wall, round: 0 });
  });
});
