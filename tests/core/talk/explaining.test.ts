import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { taskId } from "../../../core/plan/model.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import { respond } from "../../../core/talk/respond.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { after, burner, dish, handsOff, handsOn, kitchen, meal, mins, oven } from "../plan/small-meals.ts";
import { at, evening, give, kitchenAt } from "./supper.ts";
import type { Line } from "./talk.ts";
import { sayings, talk } from "./talk.ts";

const narrow = { ...kitchen, burners: 1, ovens: kitchen.ovens.map((each) => ({ ...each, racks: 1 })) };

/** A meal of these dishes in a kitchen of one burner and one rack, begun at five, to be eaten so many minutes later. */
function begun(
  dishes: readonly Dish[],
  serve: number | null,
  ...orders: readonly (readonly [number, Order])[]
): MealLog {
  const serveAt = serve === null ? null : at(serve);
  const log = give(emptyLog, 0, { type: "BeginMeal", meal: meal(dishes, narrow), serveAt });
  return orders.reduce((before, [minute, order]) => give(before, minute, order), log);
}

const say = (log: MealLog, ...lines: readonly Line[]): string => sayings(log, ...lines).at(-1) ?? "";
const pot = (id: string, length: number): Dish =>
  dish(id, [handsOff(`boil-the-${id}`, mins(length), { needs: [burner] })]);
const heat = { degrees: 350, scale: "F" } as const;

describe("why now", () => {
  it("[C100] tells what is needed next, and that dinner waits for it", () => {
    expect(say(begun([pot("rice", 40), pot("beans", 10)], null), [0, "why now"])).toMatch(
      /^Because the burner is needed next for boiling the (rice|beans), and dinner waits for that\.$/,
    );
    const loaves = ["loaf", "cake"].map((id) =>
      dish(id, [handsOff(`bake-the-${id}`, mins(30), { needs: [oven(350)] })]),
    );
    const hot = begun(loaves, null, [0, { type: "SetOven", oven: "oven", heat }]);
    expect(say(hot, [30, "why now"])).toMatch(
      /^Because the oven is needed next for baking the (loaf|cake), and dinner waits for that\.$/,
    );
    const chopped = [
      dish("soup", [
        handsOn("chop-the-leek", mins(10)),
        handsOff("simmer-the-soup", mins(30), { after: [after("chop-the-leek")] }),
      ]),
    ];
    expect(say(begun(chopped, null), [0, "why now"])).toBe(
      "Because simmering the soup comes right after it, and dinner waits for that.",
    );
  });

  it("[C100] tells how long it could wait where nothing presses", () => {
    // An hour's boiling, ten minutes' peeling: the peeling may begin up to 49 minutes after the pot's first minute.
    const dishes = [pot("beans", 60), dish("salad", [handsOn("peel-the-carrots", mins(10))])];
    const log = begun(dishes, null, [0, { type: "StartTask", task: taskId("beans/boil-the-beans") }]);
    expect(say(log, [1, "what now"], [1, "why now"])).toBe(
      "It could wait forty-nine minutes, but your hands are free now.",
    );
  });

  it("[C100] tells of the oven's way, of what must follow soon, and of the cook's own wish", () => {
    expect(say(evening(), [0, "why now"])).toBe(
      "Because the oven takes about fifteen minutes to get there, and the stew goes in at five fourteen.",
    );
    const dough = [
      dish("buns", [
        handsOn("knead-the-dough", mins(10)),
        handsOn("shape-the-buns", mins(5), { after: [after("knead-the-dough", 0, 10)] }),
      ]),
    ];
    const kneaded = begun(dough, 90, [10, { type: "FinishTask", task: taskId("buns/knead-the-dough") }]);
    expect(say(kneaded, [10, "what now"], [11, "why now"])).toBe(
      "Because it must follow kneading the dough within ten minutes.",
    );
    expect(
      say(
        evening([0, { type: "SetOven", oven: "oven", heat: { degrees: 365, scale: "F" } }]),
        [1, "mix the dough first"],
        [1, "why now"],
      ),
    ).toBe("Because you asked for it first.");
  });

  it("[C100] tells that the time is up where something rings", () => {
    const log = evening(
      [1, { type: "FinishTask", task: taskId("lantern-stew/chop") }],
      [2, { type: "StartTask", task: taskId("lantern-stew/simmer") }],
      [3, { type: "SetOven", oven: "oven", heat: { degrees: 365, scale: "F" } }],
    );
    expect(say(log, [7, "why now"])).toBe("Because the stew is on, and it can wait one minute at most.");
    expect(say(log, [23, "stirred"], [24, "why now"])).toBe(
      "Because it may be done by now: simmer the lentils.",
    );
    expect(say(log, [28, "why now"])).toBe("Because its time is up: simmer the lentils.");
  });
});

describe("why not yet", () => {
  it("[C101] names the step that comes before, the hands, the burner, the oven", () => {
    const log = evening();
    expect(say(log, [0, "why not start the flatbreads"])).toMatch(
      /^Mix the dough, in five minutes: it waits for your hands\. Before/,
    );
    expect(say(log, [0, "why not fry the flatbreads"], [0, "why not start fry the flatbreads"])).toMatch(
      /^Fry the flatbreads, in forty-three minutes: it comes after resting the dough\./,
    );
    expect(say(log, [0, "when can I start roast the squash"])).toMatch(
      /^Roast the squash, in .*: it waits for the oven\./,
    );
    const pots = begun([pot("rice", 40), pot("beans", 10)], null, [
      0,
      { type: "StartTask", task: taskId("rice/boil-the-rice") },
    ]);
    expect(say(pots, [1, "why not start the beans"])).toBe(
      "Boil the beans, in thirty-nine minutes: it waits for a burner. The rice has it first.",
    );
  });

  it("[C101] tells that later is better where it keeps only so long", () => {
    // To be hot at six for at most fifteen minutes, ten minutes of frying begin at 5:35 at the soonest.
    const log = begun([dish("chips", [handsOff("fry-the-chips", mins(10), { hold: minutes(15) })])], 60);
    const answer = say(log, [0, "why not start the chips"]);
    expect(answer).toMatch(
      /^Fry the chips, in .*: it (could start at five thirty-five|keeps hot only fifteen minutes)/,
    );
  });

  it("[C101] tells of a step that is done, left out, in hand or going", () => {
    expect(
      say(evening([0, { type: "SetOven", oven: "oven", heat: { degrees: 365, scale: "F" } }]), [
        1,
        "why not start halve the squash",
      ]),
    ).toBe("You are at it: halve the squash.");
    const log = evening(
      [5, { type: "FinishTask", task: taskId("lantern-stew/halve") }],
      [6, { type: "StartTask", task: taskId("lantern-stew/roast") }],
      [7, { type: "SkipTask", task: taskId("griddle-breads/slice") }],
    );
    expect(say(log, [8, "why not start halve the squash"])).toBe("That is done: halve the squash.");
    expect(say(log, [8, "why not start roast the squash"])).toBe(
      "It has been going since five oh six: roast the squash.",
    );
    expect(say(log, [8, "why not start slice the green onion"])).toBe(
      "That was left out: slice the green onion.",
    );
  });

  it("[C101] asks which step is meant, and says what there is where none is", () => {
    expect(say(evening(), [0, "why not start the pudding"])).toMatch(
      /^There is no pudding in this meal\. Still to do:/,
    );
  });
});

describe("what if", () => {
  it("[C102] another time for dinner is planned, told and not set", () => {
    const end = talk(
      evening(),
      [0, "what if we eat at six"],
      [0, "when do we eat"],
      [0, "what if we eat at seven"],
    );
    expect(end.replies.map((reply) => reply.orders)).toEqual([[], [], []]);
    expect(end.replies[0]?.say).toMatch(
      /^We would be about .* minutes late, ready at six .*\. I only looked: say "we eat at six o'clock" to do so\.$/,
    );
    expect(end.replies[1]?.say).toBe("At seven o'clock, in two hours.");
    expect(end.replies[2]?.say).toBe(
      `We would make seven o'clock. I only looked: say "we eat at seven o'clock" to do so. Next is still mix the dough.`,
    );
  });

  it("[C102] what it says as a way to do so does so", () => {
    const asked = talk(evening(), [0, "what if we eat at 8:30"]);
    const way = /say "(.*)"/.exec(asked.replies[0]?.say ?? "")?.[1] ?? "";
    expect(talk(asked.log, [1, way]).replies[0]?.orders).toEqual([{ type: "SetServing", serveAt: at(210) }]);
  });

  it("[C102] half the question is asked for its rest; a time gone by is told", () => {
    expect(sayings(evening(), [0, "what if we eat at"], [0, "seven"])).toEqual([
      "At what time?",
      expect.stringMatching(/^We would make seven o'clock\./),
    ]);
    expect(say(evening(), [10, "what if we eat at five pm"])).toBe("It is past five o'clock already.");
  });

  it("[C103] one more burner or rack is told by the minutes that it brings, counted out by hand", () => {
    // Two pots of half an hour after each other take an hour, side by side 31 minutes: the cook sets one after the other.
    const pots = begun([pot("rice", 30), pot("beans", 30)], null);
    expect(say(pots, [0, "what if I had one more burner"])).toBe(
      "With one more burner all could be ready twenty-nine minutes sooner, at five thirty-one.",
    );
    expect(say(pots, [0, "what if I had another oven rack"])).toBe(
      "One more oven rack would bring dinner no sooner.",
    );
    const bakes = ["loaf", "cake"].map((id) =>
      dish(id, [handsOff(`bake-the-${id}`, mins(30), { needs: [oven(350)] })]),
    );
    const hot = begun(bakes, null, [0, { type: "SetOven", oven: "oven", heat }]);
    expect(say(hot, [30, "would another oven rack help"])).toBe(
      "With one more oven rack all could be ready twenty-nine minutes sooner, at six oh one.",
    );
    expect(talk(pots, [0, "what if I had one more burner"]).replies[0]?.orders).toEqual([]);
  });

  it("[C103] where nothing is left to start it says so", () => {
    const log = begun([pot("rice", 30)], null, [
      0,
      { type: "StartTask", task: taskId("rice/boil-the-rice") },
    ]);
    expect(say(log, [2, "what if I had another burner"])).toBe(
      "Nothing is left to start, so it would change nothing.",
    );
  });
});

describe("what can be done ahead", () => {
  const plums = dish("plums", [
    handsOn("stone-the-plums", mins(7)),
    handsOff("stew-the-plums", mins(12), { after: [after("stone-the-plums")], ahead: minutes(3 * 1440) }),
  ]);
  const sauce = dish("sauce", [handsOn("stir-the-sauce", mins(5), { ahead: minutes(60) })]);
  const salad = dish("salad", [handsOn("dress-the-salad", mins(5), { endsBeforeServing: minutes(10) })]);

  it("[C104] is work by hand that leads to what keeps, and how long that is", () => {
    expect(say(begun([plums, salad], 180), [0, "what can I do ahead"])).toBe(
      "You can do ahead: stone the plums, keeps three days after stewing the plums.",
    );
    expect(say(begun([sauce, salad], 60), [10, "what can I do ahead today"])).toBe(
      "You can do ahead: stir the sauce, keeps an hour.",
    );
  });

  it("[C104] is nothing where it would not keep until dinner, and never what does not keep", () => {
    expect(say(begun([sauce, salad], 180), [0, "what can I do ahead"])).toBe(
      "Nothing can be done ahead just now. Later there is something for the sauce.",
    );
    expect(say(begun([salad], 60), [0, "what can I do ahead"])).toBe(
      "Nothing by hand is left that can be done ahead.",
    );
  });
});

it.each([
  "why now",
  "why not start the rice",
  "what if we eat at seven",
  "what if I had another burner",
  "what can I do ahead",
])("[C105] without a meal “%s” is answered so", (said) => {
  const [reply] = talk(emptyLog, [0, said]).replies;
  expect(reply?.say).toBe("No meal is on. Choose one on the first page, and we begin.");
  expect(kitchenAt(emptyLog, 0).sheet).toBeNull();
});

it("[C107] a page that has not fetched the reasons yet says so, and does nothing", () => {
  const reply = respond("why now", { ...kitchenAt(evening(), 0), explain: null });
  expect([reply.say, reply.orders]).toEqual(["I am not ready for that yet. Say it again in a moment.", []]);
});
