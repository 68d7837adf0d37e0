import { beforeEach, describe, expect, it } from "vitest";
import type { Happening } from "../../core/cook/events.ts";
import { timerId, type Order } from "../../core/cook/orders.ts";
import { beginMessage, type BeginMessage } from "../../core/sync/protocol.ts";
import { instant, minutes, plus, seconds, type Instant } from "../../core/units/quantity.ts";
import { err, ok } from "../../core/units/result.ts";
import { Kitchen, type Announcement } from "../../server/kitchen/kitchen.ts";
import { MemoryMealStore } from "../../server/store/memory-meal-store.ts";
import { chop, five, simmer, smallMeal } from "./small-meal.ts";

let store: MemoryMealStore;
let now: Instant;
let ids: number;
let heard: Announcement[];

function open(): Kitchen {
  const opened = Kitchen.open({
    store,
    meal: (id) => (id === "small-meal" ? ok(smallMeal) : err(`There is no meal called ${id}.`)),
    now: () => now,
    newId: () => `id-${(ids += 1)}`,
  });
  if (!opened.ok) throw new Error(opened.error.code);
  opened.value.listen((announcement) => heard.push(announcement));
  return opened.value;
}

beforeEach(() => {
  store = new MemoryMealStore();
  now = five;
  ids = 0;
  heard = [];
});

const beginning: BeginMessage = { id: "begin-1", meal: "small-meal", servings: {}, serveAt: null };

function begun(kitchen: Kitchen): string {
  const answer = kitchen.begin(beginning);
  if (!answer.ok) throw new Error(answer.sentence);
  return answer.session;
}

const types = (kitchen: Kitchen): readonly Happening["type"][] =>
  kitchen.snapshot().events.map(({ happening }) => happening.type);

const startTimer = (minutesLong: number): Order => ({
  type: "StartTimer",
  timer: timerId("t1"),
  name: "bread",
  span: { low: minutes(minutesLong), high: minutes(minutesLong) },
  dish: null,
});

describe("beginning and ending an evening", () => {
  it("[N100] a meal begins with as many helpers as were asked for; more than two, or half of one, are no message", () => {
    const kitchen = open();
    expect(kitchen.begin({ ...beginning, helpers: 2 }).ok).toBe(true);
    expect(types(kitchen).filter((type) => type === "HelperCame")).toHaveLength(2);
    const asked = [0, 2, 3, -1, 0.5].map(
      (helpers) => beginMessage.safeParse({ ...beginning, helpers }).success,
    );
    expect(asked).toEqual([true, true, false, false, false]);
    expect(beginMessage.parse(beginning).helpers).toBe(0);
  });

  it("[N1] a meal that begins goes whole into the first event, and every device is told", () => {
    const kitchen = open();
    const session = begun(kitchen);
    expect(kitchen.cooking()).toEqual({ session, meal: "small-meal" });
    expect(kitchen.snapshot().events[0]).toEqual({
      seq: 1,
      at: five,
      command: "begin-1",
      happening: { type: "MealBegun", meal: smallMeal, serveAt: null },
    });
    expect(heard).toEqual([{ type: "snapshot", snapshot: kitchen.snapshot() }]);
  });

  it("[N2] beginning twice with one id begins one evening", () => {
    const kitchen = open();
    const session = begun(kitchen);
    expect(kitchen.begin(beginning)).toEqual({ ok: true, session });
    expect(heard).toHaveLength(1);
  });

  it("[N3] a second meal is refused while one is on the stove", () => {
    const kitchen = open();
    begun(kitchen);
    expect(kitchen.begin({ ...beginning, id: "begin-2" })).toEqual({
      ok: false,
      sentence: 'Small meal is on the stove already. End it first: say "end the meal".',
    });
  });

  it("[N3] an unknown meal and a serving time that has gone by are refused with a sentence", () => {
    const kitchen = open();
    expect(kitchen.begin({ ...beginning, meal: "feast" })).toEqual({
      ok: false,
      sentence: "There is no meal called feast.",
    });
    const past = kitchen.begin({ ...beginning, serveAt: five - 1 });
    expect(past).toEqual({ ok: false, sentence: "That time has gone by. Give me a later one." });
    expect(kitchen.snapshot()).toEqual({ session: null, events: [], serverNow: five });
  });

  it("[N4] when the meal has ended the kitchen is free, and late orders are refused", () => {
    const kitchen = open();
    const session = begun(kitchen);
    expect(kitchen.order({ session, id: "c2", at: now, order: { type: "EndMeal" } })).toMatchObject({
      ok: true,
    });
    expect(kitchen.cooking()).toBeNull();
    expect(heard.map(({ type }) => type)).toEqual(["snapshot", "events", "snapshot"]);
    expect(kitchen.snapshot().session).toBeNull();
    expect(kitchen.order({ session, id: "c3", at: now, order: startTimer(5) })).toEqual({
      ok: false,
      sentence: "This meal has ended. Choose another on the first page.",
    });
    expect(kitchen.begin({ ...beginning, id: "begin-2" })).toMatchObject({ ok: true });
  });
});

describe("orders", () => {
  it("[N5] an order is decided, written and told to every device, in this order", () => {
    const kitchen = open();
    const session = begun(kitchen);
    const before = kitchen.snapshot().events.length;
    now = plus(five, minutes(5));
    const answer = kitchen.order({ session, id: "c2", at: now, order: { type: "FinishTask", task: chop } });
    const { events } = kitchen.snapshot();
    expect(answer).toEqual({ ok: true, seq: events.length });
    expect(events[before]).toEqual({
      seq: before + 1,
      at: now,
      command: "c2",
      happening: { type: "TaskFinished", task: chop },
    });
    expect(store.load(session)).toEqual(ok(events));
    expect(heard.at(-1)).toEqual({ type: "events", appended: { session, events: events.slice(before) } });
  });

  it("[N6] the same id again gets the same answer and does nothing", () => {
    const kitchen = open();
    const session = begun(kitchen);
    const order = { session, id: "c2", at: now, order: startTimer(5) };
    const first = kitchen.order(order);
    const after = kitchen.snapshot();
    expect(kitchen.order(order)).toEqual(first);
    expect(kitchen.order({ ...order, order: { type: "EndMeal" } })).toEqual(first);
    expect(kitchen.snapshot()).toEqual(after);
  });

  it("[N7] a refused order changes nothing, and its refusal is given again", () => {
    const kitchen = open();
    const session = begun(kitchen);
    const before = types(kitchen);
    const order = {
      session,
      id: "c2",
      at: now,
      order: { type: "PauseTimer", timer: timerId("t1") },
    } as const;
    const refused = kitchen.order(order);
    expect(refused).toMatchObject({ ok: false });
    expect(types(kitchen)).toEqual(before);
    kitchen.order({ session, id: "c3", at: now, order: startTimer(5) });
    expect(kitchen.order(order)).toEqual(refused);
    expect(types(kitchen)).toEqual([...before, "TimerStarted"]);
  });

  it("[N8] a late order keeps the moment that the cook gave it", () => {
    const kitchen = open();
    const session = begun(kitchen);
    now = plus(five, minutes(3));
    kitchen.order({ session, id: "c2", at: plus(five, minutes(1)), order: startTimer(5) });
    expect(kitchen.snapshot().events.at(-1)?.at).toBe(plus(five, minutes(1)));
  });

  it.each([
    ["an hour ahead", 3600, 60],
    ["two seconds ahead", 62, 62],
    ["from before the last event", -3600, 0],
  ])("[N8] a clock that is %s is set right", (_name, givenAfter, countsAfter) => {
    const kitchen = open();
    const session = begun(kitchen);
    now = plus(five, seconds(60));
    kitchen.order({ session, id: "c2", at: plus(five, seconds(givenAfter)), order: startTimer(5) });
    expect(kitchen.snapshot().events.at(-1)?.at).toBe(plus(five, seconds(countsAfter)));
  });

  it("[N9] a tick calls what is due, once, and is not written when it does nothing", () => {
    const kitchen = open();
    const session = begun(kitchen);
    const finish = { type: "FinishTask", task: chop } as const;
    kitchen.order({ session, id: "c2", at: plus(five, minutes(5)), order: finish });
    now = plus(five, minutes(5));
    kitchen.tick();
    kitchen.order({ session, id: "c3", at: now, order: { type: "StartTask", task: simmer } });
    const before = kitchen.snapshot().events;
    now = plus(now, minutes(1));
    expect(kitchen.tick()).toEqual({ ok: true, seq: before.length });
    expect(kitchen.snapshot().events).toEqual(before);
    expect(types(kitchen)[2]).toBe("TaskCalled");
  });

  it("[N10] on a full disk the order is refused with the sentence, and the same order succeeds later", () => {
    const kitchen = open();
    const session = begun(kitchen);
    const before = kitchen.snapshot().events;
    store.failWith({ code: "DiskFull" });
    const order = { session, id: "c2", at: now, order: startTimer(5) };
    expect(kitchen.order(order)).toEqual({
      ok: false,
      sentence: "The disk is full; nothing was recorded. Make room on it, then say that again.",
    });
    expect(kitchen.snapshot().events).toEqual(before);
    expect(heard).toHaveLength(1);
    store.failWith(null);
    expect(kitchen.order(order)).toMatchObject({ ok: true });
  });

  it("[N10] a meal cannot begin on a full disk, and begins when there is room", () => {
    const kitchen = open();
    store.failWith({ code: "DiskFull" });
    expect(kitchen.begin(beginning)).toMatchObject({ ok: false });
    expect(kitchen.snapshot().session).toBeNull();
    store.failWith(null);
    expect(kitchen.begin(beginning)).toMatchObject({ ok: true });
  });

  it("[N11] a kitchen opened again on the same log goes on where it was", () => {
    const before = open();
    const session = begun(before);
    before.order({ session, id: "c2", at: now, order: startTimer(5) });
    const after = open();
    expect(after.snapshot()).toEqual(before.snapshot());
    expect(after.cooking()).toEqual({ session, meal: "small-meal" });
    const undo = after.order({ session, id: "c3", at: now, order: { type: "UndoLast" } });
    expect(undo).toMatchObject({ ok: true });
    expect(types(after).at(-1)).toBe("Undone");
  });

  it("[N11] an evening that ended is not taken up again", () => {
    const before = open();
    const session = begun(before);
    before.order({ session, id: "c2", at: instant(now), order: { type: "EndMeal" } });
    expect(open().snapshot().session).toBeNull();
  });
});
