import { Worker } from "node:worker_threads";
import { beforeEach, describe, expect, it } from "vitest";
import type { LaidStep } from "../../core/cook/events.ts";
import { parseEvent, parseOrder } from "../../core/cook/parse.ts";
import { planInputOf, runSheetOf } from "../../core/cook/run-sheet.ts";
import { betterCourse } from "../../core/plan/better-course.ts";
import { plan } from "../../core/plan/plan.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { cookingMeal } from "../../core/recipe/scale.ts";
import { ok, type Result } from "../../core/units/result.ts";
import { minutes, plus, type Instant } from "../../core/units/quantity.ts";
import { courseFinder, type CourseFinder } from "../../server/course/course-finder.ts";
import { keepCourses } from "../../server/course/keep-courses.ts";
import { Kitchen, type Announcement } from "../../server/kitchen/kitchen.ts";
import { loadPantry } from "../../server/pantry/load-pantry.ts";
import { MemoryMealStore } from "../../server/store/memory-meal-store.ts";
import { meal as mealOf } from "../core/plan/small-meals.ts";
import { patties, roast } from "../core/plan/forked-meals.ts";
import { five, smallMeal } from "./small-meal.ts";

const pantry = await loadPantry("recipes");

function welcomeSupper(): CookingMeal {
  const found = pantry.meals.find((one) => one.name === "Welcome Supper");
  const made = found === undefined ? null : cookingMeal(found, pantry.dishes);
  if (made?.ok !== true) throw new Error("there is no welcome supper");
  return made.value;
}

let store: MemoryMealStore;
let now: Instant;
let ids: number;
let heard: Announcement[];

function open(meal: CookingMeal): Kitchen {
  const opened = Kitchen.open({
    store,
    meal: () => ok(meal),
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

function begun(kitchen: Kitchen): string {
  const answer = kitchen.begin({ id: `begin-${(ids += 1)}`, meal: "any", servings: {}, serveAt: null });
  if (!answer.ok) throw new Error(answer.sentence);
  return answer.session;
}

function evening(kitchen: Kitchen) {
  const found = kitchen.evening();
  if (found === null) throw new Error("nothing is cooked");
  return found;
}

const give = (kitchen: Kitchen, order: Parameters<Kitchen["order"]>[0]["order"]) =>
  kitchen.order({ session: evening(kitchen).session, id: `id-${(ids += 1)}`, at: now, order });

/** The better course of the evening as it stands. */
function searched(kitchen: Kitchen): readonly LaidStep[] {
  const { state, at } = evening(kitchen);
  const course = betterCourse(planInputOf(state, at), { seed: 1, schedules: 9_000 });
  if (course === null) throw new Error("there is no better course");
  return [...course].map(([task, step]) => ({ task, ...step }));
}

const types = (kitchen: Kitchen) => kitchen.snapshot().events.map(({ happening }) => happening.type);

describe("laying a course", () => {
  it("[P141] puts it in the log and tells every device; what the cook was told stays", () => {
    const kitchen = open(welcomeSupper());
    const session = begun(kitchen);
    const before = evening(kitchen).state;
    const steps = searched(kitchen);
    heard = [];
    expect(kitchen.layCourse(session, steps)).toEqual({ ok: true, seq: kitchen.snapshot().events.length });
    expect(heard).toHaveLength(1);
    expect(kitchen.snapshot().events.at(-1)?.happening).toEqual({ type: "CourseLaid", course: steps });
    const { state } = evening(kitchen);
    expect(state.focus).toEqual(before.focus);
    expect(runSheetOf(state, now).readyAt).toBeLessThan(runSheetOf(before, now).readyAt);
  });

  it("[P141] does nothing where another step would come next, or the evening were worse", () => {
    const kitchen = open(welcomeSupper());
    const session = begun(kitchen);
    const steps = searched(kitchen);
    const latest = Math.max(...steps.map(({ start }) => start));
    const turned = steps.map((step) => ({ ...step, start: latest - step.start }));
    const before = kitchen.snapshot();
    for (const course of [turned, steps.slice(1), []]) kitchen.layCourse(session, course);
    kitchen.layCourse("another evening", steps);
    expect(kitchen.snapshot()).toEqual(before);
  });

  it("[P141] does nothing where the cook has gone another way meanwhile", () => {
    const kitchen = open(welcomeSupper());
    const session = begun(kitchen);
    const steps = searched(kitchen);
    give(kitchen, { type: "HoldEverything" });
    const before = kitchen.snapshot();
    kitchen.layCourse(session, steps);
    expect(kitchen.snapshot()).toEqual(before);
  });

  it("[P142] is read again from the log as it was, and makes the same plan without a search", () => {
    const kitchen = open(welcomeSupper());
    const session = begun(kitchen);
    kitchen.layCourse(session, searched(kitchen));
    const event = kitchen.snapshot().events.at(-1);
    expect(parseEvent(JSON.parse(JSON.stringify(event)))).toEqual(ok(event));
    const again = open(welcomeSupper());
    expect(plan(planInputOf(evening(again).state, now))).toEqual(runSheetOf(evening(kitchen).state, now));
    const spoilt = {
      ...event,
      happening: { type: "CourseLaid", course: [{ task: "a/b", start: -1, baking: null }] },
    };
    expect(parseEvent(spoilt).ok).toBe(false);
  });

  it("[P144] cannot be asked for by a device, and is not what undo takes back", () => {
    const course = [{ task: "leek-soup/chop", start: 0, baking: null }];
    for (const type of ["LayCourse", "CourseLaid"]) expect(parseOrder({ type, course }).ok).toBe(false);
    const kitchen = open(welcomeSupper());
    const session = begun(kitchen);
    kitchen.layCourse(session, searched(kitchen));
    expect(give(kitchen, { type: "UndoLast" })).toEqual({ ok: false, sentence: "There is nothing to undo." });
    expect(types(kitchen)).toContain("CourseLaid");
  });
});

/** A finder that finds what it is given, when it is told to. */
class ToldFinder implements CourseFinder {
  asked = 0;
  stopped = 0;
  #answer: (found: Result<readonly LaidStep[] | null, string>) => void = () => {};

  find(): ReturnType<CourseFinder["find"]> {
    this.asked += 1;
    return new Promise((resolve) => (this.#answer = resolve));
  }

  stop(): Promise<void> {
    this.stopped += 1;
    return Promise.resolve();
  }

  async answer(found: Result<readonly LaidStep[] | null, string>): Promise<void> {
    this.#answer(found);
    await new Promise((resolve) => setImmediate(resolve));
  }
}

describe("looking for a course", () => {
  it("[P145] begins with the meal, not with a step, and again when the work is another", () => {
    const kitchen = open(mealOf([patties(), roast(30)]));
    const finder = new ToldFinder();
    keepCourses(kitchen, finder, () => {});
    begun(kitchen);
    expect(finder.asked).toBe(1);
    const task = evening(kitchen).state.tasks.find(({ step }) => step.ways !== null);
    const other = task?.step.ways?.all.find(({ name }) => name !== task.step.ways?.taken);
    if (task === undefined || other === undefined) throw new Error("there is one way only");
    now = plus(now, minutes(1));
    kitchen.tick();
    give(kitchen, { type: "SetServing", serveAt: plus(now, minutes(200)) });
    expect(finder.asked).toBe(1);
    const taken = give(kitchen, { type: "TakeWay", dish: task.dish.id, step: task.step.id, way: other.name });
    expect(taken.ok).toBe(true);
    expect(finder.asked).toBe(2);
    keepCourses(open(mealOf([patties(), roast(30)])), finder, () => {});
    kitchen.tick();
    expect(finder.asked).toBe(2);
  });

  it("[P145] lays what was found", async () => {
    const kitchen = open(welcomeSupper());
    const finder = new ToldFinder();
    keepCourses(kitchen, finder, () => {});
    begun(kitchen);
    await finder.answer(ok(searched(kitchen)));
    expect(types(kitchen)).toContain("CourseLaid");
    expect(finder.asked).toBe(1);
  });

  it("[P149] begins anew when somebody comes to help or leaves; what was laid for other hands is given up", async () => {
    const kitchen = open(welcomeSupper());
    const finder = new ToldFinder();
    keepCourses(kitchen, finder, () => {});
    begun(kitchen);
    await finder.answer(ok(searched(kitchen)));
    expect(evening(kitchen).state.course).not.toBeNull();
    give(kitchen, { type: "WelcomeHelper", helper: "helper" });
    expect([evening(kitchen).state.course, finder.asked]).toEqual([null, 2]);
    give(kitchen, { type: "ReleaseHelper", helper: "helper" });
    expect(finder.asked).toBe(3);
  });

  it("[P146] lays nothing when the meal has ended meanwhile", async () => {
    const kitchen = open(welcomeSupper());
    const finder = new ToldFinder();
    const said: string[] = [];
    keepCourses(kitchen, finder, (sentence) => said.push(sentence));
    begun(kitchen);
    const steps = searched(kitchen);
    give(kitchen, { type: "EndMeal" });
    expect(finder.stopped).toBe(1);
    heard = [];
    await finder.answer(ok(steps));
    expect([heard, said]).toEqual([[], []]);
  });

  const reach = { seed: 1, schedules: 300 };

  it.each([
    ["throw new Error('no more');", 60_000, "Error: no more"],
    ["process.exit(3);", 60_000, "the thread ended with code 3"],
    ["setInterval(() => {}, 1000);", 50, "it took longer than 50 ms"],
  ])("[P146] a thread that runs %j lays nothing and is told once", async (code, limitMs, why) => {
    const kitchen = open(smallMeal);
    const finder = courseFinder({ reach, limitMs }, () => new Worker(code, { eval: true }));
    const said: string[] = [];
    await new Promise<void>((resolve) => {
      keepCourses(kitchen, finder, (sentence) => resolve(void said.push(sentence)));
      begun(kitchen);
    });
    const again = await finder.find(planInputOf(evening(kitchen).state, now));
    expect(again).toEqual({ ok: false, error: said[0] });
    expect(said).toEqual([`No better plan was looked for: ${why}.`]);
    expect(types(kitchen)).not.toContain("CourseLaid");
  });

  it("[P146] a thread that cannot be started lays nothing, is told once, and the evening goes on", async () => {
    const kitchen = open(smallMeal);
    const finder = courseFinder({ reach, limitMs: 60_000 }, () => {
      throw new Error("no room");
    });
    const said: string[] = [];
    keepCourses(kitchen, finder, (sentence) => said.push(sentence));
    for (let evenings = 0; evenings < 2; evenings += 1) {
      begun(kitchen);
      await new Promise((resolve) => setImmediate(resolve));
      expect(give(kitchen, { type: "EndMeal" }).ok).toBe(true);
    }
    expect(said).toEqual(["No better plan was looked for: Error: no room."]);
  });

  it("[P146] an answer that is no course lays nothing", async () => {
    const kitchen = open(smallMeal);
    begun(kitchen);
    const code = "require('node:worker_threads').parentPort.postMessage([{ task: 'leek-soup/chop' }]);";
    const finder = courseFinder({ reach, limitMs: 60_000 }, () => new Worker(code, { eval: true }));
    const found = await finder.find(planInputOf(evening(kitchen).state, now));
    expect(found.ok).toBe(false);
  });

  it("[P147] the server goes on while the thread searches; another search ends the one before", async () => {
    const kitchen = open(welcomeSupper());
    begun(kitchen);
    const { state } = evening(kitchen);
    const finder = courseFinder({ reach: { seed: 1, schedules: 9_000 }, limitMs: 100_000 });
    const given = finder.find(planInputOf(state, now));
    let turns = 0;
    const count = setInterval(() => (turns += 1), 5);
    const found = await finder.find(planInputOf(state, now));
    clearInterval(count);
    expect(await given).toEqual(ok(null));
    expect(found).toEqual(ok(searched(kitchen)));
    expect(turns).toBeGreaterThan(3);
    await finder.stop();
  });
});
