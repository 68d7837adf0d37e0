import { describe, expect, it } from "vitest";
import { expandTasks, momentsOf } from "../../../core/plan/tasks.ts";
import type { Task } from "../../../core/plan/model.ts";
import type { Attention, Dish } from "../../../core/recipe/model.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { after, at, burner, dish, handsOff, handsOn, meal, mins, stirEvery } from "./small-meals.ts";

const tasksOf = (steps: Dish["steps"]): readonly Task[] => expandTasks(meal([dish("patties", steps)]));
const links = (task: Task | undefined) =>
  task?.after.map((link) => [link.task, link.atLeast / 60, link.atMost === null ? null : link.atMost / 60]);
const eight = { of: 8, holds: 3, pieces: "patties" };

function attended(attend: readonly Attention[]): Task {
  const [task] = tasksOf([handsOff("simmer", mins(12), { needs: [burner], attend })]);
  if (task === undefined) throw new Error("no task");
  return task;
}

describe("tasks of a meal", () => {
  it("[P2] a step is one task, in the order of dishes and steps", () => {
    const tasks = expandTasks(
      meal([
        dish("slaw", [handsOn("shred", mins(5)), handsOn("dress", mins(2))]),
        dish("rice", [handsOff("boil", mins(20))]),
      ]),
    );
    expect(tasks.map((task) => task.id)).toEqual(["slaw/shred", "slaw/dress", "rice/boil"]);
    expect(tasks.map((task) => task.batch)).toEqual([null, null, null]);
  });

  it("[P3] a pan that takes part of it makes batches, and the last holds the remainder", () => {
    const tasks = tasksOf([handsOff("fry", mins(6), { batch: eight })]);
    expect(tasks.map((task) => [task.id, task.batch])).toEqual([
      ["patties/fry#1", { number: 1, count: 3, pieces: 3 }],
      ["patties/fry#2", { number: 2, count: 3, pieces: 3 }],
      ["patties/fry#3", { number: 3, count: 3, pieces: 2 }],
    ]);
  });

  it("[P3] what fits at once is no batch", () => {
    expect(
      tasksOf([handsOff("fry", mins(6), { batch: { of: 3, holds: 3, pieces: "patties" } })])[0]?.batch,
    ).toBeNull();
  });

  it("[P4] every batch waits for what the step waits for; whatever follows waits for the last", () => {
    const tasks = tasksOf([
      handsOn("shape", mins(5)),
      handsOff("fry", mins(6), { batch: eight, after: [after("shape", 1, 30)] }),
      handsOn("plate", mins(2), { after: [after("fry")] }),
    ]);
    expect(tasks.map(links)).toEqual([
      [],
      [["patties/shape", 1, 30]],
      [
        ["patties/shape", 1, null],
        ["patties/fry#1", 0, null],
      ],
      [
        ["patties/shape", 1, null],
        ["patties/fry#2", 0, null],
      ],
      [["patties/fry#3", 0, null]],
    ]);
  });

  it("[P5] side two follows side one batch by batch, and the next batch waits for the pan", () => {
    const tasks = tasksOf([
      handsOff("side-one", mins(12), { batch: eight }),
      handsOff("side-two", mins(12), { batch: eight, after: [after("side-one", 0, 0)] }),
    ]);
    expect(tasks.slice(1, 2).map(links)).toEqual([[["patties/side-two#1", 0, null]]]);
    expect(tasks.slice(4, 5).map(links)).toEqual([
      [
        ["patties/side-one#2", 0, 0],
        ["patties/side-two#1", 0, null],
      ],
    ]);
  });
});

describe("attention moments", () => {
  it("[P6] stirring every four minutes of twelve comes twice, and not at the end", () => {
    const moments = momentsOf(attended([stirEvery(4, 1)]), at(0), at(12));
    expect(moments.map((moment) => [moment.key, moment.at])).toEqual([
      ["patties/simmer@stir#1", at(4)],
      ["patties/simmer@stir#2", at(8)],
    ]);
  });

  it("[P6] a flip after some time and a lid off for the last minutes stand at their times", () => {
    const task = attended([
      { kind: "before-end", before: minutes(5), within: minutes(1), do: "Lid off." },
      { kind: "at", after: minutes(3), within: minutes(1), do: "Flip them." },
    ]);
    expect(momentsOf(task, at(0), at(12)).map((moment) => [moment.key, moment.at])).toEqual([
      ["patties/simmer@flip#1", at(3)],
      ["patties/simmer@lid#1", at(7)],
    ]);
  });

  it("[P7] keys stay the same when the task is planned for another time", () => {
    const task = attended([stirEvery(4, 1), { ...stirEvery(5, 1), do: "Stir in some water." }]);
    const keys = (from: number) => momentsOf(task, at(from), at(from + 12)).map((moment) => moment.key);
    expect(new Set(keys(0)).size).toBe(4);
    expect(keys(37)).toEqual(keys(0));
  });
});
