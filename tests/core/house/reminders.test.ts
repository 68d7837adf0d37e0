import { describe, expect, it } from "vitest";
import { appendHouse, emptyHouseLog } from "../../../core/house/house.ts";
import type { HouseLog } from "../../../core/house/house.ts";
import { madeMeal } from "../../../core/house/made-meal.ts";
import type { HouseOrder } from "../../../core/house/orders.ts";
import { remindersAt } from "../../../core/house/reminders.ts";
import { guidance } from "../../../core/keeping/guidance-table.ts";
import { withHazards } from "../../../core/keeping/hazards.ts";
import { emptyLog } from "../../../core/cook/fold.ts";
import { taskId } from "../../../core/plan/model.ts";
import { dishId } from "../../../core/recipe/model.ts";
import { hours } from "../../../core/units/quantity.ts";
import { countWords } from "../../../core/talk/speech.ts";
import { food } from "../keeping/pots.ts";
import { at } from "../cook/supper.ts";
import { evening, give as giveMeal, supper as lanternSupper } from "../talk/supper.ts";
import { afterSupper, give, servings, store } from "./house-at.ts";

/** All that is said of a house without a meal on, minute by minute: [minute after five, what]. */
function said(log: HouseLog, from: number, to: number, session: Parameters<typeof remindersAt>[1] = null) {
  const told: (readonly [number, string])[] = [];
  const keys = new Set<string>();
  for (let minute = from; minute <= to; minute += 1) {
    for (const { key, say } of remindersAt(log.house, session, at(minute))) {
      if (!keys.has(key)) told.push([minute, say]);
      keys.add(key);
    }
  }
  return told;
}

const cool = (dish: string): HouseOrder => ({ type: "BeginCooling", dish: dishId(dish), since: at(60) });

describe("two hours at most on the table", () => {
  it("[T30] it is said with half an hour left and with ten minutes, of all dishes together, and no more", () => {
    // Source: USDA FSIS, Leftovers and Food Safety: two hours at most, one above 90 F. The salad was ready at 5:50.
    expect(guidance.outAtMost.value).toBe(hours(2));
    expect(said(afterSupper(), 120, 600)).toEqual([
      [
        140,
        "Half an hour left of two out: cool the salad, the soup and two more. In a kitchen above ninety degrees, one hour.",
      ],
      [
        160,
        "Ten minutes left: put the salad, the soup and two more in the fridge, or say what became of it.",
      ],
    ]);
  });

  it("[T31] what was put away, eaten up or is being cooled is not named", () => {
    const some = afterSupper(
      [125, store("soup", servings(1))],
      [126, { type: "FinishDish", dish: dishId("pilaf") }],
      [127, { type: "FinishDish", dish: dishId("mystery") }],
    );
    expect(said(some, 120, 150)).toEqual([[140, expect.stringMatching(/^Half .* cool the salad\. In/)]]);
    const none = give(some, 128, { type: "FinishDish", dish: dishId("salad") });
    expect(said(none, 120, 600)).toEqual([]);
  });

  it("[T31] the cook can silence it, and undo that", () => {
    const silent = give(afterSupper(), 130, { type: "SilenceReminders" });
    expect(said(silent, 120, 600)).toEqual([]);
    expect(said(give(silent, 131, { type: "UndoLast" }), 132, 600)).toHaveLength(2);
  });

  it("[T34] it follows from the log and the clock: a page that opens late says what still counts, and only that", () => {
    const again = appendHouse(emptyHouseLog, afterSupper().events);
    expect(said(again, 150, 600).map(([minute]) => minute)).toEqual([150, 160]);
    expect(said(again, 165, 600).map(([minute]) => minute)).toEqual([165]);
    expect(said(again, 170, 600)).toEqual([]);
  });
});

describe("cooling", () => {
  it("[T32] it is asked after before two and six hours since the heat, and when they have passed", () => {
    // Source: FDA Food Code 2022, 3-501.14: 70 F within two hours, 41 F within six in all.
    expect([guidance.coolFirst.value.within, guidance.coolInAll.value.within]).toEqual([hours(2), hours(6)]);
    const cooling = said(afterSupper([100, cool("soup")], [101, { type: "SilenceReminders" }]), 100, 600);
    expect(cooling).toEqual([
      [165, "Measure tide soup: at most seventy degrees in fifteen minutes, two hours after the heat."],
      [
        180,
        "Two hours since the heat: tide soup. Above seventy degrees, heat it to one hundred sixty-five degrees and cool it anew, or throw it away.",
      ],
      [405, "Measure tide soup: at most forty-one degrees in fifteen minutes, six hours after the heat."],
      [420, "Six hours since the heat: tide soup. Above forty-one degrees, throw it away."],
    ]);
  });

  it("[T32] it ends where the cook says that it is cold", () => {
    const cold = afterSupper([100, cool("soup")], [170, { type: "EndCooling", dish: dishId("soup") }]);
    const ofSoup = said(cold, 171, 600).filter(([, say]) => /Measure|since the heat/.test(say));
    expect(ofSoup).toEqual([]);
  });
});

describe("while the meal is on", () => {
  const stew = (name: string) => ({ type: "FinishTask", task: taskId(`lantern-stew/${name}`) }) as const;
  const start = (name: string) => ({ type: "StartTask", task: taskId(`lantern-stew/${name}`) }) as const;
  const log = evening(
    [5, stew("halve")],
    [6, start("roast")],
    [12, stew("chop")],
    [13, start("simmer")],
    [36, stew("simmer")],
    [60, stew("roast")],
    [64, stew("season")],
  );
  const { session } = log;
  const note = (): HouseLog => {
    if (session === null) throw new Error("no evening");
    return give(emptyHouseLog, 0, { type: "NoteMeal", made: madeMeal("evening-1", session, null, null) });
  };

  it("[T33] a hot dish that waits half an hour for the others is to be kept hot, said once", () => {
    // Source: USDA FSIS, Danger Zone: 140 F, stricter than the Food Code's 135 F.
    expect(guidance.holdHot.value).toBe(140);
    const waits = said(note(), 60, 130, session);
    expect(waits).toEqual([
      [
        94,
        "Half an hour that the stew waits: keep it at one hundred forty degrees or hotter. Below that, its two hours count.",
      ],
    ]);
  });

  it("[T33] nothing is said where all is ready, and the two hours count from when the dish was ready", () => {
    const all = giveMeal(log, 65, { type: "LeaveOutDish", dish: dishId("griddle-breads") });
    const house =
      all.session === null
        ? emptyHouseLog
        : give(note(), 65, { type: "NoteMeal", made: madeMeal("evening-1", all.session, null, null) });
    expect(said(house, 66, 130, all.session)).toEqual([]);
    expect(said(house, 131, 400, all.session).map(([minute]) => minute)).toEqual([154, 174]);
  });

  it("[G9] what can hurt is said once as the meal begins, where the recipe does not tell it", () => {
    const [first, ...others] = lanternSupper.dishes;
    if (first === undefined) throw new Error("no dish");
    const beans = { ...first, ingredients: [...first.ingredients, food("kidney beans")] };
    const meal = withHazards({ ...lanternSupper, dishes: [beans, ...others] }, null);
    const begun = giveMeal(emptyLog, 0, { type: "BeginMeal", meal, serveAt: null });
    expect(said(emptyHouseLog, 0, 60, begun.session)).toEqual([
      [0, expect.stringMatching(/^Soak dry beans/)],
    ]);
    const warned = { ...beans, cautions: ["Soak the beans, and boil them hard."] };
    const told = withHazards({ ...lanternSupper, dishes: [warned, ...others] }, null);
    const quiet = giveMeal(emptyLog, 0, { type: "BeginMeal", meal: told, serveAt: null });
    expect(said(emptyHouseLog, 0, 60, quiet.session)).toEqual([]);
  });
});

it("[T30] what is said is one breath", () => {
  const cooling = give(afterSupper(), 130, cool("soup"));
  for (const [, say] of [...said(afterSupper(), 120, 600), ...said(cooling, 120, 600)])
    expect(countWords(say), say).toBeLessThanOrEqual(25);
});
