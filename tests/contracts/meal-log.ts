import { afterEach, beforeEach, expect, it } from "vitest";
import type { Happening, MealEvent } from "../../core/cook/events.ts";
import { timerId } from "../../core/cook/orders.ts";
import { taskId } from "../../core/plan/model.ts";
import { days, instant, minutes, plus } from "../../core/units/quantity.ts";
import { ok } from "../../core/units/result.ts";
import type { Entry, MealStore, StoredSession } from "../../server/store/meal-store.ts";

/** Five in the afternoon of an invented day. */
export const five = instant(Date.UTC(2031, 4, 4, 17, 0));

export const evening: StoredSession = {
  session: "evening-1",
  begunBy: "begin-1",
  meal: "welcome-supper",
  begunAt: five,
  endedAt: null,
};

const called: Happening = { type: "TaskCalled", task: taskId("soup/chop") };
const finished: Happening = { type: "TaskFinished", task: taskId("soup/chop") };
const timer: Happening = {
  type: "TimerStarted",
  timer: timerId("t1"),
  name: "flatbreads",
  task: null,
  dish: null,
  span: { low: minutes(12), high: minutes(15) },
  ceiling: null,
  chime: 0,
};

/** A command that was carried out, with the events it produced from `seq` on. */
export function carriedOut(command: string, seq: number, ...happenings: readonly Happening[]): Entry {
  const events = happenings.map((happening, index): MealEvent => ({
    seq: seq + index,
    at: five,
    command,
    happening,
  }));
  const last = seq + happenings.length - 1;
  return { session: evening.session, command, receivedAt: five, outcome: { ok: true, seq: last }, events };
}

/** The promises of the port `MealStore`; every adapter keeps all of them. */
export function mealLogContract(open: () => MealStore): void {
  let store: MealStore;
  beforeEach(() => {
    store = open();
  });
  afterEach(() => {
    store.close();
  });
  const first = carriedOut("begin-1", 1, called);

  it("[L20] an empty log has no evening, no events and no outcomes", () => {
    expect(store.current()).toEqual(ok(null));
    expect(store.begunBy("begin-1")).toEqual(ok(null));
    expect(store.load("evening-1")).toEqual(ok([]));
    expect(store.outcomeOf("evening-1", "begin-1")).toEqual(ok(null));
  });

  it("[L21] an evening opens together with the events of its first command", () => {
    expect(store.begin(evening, first)).toEqual(ok(null));
    expect(store.current()).toEqual(ok(evening));
    expect(store.begunBy("begin-1")).toEqual(ok(evening));
    expect(store.load("evening-1")).toEqual(ok(first.events));
  });

  it("[L22] events come back in order, exactly as they went in", () => {
    store.begin(evening, first);
    const second = carriedOut("c2", 2, finished, timer);
    const third = carriedOut("c3", 4, { type: "Undone", undoes: "c2" });
    expect(store.append(second)).toEqual(ok(null));
    expect(store.append(third)).toEqual(ok(null));
    expect(store.load("evening-1")).toEqual(ok([...first.events, ...second.events, ...third.events]));
  });

  it("[L23] what a command came to is kept, carried out or refused", () => {
    store.begin(evening, first);
    store.append(carriedOut("c2", 2, finished, timer));
    const refused: Entry = {
      session: "evening-1",
      command: "c3",
      receivedAt: five,
      outcome: { ok: false, sentence: "There is no rice timer." },
      events: [],
    };
    expect(store.append(refused)).toEqual(ok(null));
    expect(store.outcomeOf("evening-1", "c2")).toEqual(ok({ ok: true, seq: 3 }));
    expect(store.outcomeOf("evening-1", "c3")).toEqual(ok(refused.outcome));
    expect(store.load("evening-1")).toMatchObject({ ok: true, value: { length: 3 } });
  });

  it("[L24] a command id is recorded once: a second time is thrown and changes nothing", () => {
    store.begin(evening, first);
    store.append(carriedOut("c2", 2, finished));
    const before = store.load("evening-1");
    expect(() => store.append(carriedOut("c2", 3, timer))).toThrow();
    expect(store.load("evening-1")).toEqual(before);
  });

  it("[L25] a gap or an overlap in the numbers is thrown, and none of the command is kept", () => {
    store.begin(evening, first);
    expect(() => store.append(carriedOut("c2", 3, finished))).toThrow(/cannot follow/);
    expect(() => store.append(carriedOut("c3", 1, finished))).toThrow(/cannot follow/);
    expect(store.load("evening-1")).toEqual(ok(first.events));
    expect(store.outcomeOf("evening-1", "c2")).toEqual(ok(null));
  });

  it("[L26] an evening that was never begun takes no events", () => {
    expect(() => store.append(first)).toThrow();
    expect(store.load("evening-1")).toEqual(ok([]));
  });

  it("[L27] MealEnded closes the evening; the next one is current then", () => {
    store.begin(evening, first);
    store.append(carriedOut("c2", 2, { type: "MealEnded" }));
    expect(store.current()).toEqual(ok(null));
    expect(store.begunBy("begin-1")).toEqual(ok({ ...evening, endedAt: five }));
    const next = { ...evening, session: "evening-2", begunBy: "begin-2" };
    store.begin(next, { ...first, session: "evening-2" });
    expect(store.current()).toEqual(ok(next));
    expect(store.load("evening-1")).toMatchObject({ ok: true, value: { length: 2 } });
  });

  it("[L52] evenings that are over are told, the latest first, and no more than were asked for", () => {
    expect(store.past(9)).toEqual(ok([]));
    const times = [five, plus(five, days(2)), plus(five, days(1)), plus(five, days(3))];
    const over = times.map((begunAt, index): StoredSession => {
      const session = `evening-${index}`;
      return { ...evening, session, begunBy: `begin-${index}`, begunAt, endedAt: index === 3 ? null : five };
    });
    for (const { endedAt, ...rest } of over) {
      const entry = { ...first, session: rest.session };
      store.begin({ ...rest, endedAt: null }, entry);
      if (endedAt !== null)
        store.append({ ...carriedOut("c2", 2, { type: "MealEnded" }), session: rest.session });
    }
    expect(store.past(9)).toEqual(ok([over[1], over[2], over[0]]));
    expect(store.past(2)).toEqual(ok([over[1], over[2]]));
  });

  it("[L53] the moment until which the cook's pace was forgotten is kept, the latest of several; no evening goes", () => {
    store.begin(evening, first);
    expect(store.paceForgottenAt()).toEqual(ok(null));
    expect(store.forgetPace(plus(five, days(1)))).toEqual(ok(null));
    expect(store.forgetPace(five)).toEqual(ok(null));
    expect(store.paceForgottenAt()).toEqual(ok(plus(five, days(1))));
    expect(store.load("evening-1")).toEqual(ok(first.events));
  });
}
