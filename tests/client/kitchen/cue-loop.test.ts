import { batch, computed, signal } from "@preact/signals";
import { beforeEach, describe, expect, it } from "vitest";
import type { Clock, Sleep } from "../../../client/kitchen/clock.ts";
import { sayCues } from "../../../client/kitchen/cue-loop.ts";
import type { LinkState } from "../../../client/kitchen/server-link.ts";
import type { MealStore } from "../../../client/kitchen/meal-store.ts";
import { decide, numbered } from "../../../core/cook/decide.ts";
import { appendEvents } from "../../../core/cook/fold.ts";
import { timerId } from "../../../core/cook/orders.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import { taskId } from "../../../core/plan/model.ts";
import { sayAfterSleep } from "../../../core/talk/after-sleep.ts";
import { minutes, plus } from "../../../core/units/quantity.ts";
import { evening } from "../../core/talk/supper.ts";
import { at } from "../../core/cook/supper.ts";
import { kitchen } from "../sound/kitchen.ts";

/**
 * The loop over a real evening, with a clock turned by hand and no server.
 * @param tellsOfSleep false: what speaks of a sleep has not been fetched
 */
function loopAt(minute: number, tellsOfSleep = true) {
  const log = signal(evening());
  const now = signal(at(minute));
  const slept = signal<Sleep | null>(null);
  const session = computed(() => log.value.session);
  const clock: Clock = {
    now,
    read: () => now.value,
    utcOffsetMinutes: () => 0,
    slept,
    onDevice: (at) => at,
    follow: () => undefined,
    close: () => undefined,
  };
  const give = (orders: readonly Order[]): void => {
    for (const order of orders) {
      const command = { id: `c${log.value.events.length}`, at: now.value, order };
      const decision = decide(command, log.value);
      if (decision.ok) log.value = appendEvents(log.value, numbered(command, log.value, decision.value));
    }
  };
  const store: MealStore = {
    link: signal<LinkState>("joined"),
    isLoaded: signal(true),
    log,
    session,
    sheet: computed(() => (session.value === null ? null : runSheetOf(session.value, now.value))),
    waiting: signal(0),
    give,
    begin: () => Promise.resolve(null),
    pantry: () => Promise.reject(new Error("no pantry here")),
    close: () => undefined,
  };
  const said: string[] = [];
  const onCue = (text: string): void => void said.push(text);
  const loop = sayCues(clock, store, kitchen().sound, onCue, (asleep, evening, sheet, moment) => {
    const text = tellsOfSleep ? sayAfterSleep(asleep, evening, sheet, { ...clock, now: moment }) : null;
    if (text !== null) said.push(text);
    return text !== null;
  });
  const turn = (by: number) => (now.value = plus(now.value, minutes(by)));
  const sleepFor = (by: number) =>
    batch(() => {
      const from = now.value;
      slept.value = { from, to: turn(by) };
    });
  return { loop, said, give, store, turn, sleepFor };
}

describe("the caller unasked", () => {
  let night: ReturnType<typeof loopAt>;
  beforeEach(() => {
    night = loopAt(0);
  });

  it("[K19] what a deed makes due is called at once where nobody tells it", () => {
    night.give([{ type: "Tick" }]);
    const before = night.said.length;
    night.give([{ type: "FinishTask", task: taskId("lantern-stew/halve") }]);
    expect(night.said.length).toBeGreaterThan(before);
  });

  it("[K19] what the answer to a deed has told is not called as well", () => {
    night.give([{ type: "Tick" }]);
    const silent = loopAt(0);
    silent.give([{ type: "Tick" }]);
    night.give([{ type: "FinishTask", task: taskId("lantern-stew/halve") }]);
    const told = night.said.slice(silent.said.length).join(" ");
    const before = silent.said.length;
    silent.loop.answer(`Good. ${told}`, () =>
      silent.give([{ type: "FinishTask", task: taskId("lantern-stew/halve") }]),
    );
    expect(silent.said.slice(before)).toEqual([]);
    silent.turn(0.5);
    expect(silent.said.slice(before)).toEqual([]);
  });
});

const bread: Order = {
  type: "StartTimer",
  timer: timerId("bread"),
  name: "flatbreads",
  span: { low: minutes(10), high: minutes(10) },
  dish: null,
};

describe("the caller after a sleep of the device", () => {
  it("[T20] waits a moment for the server, and then tells of all rings at once, and once", () => {
    const night = loopAt(0);
    night.give([bread]);
    const before = night.said.length;
    night.sleepFor(40);
    expect(night.said.slice(before)).toEqual([]);
    night.turn(0.1);
    const told = night.said.slice(before);
    expect(told[0]).toMatch(/^I was asleep for forty minutes\. Flatbreads rang about half an hour ago\. /);
    night.turn(0.5);
    night.turn(3);
    expect(night.said.slice(before).filter((text) => /flatbreads/i.test(text))).toEqual([told[0]]);
  });

  it("[T20] what was answered elsewhere meanwhile is not told", () => {
    const night = loopAt(0);
    night.give([bread]);
    const before = night.said.length;
    night.sleepFor(40);
    night.give([{ type: "AnswerRing", timer: timerId("bread") }]);
    night.turn(0.1);
    expect(night.said.slice(before).join(" ")).not.toMatch(/flatbreads/i);
  });

  it("[T20] where what speaks of a sleep is not here yet, each ring is told by itself with its age", () => {
    const night = loopAt(0, false);
    night.give([bread]);
    night.sleepFor(40);
    night.turn(0.1);
    night.turn(1);
    expect(night.said.filter((text) => /flatbreads/i.test(text))).toEqual([
      "Rang about half an hour ago. Time is up: flatbreads.",
    ]);
  });
});
