import { describe, expect, it } from "vitest";
import { inWays } from "../../../core/recipe/in-ways.ts";
import type { CookingMeal, Way } from "../../../core/recipe/model.ts";
import { stepId, dishId } from "../../../core/recipe/model.ts";
import type { Progress, RunSheet } from "../../../core/plan/model.ts";
import { taskId } from "../../../core/plan/model.ts";
import { plan } from "../../../core/plan/plan.ts";
import { compareCosts, sheetCost } from "../../../core/plan/sheet-cost.ts";
import { expandTasks } from "../../../core/plan/tasks.ts";
import { wayReason } from "../../../core/plan/way-words.ts";
import { chooseWays, coldStart, inBestWays } from "../../../core/plan/ways.ts";
import { plus, seconds } from "../../../core/units/quantity.ts";
import { forked, kitchenWith, pan, patties, roast, tray, way } from "./forked-meals.ts";
import {
  after,
  appliance,
  at,
  burner,
  dish,
  five,
  handsOff,
  handsOn,
  heat,
  meal,
  mins,
  oven,
} from "./small-meals.ts";

const cook = { dish: dishId("patties"), step: stepId("cook") };
const chosen = (of: CookingMeal, serveAt: number | null = null) =>
  chooseWays(coldStart(of, serveAt === null ? null : at(serveAt), five));
const takenIn = (of: CookingMeal, serveAt: number | null = null): readonly string[] =>
  chosen(of, serveAt).map((one) => one.way);

describe("the tasks of a way", () => {
  it("[P100] are those of its own batches, and no other task's name changes", () => {
    const of = meal([patties(), roast(30)]);
    const ids = (way: string) => expandTasks(of, [{ ...cook, way }]).map(({ id }) => id);
    expect(ids("in a pan")).toEqual([
      "patties/shape",
      "patties/cook#1",
      "patties/cook#2",
      "patties/cook#3",
      "patties/plate",
      "roast/roast",
    ]);
    expect(ids("in the oven")).toEqual(["patties/shape", "patties/cook", "patties/plate", "roast/roast"]);
    expect(ids("in the oven")).toEqual(
      expandTasks(inWays(of, [{ ...cook, way: "in the oven" }])).map(({ id }) => id),
    );
  });

  it("[P100] what waits for the step waits for the last batch of the way", () => {
    const plate = (way: string) =>
      expandTasks(meal([patties()]), [{ ...cook, way }]).find(({ step }) => step.id === "plate")?.after;
    expect(plate("in a pan")?.map(({ task }) => task)).toEqual(["patties/cook#3"]);
    expect(plate("in the oven")?.map(({ task }) => task)).toEqual(["patties/cook"]);
  });

  it("[P100] a way that the step has not leaves it as it is", () => {
    expect(expandTasks(meal([patties()]), [{ ...cook, way: "on the moon" }])).toEqual(
      expandTasks(meal([patties()])),
    );
  });
});

// Common practice, no source: two at a time at 20 to 30 minutes a batch lose against one tray of six.
describe("patties, two at a time in a pan or six on a tray", () => {
  it("[P101] the tray wins, and the reason says what it takes and what it saves", () => {
    const [choice] = chosen(meal([patties()]));
    const ready = (way: string): number => {
      const of = inWays(meal([patties()]), [{ ...cook, way }]);
      return plan({ ...coldStart(of, null, five), tasks: expandTasks(of) }).readyAt;
    };
    const sooner = Math.round((ready("in a pan") - ready("in the oven")) / 60_000);
    expect(sooner).toBeGreaterThan(25);
    expect(sooner).toBeLessThan(50);
    expect(choice?.way).toBe("in the oven");
    expect(choice?.over.map(({ way }) => way)).toEqual(["in a pan"]);
    expect(choice?.over[0]?.because).toMatch(
      /^all six patties go in at once, and dinner is ready [a-z- ]+ sooner than in a pan$/,
    );
  });

  it("[P101] the meal is then cooked so, and its sentence names the step", () => {
    const step = inBestWays(meal([patties()]), null, five).dishes[0]?.steps[1];
    expect(step?.needs).toEqual(tray().needs);
    expect(step === undefined ? null : wayReason(step)).toMatch(
      /^Cook in the oven: all six patties go in at once, and dinner is ready .* sooner than in a pan\.$/,
    );
  });

  it("[P102] where the oven is at another heat all evening, the pan wins", () => {
    const of = meal([patties([tray(), pan]), roast(150)]);
    expect(takenIn(of)).toEqual(["in a pan"]);
    expect(chosen(of)[0]?.over[0]?.because).toMatch(/^dinner is ready .* sooner than in the oven$/);
    // With a second oven nothing stands in the tray's way.
    const oven = { racks: 2, heats: 15, cools: 5, hottest: heat(500).high };
    const ovens = [
      { name: "oven", ...oven },
      { name: "small oven", ...oven },
    ];
    expect(takenIn(meal([patties([tray(), pan]), roast(90)], kitchenWith({ ovens })))).toEqual([
      "in the oven",
    ]);
  });
});

describe("what the kitchen has not got", () => {
  const grill = way("on the grill", { time: mins(5), needs: [appliance("grill")] });

  it.each<[string, Way, Parameters<typeof kitchenWith>[0]]>([
    ["there is no grill", grill, {}],
    ["there is no oven", tray(), { ovens: [] }],
    ["no oven here gets so hot", tray(550), {}],
    ["the oven has too few racks", way("in the oven", { time: mins(5), needs: [oven(400, 400, 3)] }), {}],
    [
      "there is only one burner",
      way("in two pans", { needs: [{ kind: "burner", count: 2 }] }),
      { burners: 1 },
    ],
  ])("[P103] %s: such a way is out", (because, cannot, where) => {
    const [choice] = chosen(meal([patties([cannot, pan])], kitchenWith(where)));
    expect(choice).toEqual({ ...cook, way: "in a pan", over: [{ way: cannot.name, because }] });
  });

  it("[P103] where it can do none, the recipe's own way stands and nothing is said to have been chosen", () => {
    expect(chosen(meal([patties([grill, tray()])], kitchenWith({ ovens: [] })))).toEqual([]);
  });
});

describe("what has begun, and what the cook has said", () => {
  const input = coldStart(meal([patties()]), null, five);
  const at5: Progress = { state: "running", startedAt: five, span: mins(20, 30) };
  const ways = (progress: readonly (readonly [string, Progress])[], focus: string | null = null) =>
    chooseWays({
      ...input,
      progress: new Map(progress.map(([id, state]) => [taskId(id), state] as const)),
      focus: focus === null ? null : taskId(focus),
    });

  it("[P104] a step that runs, is over, is left out or is before the cook keeps its way", () => {
    expect(ways([["patties/cook#1", at5]])).toEqual([]);
    expect(ways([["patties/cook#1", { state: "done", startedAt: five, at: five }]])).toEqual([]);
    expect(ways([["patties/cook#2", { state: "skipped", at: five }]])).toEqual([]);
    expect(ways([], "patties/cook#1")).toEqual([]);
  });

  it("[P104] a step whose dish has begun may still change", () => {
    const done: Progress = { state: "done", startedAt: five, at: plus(five, seconds(300)) };
    expect(ways([["patties/shape", done]]).map((one) => one.way)).toEqual(["in the oven"]);
  });

  it("[P104] what the cook has chosen stays", () => {
    const of = inWays(meal([patties()]), [{ ...cook, way: "in a pan", chosen: { by: "cook" } }]);
    expect(chosen(of)).toEqual([]);
    expect(inBestWays(of, null, five)).toBe(of);
  });
});

describe("what decides", () => {
  const both = (one: Partial<Way>, other: Partial<Way>): readonly [Way, Way] => [
    way("in a pan", { needs: [burner], ...one }),
    way("in the oven", { needs: [oven(400)], ...other }),
  ];
  const because = (of: CookingMeal, serveAt: number | null = null) => {
    const [choice] = chosen(of, serveAt);
    return [choice?.way, choice?.over[0]?.because];
  };

  it("[P105] first the hard limits: then a sooner dinner, then what waits, then the hands", () => {
    const cost = { missed: 1, late: 10, waits: 10, hands: 10 };
    const inOrder = [
      { missed: 0, late: 90, waits: 90, hands: 90 },
      { ...cost, late: 9, waits: 90, hands: 90 },
      { ...cost, waits: 9, hands: 90 },
      { ...cost, hands: 9 },
      cost,
    ];
    expect(inOrder.toReversed().toSorted(compareCosts)).toEqual(inOrder);
  });

  it("[P105] with a time asked for, what is late loses, and by how much is said", () => {
    const of = meal([patties()]);
    expect(because(of, 70)).toEqual([
      "in the oven",
      expect.stringMatching(/in a pan dinner would be .* late$/),
    ]);
  });

  it("[P105] where both are in time, the hot food that waits less wins", () => {
    // Fried in three batches the first would stand for the time of two more.
    const of = meal([
      dish("patties", [
        handsOn("shape", mins(5)),
        { ...forked("cook", [pan, tray()], { after: [after("shape")] }), hold: seconds(600) },
        handsOn("plate", mins(2), { after: [after("cook")] }),
      ]),
    ]);
    expect(because(of, 240)).toEqual([
      "in the oven",
      expect.stringMatching(/^all six .* hot food waits .* less than in a pan$/),
    ]);
  });

  it("[P105] then the cook's time by hand", () => {
    const of = meal([patties(both({ hands: "on", time: mins(30) }, { time: mins(30) }))]);
    expect(because(of, 240)).toEqual([
      "in the oven",
      "it takes twenty-nine minutes less of your time than in a pan",
    ]);
  });

  it("[P105] and where nothing speaks for either, the recipe's first", () => {
    const alike = both({ needs: [] }, { needs: [burner] });
    expect(because(meal([patties(alike)]))).toEqual([
      "in a pan",
      "it does as well as in the oven, and the recipe names it first",
    ]);
    const turned: readonly [Way, Way] = [alike[1], alike[0]];
    expect(because(meal([patties(turned)]))[0]).toBe("in the oven");
  });

  it("[P105] a sheet is priced by what stands in it", () => {
    const of = meal([
      dish("soup", [
        handsOff("simmer", mins(30), { hold: seconds(300) }),
        handsOn("blend", mins(4), { after: [after("simmer", 0, 10)], endsBeforeServing: seconds(120) }),
      ]),
    ]);
    const entry = (task: string, from: number, to: number) => ({
      task: taskId(task),
      start: at(from),
      look: at(to),
      end: at(to),
      lanes: [],
      moments: [],
      slack: seconds(0),
    });
    const sheet: RunSheet = {
      entries: [entry("soup/simmer", 0, 30), entry("soup/blend", 45, 49)],
      ovenMoves: [],
      readyAt: at(60),
      late: seconds(600),
      broken: [],
    };
    const input = { ...coldStart(of, at(50), five), tasks: expandTasks(of) };
    // Blended 5 minutes too late after the simmering and 9 too early for the table; the soup stood 10 too long.
    expect(sheetCost(input, sheet)).toEqual({ missed: 14, late: 10, waits: 10, hands: 5 });
    expect(sheetCost({ ...input, serveAt: null }, sheet).late).toBe(60);
  });
});
