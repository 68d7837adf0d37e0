import { describe, expect, it } from "vitest";
import { Chance } from "../../../core/plan/engine/chance.ts";
import { draftsOf } from "../../../core/plan/drafts.ts";
import type { PlanInput } from "../../../core/plan/model.ts";
import { outlookOf } from "../../../core/plan/on-time.ts";
import { plan } from "../../../core/plan/plan.ts";
import { problemOf } from "../../../core/plan/problem.ts";
import { strainedReady } from "../../../core/plan/strain.ts";
import { expandTasks } from "../../../core/plan/tasks.ts";
import { coldStart, inBestWays } from "../../../core/plan/ways.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import { cookingMeal } from "../../../core/recipe/scale.ts";
import { inMinutes, seconds } from "../../../core/units/quantity.ts";
import { loadPantry } from "../../../server/pantry/load-pantry.ts";
import { aTenthEarly, atMeanPace, pacesOf } from "./chance-evening.ts";
import { after, at, bowl, dish, evening, five, fridge, handsOff, handsOn, mins } from "./small-meals.ts";
import { cook } from "./virtual-cook.ts";

/** When all is ready, in minutes, if what goes on by itself lasts as long as it may; these start at so many minutes. */
function strained(dishes: readonly Dish[], starts: Readonly<Record<string, number>>): number {
  const { drafts } = draftsOf(problemOf(evening(dishes)));
  const schedule = drafts.problem.acts.map(({ task }) => ({
    start: (starts[task.id] ?? 0) * 60_000,
    baking: null,
  }));
  return inMinutes(seconds(strainedReady(drafts.problem, schedule) / 1000));
}

describe("a strained evening", () => {
  const jelly = dish("jelly", [
    handsOff("set", mins(10, 30), { needs: [fridge] }),
    handsOn("turn-out", mins(4), { after: [after("set")] }),
  ]);

  it("[P150] lets what goes on by itself last as long as it may, and work by hand as long as planned", () => {
    // Set by minute 30 in place of 20, and turned out in four.
    expect(strained([jelly], { "jelly/set": 0, "jelly/turn-out": 20 })).toBe(34);
    expect(strained([dish("a", [handsOn("chop", mins(10, 30))])], { "a/chop": 5 })).toBe(25);
  });

  it("[P150] begins nothing before its time, and lets one pair of hands do one thing after another", () => {
    expect(strained([jelly], { "jelly/set": 0, "jelly/turn-out": 40 })).toBe(44);
    const both = [jelly, dish("nuts", [handsOn("crack", mins(10))])];
    expect(strained(both, { "jelly/set": 0, "jelly/turn-out": 20, "nuts/crack": 24 })).toBe(44);
  });

  it("[P150] lets nobody into a bowl that is still taken", () => {
    const [one, two] = ["a", "b"].map((id) =>
      dish(id, [handsOff("soak", mins(10, 20), { needs: [bowl("big bowl")] })]),
    );
    if (one === undefined || two === undefined) throw new Error("there are two");
    expect(strained([one, two], { "a/soak": 0, "b/soak": 15 })).toBe(40);
  });
});

const pantry = await loadPantry("recipes");

function shipped(name: string): PlanInput {
  const meal = pantry.meals.find((one) => one.name === name);
  const made = meal === undefined ? null : cookingMeal(meal, pantry.dishes);
  if (made?.ok !== true) throw new Error(`cannot cook ${name}`);
  const inWays = inBestWays(made.value, null, five);
  return { ...coldStart(inWays, null, five), tasks: expandTasks(inWays) };
}

const EVENINGS = 20;

describe("evenings with chance", () => {
  it.each(pantry.meals.map((meal) => meal.name))(
    "[P151] %s, begun a tenth early, is in time as often as the outlook says, at an unknown pace three times of four",
    (name) => {
      const input = shipped(name);
      const asked = { ...input, serveAt: aTenthEarly(input) };
      const chance = new Chance(77);
      const ends = Array.from({ length: EVENINGS }, () => {
        const paces = pacesOf(input.tasks, chance);
        return cook(asked, (task) => paces.get(task) ?? 1).endedAt;
      });
      const share = ends.filter((end) => end <= asked.serveAt).length / EVENINGS;
      expect(share).toBeGreaterThanOrEqual(0.75);
      const { onTime } = outlookOf(asked, plan(asked), { seed: 1, evenings: 400 });
      expect(Math.abs((onTime ?? 0) - share)).toBeLessThanOrEqual(0.2);
    },
    120_000,
  );
});

describe("the outlook of a cook who goes on with what can begin", () => {
  const many = { seed: 1, evenings: 1000 };

  it("[P153] what keeps is begun as soon as it can, what is hot no sooner than it may wait", () => {
    const pickles = dish("pickles", [handsOn("slice", mins(10))]);
    const keeps = evening([pickles], { serveAt: at(60) });
    const early = outlookOf(keeps, plan(keeps), many).readyAt.middle;
    expect(early).toBeLessThan(at(15));
    const eggs = dish("eggs", [handsOn("fry", mins(10), { hold: seconds(300) })]);
    const hot = evening([eggs], { serveAt: at(60) });
    expect(outlookOf(hot, plan(hot), many).readyAt.early).toBeGreaterThan(at(53));
  });

  it("[P154] a pace that is known is not counted twice", () => {
    const input = evening([dish("a", [handsOn("chop", mins(60))])], { serveAt: at(63) });
    const known = { ...input, tasks: atMeanPace(input.tasks) };
    const middleOf = (one: PlanInput) => outlookOf(one, plan(one), many).readyAt.middle;
    expect(Math.abs(middleOf(known) - middleOf(input))).toBeLessThan(60_000);
  });
});
