import { describe, expect, it } from "vitest";
import { callsNow, helperCalls } from "../../../core/cook/calls-now.ts";
import { cuesAt } from "../../../core/cook/cues.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { parseEvent, parseOrder } from "../../../core/cook/parse.ts";
import { planInputOf } from "../../../core/cook/run-sheet.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { spellsOf } from "../../../core/pace/spells.ts";
import type { TaskId } from "../../../core/plan/model.ts";
import { faultsOf } from "../plan/check-sheet.ts";
import { at, evening, give, outcome, sessionOf, sheetAt, supper, task } from "./supper.ts";

const comes: Order = { type: "WelcomeHelper", helper: "helper" };
const leaves: Order = { type: "ReleaseHelper", helper: "helper" };
const finish = (id: TaskId): Order => ({ type: "FinishTask", task: id });
const handed = (log: MealLog): TaskId | null => sessionOf(log).helpers[0]?.inHand?.task ?? null;
const mine = (log: MealLog): TaskId | null => sessionOf(log).focus?.task ?? null;
const stateOf = (log: MealLog, id: TaskId): string | undefined => sessionOf(log).progress.get(id)?.state;

/** Halving is the cook's, washing the helper's. */
const together = (): MealLog => evening([1, comes]);

describe("a helper", () => {
  it("[K40] gets the next step that is due as soon as they are there, and after each that they have done", () => {
    expect(mine(together())).toBe(task.halve);
    expect(handed(together())).toBe(task.wash);
    const next = give(together(), 5, finish(task.wash));
    expect(handed(next)).toBe(task.simmer);
    expect(mine(next)).toBe(task.halve);
  });

  it("[K40] is called by that name, apart from what the cook has to do", () => {
    const session = sessionOf(together());
    const [call] = helperCalls(session);
    expect(call).toMatchObject({ kind: "do", by: "helper", task: { id: task.wash } });
    const calls = callsNow(session, sheetAt(together(), 1), at(1));
    expect(calls.filter((one) => "by" in one && one.by !== "cook")).toEqual([]);
    const said = cuesAt(session, sheetAt(together(), 1), at(1)).map(({ say }) => say);
    expect(said).toContain("Helper, please. Greens: Wash the greens.");
  });

  it("[K41] may be there from the start", () => {
    const begin: Order = { type: "BeginMeal", meal: supper, serveAt: null, helpers: ["helper"] };
    const log = give(emptyLog, 0, begin);
    expect(mine(log)).toBe(task.halve);
    expect(handed(log)).toBe(task.wash);
  });

  it("[K42] who leaves puts down what was in hand: it waits again, for whoever is free", () => {
    const log = give(together(), 3, leaves);
    expect(sessionOf(log).helpers).toEqual([]);
    expect(stateOf(log, task.wash)).toBe("waiting");
    expect(mine(log)).toBe(task.halve);
    const free = give(together(), 3, finish(task.halve));
    expect(mine(free)).toBeNull();
    expect(mine(give(free, 4, leaves))).toBe(task.wash);
  });

  it("[K42] who leaves lets what runs by itself run on", () => {
    const running = give(give(together(), 5, finish(task.wash)), 6, { type: "StartTask", task: task.simmer });
    const log = give(running, 7, leaves);
    expect(stateOf(log, task.simmer)).toBe("running");
    expect(sessionOf(log).timers.size).toBe(1);
  });

  it("[K43] can be given what the cook has in hand; the cook gets something else", () => {
    const log = give(together(), 2, { type: "HandTask", task: task.halve, helper: "helper" });
    expect(handed(log)).toBe(task.halve);
    expect(mine(log)).toBe(task.wash);
    expect(stateOf(log, task.halve)).toBe("running");
  });

  it("[K43] loses to the cook what the cook chooses", () => {
    const log = give(together(), 2, { type: "ChooseTask", task: task.wash });
    expect(mine(log)).toBe(task.wash);
    expect(handed(log)).toBe(task.halve);
  });

  it("[K44] is refused what is over, what goes already, and what must wait; and who is not there is refused", () => {
    const give_ = (id: TaskId): Order => ({ type: "HandTask", task: id, helper: "helper" });
    expect(outcome(together(), 2, give_(task.wash))).toBe("AlreadyRunning");
    expect(outcome(together(), 2, give_(task.mash))).toBe("FirstFinish");
    expect(outcome(give(together(), 2, finish(task.wash)), 3, give_(task.wash))).toBe("AlreadyDone");
    expect(outcome(together(), 2, comes)).toBe("HelperThere");
    expect(outcome(evening(), 2, leaves)).toBe("NoSuchHelper");
    expect(outcome(evening(), 2, give_(task.halve))).toBe("NoSuchHelper");
  });

  it("[K45] is planned with: what both have in hand runs side by side, in each one's lane", () => {
    const log = together();
    const sheet = sheetAt(log, 2);
    expect(faultsOf(planInputOf(sessionOf(log), at(2)), sheet)).toEqual([]);
    const lanes = (id: TaskId) => sheet.entries.find((entry) => entry.task === id)?.lanes;
    expect(lanes(task.halve)).toEqual(["cook"]);
    expect(lanes(task.wash)).toEqual(["helper"]);
    expect(sheet.readyAt).toBeLessThanOrEqual(sheetAt(evening(), 2).readyAt);
    const over = give(give(log, 5, finish(task.wash)), 6, leaves);
    expect(sheetAt(over, 7).entries.find((entry) => entry.task === task.wash)?.lanes).toEqual(["helper"]);
  });

  it("[K46] is in the log: it is read back as written, a replay is exact, and undo takes it back", () => {
    const log = give(together(), 5, finish(task.wash));
    const read = log.events.map((event) => parseEvent(JSON.parse(JSON.stringify(event))));
    expect(read.every(({ ok }) => ok)).toBe(true);
    const again = read.reduce((so, one) => (one.ok ? appendEvents(so, [one.value]) : so), emptyLog);
    expect(again.session).toEqual(log.session);
    const orders: readonly Order[] = [
      comes,
      leaves,
      { type: "HandTask", task: task.halve, helper: "helper" },
    ];
    expect(orders.map((order) => parseOrder(order))).toEqual(orders.map((value) => ({ ok: true, value })));
    expect(parseOrder({ type: "WelcomeHelper", helper: "somebody" }).ok).toBe(false);
    const undone = give(together(), 2, { type: "UndoLast" });
    expect(sessionOf(undone).helpers).toEqual([]);
    expect(stateOf(undone, task.wash)).toBe("waiting");
  });

  it("[K47] who was undone leaves nothing running that nobody does", () => {
    const ticked = give(give(evening(), 1, comes, "came"), 5, { type: "Tick" });
    const undone = appendEvents(ticked, [
      {
        seq: (ticked.events.at(-1)?.seq ?? 0) + 1,
        at: at(6),
        command: "back",
        happening: { type: "Undone", undoes: "came" },
      },
    ]);
    const session = sessionOf(undone);
    const running = session.tasks.filter(({ id }) => session.progress.get(id)?.state === "running");
    expect(running.map(({ id }) => id)).toEqual([task.halve]);
  });

  it("[K48] teaches nothing of the cook's pace, and does not spoil what the cook's own step teaches", () => {
    const log = give(give(together(), 4, finish(task.wash)), 5, finish(task.halve));
    const alone = give(evening(), 5, finish(task.halve));
    expect(spellsOf(log.events)).toEqual(spellsOf(alone.events));
  });

  it("[K49] cooks a meal to its end with the cook", () => {
    let log = evening([0, comes]);
    log = give(log, 0, { type: "SetOven", oven: "oven", heat: { degrees: 365, scale: "F" } });
    for (let minute = 1; minute < 240; minute += 1) {
      const session = sessionOf(log);
      for (const { id, step } of session.tasks) {
        const progress = session.progress.get(id);
        const isHeld = [mine(log), handed(log)].includes(id);
        if (progress?.state === "running" && at(minute) >= progress.startedAt + step.time.high * 1000)
          log = give(log, minute, finish(id));
        else if (isHeld && step.hands === "off" && progress?.state === "waiting")
          log = give(log, minute, { type: "StartTask", task: id });
      }
      log = give(log, minute, { type: "Tick" });
      expect(faultsOf(planInputOf(sessionOf(log), at(minute)), sheetAt(log, minute))).toEqual([]);
    }
    expect(sessionOf(log).tasks.every(({ id }) => stateOf(log, id) === "done")).toBe(true);
  });
});
