import { describe, expect, it } from "vitest";
import { decide } from "../../../core/cook/decide.ts";
import { parseOrder } from "../../../core/cook/parse.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { taskId } from "../../../core/plan/model.ts";
import { dishId } from "../../../core/recipe/model.ts";
import { countWords } from "../../../core/talk/speech.ts";
import { understand } from "../../../core/talk/understand.ts";
import { at, evening, give, kitchenAt } from "./supper.ts";
import { sayings, talk } from "./talk.ts";

const stew = dishId("lantern-stew");

/** The squash roasts and has its timer; the stew has a timer of the cook's own besides. */
const roasting = evening(
  [6, { type: "FinishTask", task: taskId("lantern-stew/halve") }],
  [7, { type: "StartTask", task: taskId("lantern-stew/roast") }],
);
const statesOf = (log: MealLog, dish: string): readonly string[] =>
  (log.session?.tasks ?? []).flatMap(({ id, dish: { id: of } }) =>
    of === dish ? [log.session?.progress.get(id)?.state ?? "waiting"] : [],
  );
const openTimers = (log: MealLog): number =>
  [...(log.session?.timers.values() ?? [])].filter(({ run }) => run.state !== "stopped").length;

describe("a whole dish left out", () => {
  it.each([
    "leave out the stew",
    "leave the stew out",
    "we go without the stew",
    "let's do without the stew",
    "drop the stew",
    "skip the whole stew",
  ])("[C157] %s", (said) => {
    expect(understand(said, kitchenAt(evening(), 1)).intent).toEqual({
      type: "LeaveOut",
      target: { by: "words", words: "stew" },
    });
  });

  it("[C157] is asked back with what goes; then its open steps are left out, its timers stopped; one undo has all back", () => {
    const { replies, log } = talk(roasting, [8, "leave out the stew"], [8, "yes"]);
    expect(replies[0]?.say).toBe(
      "Leave out the stew? Four steps and one timer go. What is on the heat comes off. Say yes.",
    );
    expect([replies[0]?.orders, replies[1]?.orders]).toEqual([[], [{ type: "LeaveOutDish", dish: stew }]]);
    expect(replies[1]?.say).toMatch(/^Left out: the stew\. Take it off the heat\. /);
    for (const { say } of replies) expect(countWords(say)).toBeLessThanOrEqual(25);
    expect(statesOf(log, stew)).toEqual(["done", "skipped", "skipped", "skipped", "skipped"]);
    expect([openTimers(roasting), openTimers(log)]).toEqual([1, 0]);
    const undone = talk(log, [9, "undo that"]);
    expect(undone.replies[0]?.say).toMatch(/^Undone: the stew is back\. /);
    expect([statesOf(undone.log, stew), openTimers(undone.log)]).toEqual([statesOf(roasting, stew), 1]);
  });

  it("[C157] a no leaves it, and nothing is said of heat where nothing stands on it", () => {
    const { replies, log } = talk(evening(), [1, "leave out the flatbreads"], [1, "no"]);
    expect(replies[0]?.say).toMatch(/^Leave out the flatbreads\? [A-Z][a-z]+ steps go\. Say yes\.$/);
    expect(log.events).toEqual(
      evening().events.map((event, index) => ({ ...event, command: log.events[index]?.command })),
    );
  });

  it("[C158] “skip the squash” is a step, “leave out the stew” a dish; words that are no dish's name mean the step", () => {
    expect(sayings(evening(), [1, "skip the stew"])[0]).toBe("Leave this out: halve the squash?");
    expect(sayings(evening(), [1, "leave out the red onion"])[0]).toBe("Leave this out: chop the red onion?");
    expect(sayings(evening(), [1, "leave out the stew"])[0]).toMatch(/^Leave out the stew\? Five steps go\./);
  });

  it("[C159] a dish of which nothing is left, and the last one that there is, are refused with a sentence", () => {
    const order = { type: "LeaveOutDish", dish: stew } as const;
    const log = give(evening(), 1, order);
    expect(sayings(log, [2, "leave out the stew"])).toEqual([
      "Nothing is left to do for this dish: Lantern squash stew.",
    ]);
    expect(sayings(log, [2, "leave out the flatbreads"])).toEqual([
      'Without it there is nothing to eat: Griddle flatbreads. Say "end the meal" to stop.',
    ]);
    expect(decide({ id: "x", at: at(2), order: { ...order, dish: dishId("pie") } }, log)).toMatchObject({
      ok: false,
      error: { code: "NoSuchDish" },
    });
    expect(parseOrder(order)).toEqual({ ok: true, value: order });
    expect(parseOrder({ type: "LeaveOutDish" })).toMatchObject({ ok: false });
  });
});
