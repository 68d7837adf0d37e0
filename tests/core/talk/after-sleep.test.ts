import { describe, expect, it } from "vitest";
import { cuesAt } from "../../../core/cook/cues.ts";
import { afterSaying, nothingSaid, toSay } from "../../../core/cook/said-cues.ts";
import type { Order } from "../../../core/cook/orders.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { sayAfterSleep } from "../../../core/talk/after-sleep.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { at, evening, give, sessionOf, sheetAt, task } from "../cook/supper.ts";

const orders: readonly (readonly [number, Order])[] = [
  [5, { type: "FinishTask", task: task.wash }],
  [6, { type: "StartTask", task: task.simmer }],
  [10, { type: "FinishTask", task: task.halve }],
  [11, { type: "SetOven", oven: "oven", heat: { degrees: 365, scale: "F" } }],
  [12, { type: "StartTask", task: task.roast }],
];
/** The greens simmer until 26, the squash roasts until 67 to 77; then everything sleeps from 14 on. */
const supper = () => evening(...orders);

const said = (log: MealLog, asleep: number, minute: number): string | null =>
  sayAfterSleep(minutes(asleep), sessionOf(log), sheetAt(log, minute), {
    now: at(minute),
    utcOffsetMinutes: () => 0,
  });

describe("what is told after a sleep in mid-meal", () => {
  it("[T20] what rang meanwhile, how long ago, what runs on, and when dinner is now", () => {
    expect(said(supper(), 40, 54)).toBe(
      "I was asleep for forty minutes. Simmer the greens rang twenty-eight minutes ago. " +
        "Still going: roast the squash. The oven is on. Dinner is at six seventeen.",
    );
  });

  it("[T20] a stir that was missed, while the pot is still going", () => {
    expect(said(supper(), 6, 20)).toContain("Stir the greens was due four minutes ago. Still going: ");
  });

  it("[T20] what was answered meanwhile elsewhere is no news, nor is a short sleep in which nothing came up", () => {
    const done = give(supper(), 27, { type: "FinishTask", task: task.simmer });
    expect(said(done, 40, 54)).not.toContain("rang");
    expect(said(give(supper(), 13, { type: "CancelAllTimers" }), 3, 10)).toBeNull();
    expect(said(give(supper(), 20, { type: "EndMeal" }), 40, 54)).toBeNull();
  });

  it("[T21] a timer that ended in a sleep is due once, as its last ring, since its own moment", () => {
    const log = supper();
    const cues = (minute: number) => cuesAt(sessionOf(log), sheetAt(log, minute), at(minute));
    const before = afterSaying(nothingSaid, toSay(cues(14), nothingSaid, at(14)), at(14));
    const due = toSay(cues(90), before, at(90)).filter(({ call }) => call.kind === "ring");
    expect(due.map(({ key, dueAt }) => [key.split(" ").at(-2), dueAt])).toEqual([
      ["end", at(26)],
      ["end", at(77)],
    ]);
    const after = afterSaying(before, due, at(90));
    expect(toSay(cues(95), after, at(95)).filter(({ call }) => call.kind === "ring")).toEqual([]);
  });

  it("[T22] what may have stood warm for over two hours is the cook's to judge, and only that", () => {
    const words =
      "The greens may have stood warm for over two hours: you judge, and when in doubt, throw it out.";
    expect(said(supper(), 132, 146)).not.toContain("throw");
    expect(said(supper(), 133, 147)).toContain(words);
    expect(said(supper(), 184, 198)).toContain("The squash and the greens may have stood warm");
  });

  it("[T22] what waits for its next step has stood too, and what was told to be done in time has not", () => {
    const mashed = [
      [26, { type: "FinishTask", task: task.simmer }],
      [70, { type: "FinishTask", task: task.roast }],
    ] as const;
    const log = evening(...orders, ...mashed);
    expect(said(log, 100, 180)).toContain("The greens may have stood warm");
    expect(said(evening(...orders, ...mashed.slice(0, 1)), 100, 140)).not.toContain("throw");
  });

  it("[P122] the plan goes on from now: what runs stays where it began, what should have begun moves to now", () => {
    const log = supper();
    const sheet = sheetAt(log, 54);
    const entry = (id: string) => sheet.entries.find((one) => one.task === id);
    expect(entry(task.roast)?.start).toBe(at(12));
    expect(entry(task.dress)?.start).toBeGreaterThanOrEqual(at(54));
    expect(sheet.readyAt).toBeGreaterThan(at(54));
  });
});
