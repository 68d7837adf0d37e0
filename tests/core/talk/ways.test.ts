import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { taskId } from "../../../core/plan/model.ts";
import { inBestWays } from "../../../core/plan/ways.ts";
import { dishId } from "../../../core/recipe/model.ts";
import { grammarFor } from "../../../core/talk/grammar-for.ts";
import { respond } from "../../../core/talk/respond.ts";
import { breathWords, countWords } from "../../../core/talk/speech.ts";
import { cookThePatties, pattiesEvening, pattiesMeal } from "../cook/patties-evening.ts";
import { five, supper as plainSupper } from "../cook/supper.ts";
import { patties } from "../plan/forked-meals.ts";
import { give, kitchenAt } from "./supper.ts";

const begun = pattiesEvening();
const done = (id: string): Order => ({ type: "FinishTask", task: taskId(id) });
const start = (id: string): Order => ({ type: "StartTask", task: taskId(id) });
const say = (words: string, log: MealLog = begun, minute = 1) => respond(words, kitchenAt(log, minute));
const inPan = [cookThePatties("in a pan")];

/** Two dishes of patties: what is cooked is named twice. */
const twice = {
  ...pattiesMeal,
  dishes: [patties(), { ...patties(), id: dishId("falafel"), name: "falafel", says: ["falafel"] }],
};
const two = give(emptyLog, 0, { type: "BeginMeal", meal: inBestWays(twice, null, five), serveAt: null });

describe("another way to do a step", () => {
  it.each([
    "use the pan",
    "use the pan for this",
    "I'll use a pan",
    "do them in a pan",
    "let's do it in the pan",
    "take the pan instead",
    "pan instead",
    "do the patties in a pan",
    "use the pan for the patties",
    "cook the patties in the pan please",
  ])("[C130] %s", (words) => {
    const { orders, say: told } = say(words);
    expect(orders).toEqual(inPan);
    expect(told).toMatch(/^Cook in a pan: noted\. Ready about \w+/);
  });

  it("[C130] for a step before the cook the call follows in the same breath", () => {
    const log = pattiesEvening(
      [5, done("patties/shape")],
      [6, { type: "ChooseTask", task: taskId("patties/cook") }],
    );
    expect(say("do it in a pan", log, 7).say).toMatch(
      /^In a pan, then\. Patties: Do it in a pan\. Batch one of three\./,
    );
  });

  it.each([
    ["use the grill", 'In the patties, "cook" needs a grill, and this kitchen has none.'],
    ["use the oven", "That is the plan already: cook in the oven."],
    [
      "use the wok for the patties",
      "The recipes know no wok. They know in a pan, in the oven and on the grill.",
    ],
  ])("[C131] %s", (words, told) => {
    expect(say(words)).toMatchObject({ orders: [], say: told });
  });

  it("[C131] too late is too late", () => {
    const log = pattiesEvening([5, done("patties/shape")], [6, start("patties/cook")]);
    expect(say("do the patties in a pan", log, 7)).toMatchObject({
      orders: [],
      say: "Too late for another way. You have begun to cook in the oven.",
    });
  });

  it("[C136] undo takes it back and says so", () => {
    const log = give(begun, 1, cookThePatties("in a pan"));
    const { orders, say: told } = say("undo that", log, 2);
    expect(orders).toEqual([{ type: "UndoLast" }]);
    expect(told).toMatch(/^Undone: the other way\./);
  });
});

describe("why this way", () => {
  it.each([
    "why the oven",
    "why in the oven",
    "why not in a pan",
    "why not the pan",
    "why is it in the oven",
    "why pan",
  ])("[C132] %s", (words) => {
    const { orders, say: told } = say(words);
    expect(orders).toEqual([]);
    expect(told).toMatch(
      /^Cook in the oven: all six patties go in at once, and dinner is ready .* sooner than in a pan\.$/,
    );
    expect(countWords(told)).toBeLessThanOrEqual(breathWords);
  });

  it("[C132] each other way has its own reason", () => {
    expect(say("why not on the grill").say).toBe("Cook in the oven: there is no grill.");
  });

  it("[C133] the cook's own choice, and the recipe's", () => {
    const log = give(begun, 1, cookThePatties("in a pan"));
    expect(say("why the pan", log).say).toBe("You wanted it so: cook in a pan.");
    expect(say("why not the oven", log).say).toBe("You wanted it so: cook in a pan.");
    const asWritten = give(emptyLog, 0, { type: "BeginMeal", meal: pattiesMeal, serveAt: null });
    expect(say("why in a pan", asWritten).say).toBe("The recipe has it so: cook in a pan.");
  });

  it("[C134] of several steps it is asked which, and the answer is carried out", () => {
    const asked = say("use the pan", two);
    expect(asked).toMatchObject({
      orders: [],
      say: "Which one: cook for the patties or cook for the falafel?",
    });
    const picked = respond("the second", kitchenAt(two, 1, asked.dialogue));
    expect(picked.orders).toEqual([{ ...cookThePatties("in a pan"), dish: "falafel" }]);
    expect(say("use the pan for the falafel", two).orders).toEqual(picked.orders);
  });

  it("[C134] the step before the cook is meant without asking", () => {
    const log = [
      [5, done("falafel/shape")],
      [6, { type: "ChooseTask", task: taskId("falafel/cook") }],
    ].reduce((before, [minute, order]) => give(before, minute as number, order as Order), two);
    expect(say("use the pan", log, 7).orders).toEqual([{ ...cookThePatties("in a pan"), dish: "falafel" }]);
  });

  it("[C135] the recogniser listens for ways only where the meal leaves a choice", () => {
    const plain = give(emptyLog, 0, { type: "BeginMeal", meal: plainSupper, serveAt: null });
    const rules = (log: MealLog) => [...grammarFor(kitchenAt(log, 1)).rules.keys()];
    expect(rules(begun)).toEqual(expect.arrayContaining(["TakeWay", "WhyWay"]));
    expect(rules(plain)).not.toContain("TakeWay");
    expect(rules(plain)).not.toContain("WhyWay");
    expect(say("why the oven", plain).say).toBe("The recipes name one way for each step.");
    expect(say("use the pan", plain)).toMatchObject({
      orders: [],
      say: "The recipes name one way for each step.",
    });
  });
});
