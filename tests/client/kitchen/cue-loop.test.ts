import { computed, signal } from "@preact/signals";
import { beforeEach, describe, expect, it } from "vitest";
import type { Clock } from "../../../client/kitchen/clock.ts";
import { sayCues } from "../../../client/kitchen/cue-loop.ts";
import type { LinkState } from "../../../client/kitchen/server-link.ts";
import type { MealStore } from "../../../client/kitchen/meal-store.ts";
import { decide, numbered } from "../../../core/cook/decide.ts";
import { appendEvents } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { runSheetOf } from "../../../core/cook/run-sheet.ts";
import { taskId } from "../../../core/plan/model.ts";
import { minutes, plus } from "../../../core/units/quantity.ts";
import { evening } from "../../core/talk/supper.ts";
import { at } from "../../core/cook/supper.ts";
import { kitchen } from "../sound/kitchen.ts";

/** The loop over a real evening, with a clock turned by hand and no server. */
function loopAt(minute: number) {
  const log = signal(evening());
  const now = signal(at(minute));
  const session = computed(() => log.value.session);
  const clock: Clock = {
    now,
    read: () => now.value,
    utcOffsetMinutes: () => 0,
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
  const loop = sayCues(clock, store, kitchen().sound, (text) => said.push(text));
  return { loop, said, give, store, turn: (by: number) => (now.value = plus(now.value, minutes(by))) };
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
