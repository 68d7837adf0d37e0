import type { PlannedEvening } from "../../../core/plan/big-moments.ts";
import type { CalendarMark } from "../../../core/plan/calendar.ts";
import type { Entry, RunSheet } from "../../../core/plan/model.ts";
import { taskId } from "../../../core/plan/model.ts";
import { expandTasks } from "../../../core/plan/tasks.ts";
import { seconds } from "../../../core/units/quantity.ts";
import { after, at, dish, handsOff, handsOn, meal, mins, oven } from "./small-meals.ts";

/** A squash for the oven and a slaw. */
export const bakedSupper = meal([
  dish("squash", [
    handsOn("halve", mins(8)),
    handsOff("roast", mins(40), { after: [after("halve")], needs: [oven(365)] }),
  ]),
  {
    ...dish("slaw", [handsOn("shred", mins(6)), handsOff("drain", mins(10)), handsOn("dress", mins(2))]),
    cautions: ["The knife is sharp."],
  },
]);

const entry = (task: string, from: number, to: number, lanes: readonly string[]): Entry => ({
  task: taskId(task),
  start: at(from),
  look: at(to),
  end: at(to),
  lanes,
  moments: [],
  slack: seconds(0),
});

/** Its run sheet, written by hand: no planner has to be asked, and none can change what is expected here. */
export const bakedSheet: RunSheet = {
  entries: [
    entry("squash/halve", 0, 8, ["cook"]),
    entry("slaw/shred", 9, 15, ["cook"]),
    entry("squash/roast", 12, 52, ["oven"]),
    entry("slaw/drain", 15, 25, ["counter"]),
    entry("slaw/dress", 58, 60, ["cook"]),
  ],
  ovenMoves: [
    {
      oven: "oven",
      heat: { degrees: 365, scale: "F" },
      at: at(2),
      readyAt: at(12),
      for: [taskId("squash/roast")],
    },
  ],
  readyAt: at(60),
  late: seconds(0),
  broken: [],
};

/** Planned at a quarter past four for half past six. */
export const evening: PlannedEvening = {
  meal: bakedSupper,
  tasks: expandTasks(bakedSupper),
  sheet: bakedSheet,
  serveAt: at(90),
};
export const mark: CalendarMark = { stamp: at(-45), uidBase: "evening-1.stovecall" };
