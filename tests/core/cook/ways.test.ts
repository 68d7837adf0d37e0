import { describe, expect, it } from "vitest";
import { cuesAt } from "../../../core/cook/cues.ts";
import { decide } from "../../../core/cook/decide.ts";
import { appendEvents, emptyLog, evolve } from "../../../core/cook/fold.ts";
import { parseEvent, parseOrder } from "../../../core/cook/parse.ts";
import { sentence } from "../../../core/cook/refusal.ts";
import { afterSaying, nothingSaid, toSay } from "../../../core/cook/said-cues.ts";
import type { MealLog, Session } from "../../../core/cook/session.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { taskId } from "../../../core/plan/model.ts";
import type { Ways } from "../../../core/recipe/model.ts";
import { dishId, stepId } from "../../../core/recipe/model.ts";
import { cookThePatties, pattiesEvening, pattiesMeal } from "./patties-evening.ts";
import { at, evening, give, outcome, sessionOf, sheetAt } from "./supper.ts";

const ids = (log: MealLog): readonly string[] => sessionOf(log).tasks.map(({ id }) => id);
const waysOf = (log: MealLog): Ways | null | undefined => sessionOf(log).meal.dishes[0]?.steps[1]?.ways;
const done = (id: string): Order => ({ type: "FinishTask", task: taskId(id) });
const refused = (log: MealLog, minute: number, order: Order): string => {
  const decision = decide({ id: "asked", at: at(minute), order }, log);
  return decision.ok ? "carried out" : sentence(decision.error);
};

describe("a step in another of its ways", () => {
  const begun = pattiesEvening();

  it("[K30] the evening begins in the ways that the planner chose, and the log has the reasons", () => {
    expect(waysOf(begun)?.taken).toBe("in the oven");
    expect(waysOf(begun)?.chosen).toEqual({
      by: "plan",
      over: [
        { way: "in a pan", because: expect.stringContaining("sooner than in a pan") as string },
        { way: "on the grill", because: "there is no grill" },
      ],
    });
    expect(begun.events.map(({ happening }) => happening.type)).toEqual(["MealBegun", "TaskCalled"]);
  });

  it("[K31] the cook's word changes its tasks and nothing else, and the planner's choice is over", () => {
    const log = give(begun, 1, cookThePatties("in a pan"));
    expect(log.events.at(-1)?.happening).toEqual({
      type: "WayTaken",
      dish: "patties",
      step: "cook",
      way: "in a pan",
    });
    expect(ids(begun)).toEqual([
      "patties/shape",
      "patties/cook",
      "patties/plate",
      "salad/wash",
      "salad/dress",
    ]);
    expect(ids(log)).toEqual([
      "patties/shape",
      "patties/cook#1",
      "patties/cook#2",
      "patties/cook#3",
      "patties/plate",
      "salad/wash",
      "salad/dress",
    ]);
    expect(waysOf(log)).toMatchObject({ taken: "in a pan", chosen: { by: "cook" } });
    expect(sessionOf(log).focus).toEqual(sessionOf(begun).focus);
    expect(sessionOf(log).progress.get(taskId("patties/cook#2"))).toEqual({ state: "waiting" });
    expect(sheetAt(log, 1).readyAt).toBeGreaterThan(sheetAt(begun, 1).readyAt);
  });

  it("[K31] a wish for a batch that is gone is gone with it; other wishes stay", () => {
    const pan = give(begun, 1, cookThePatties("in a pan"));
    const session: Session = {
      ...sessionOf(pan),
      wishes: [taskId("patties/cook#1"), taskId("salad/wash")],
    };
    const happening = {
      type: "WayTaken",
      dish: dishId("patties"),
      step: stepId("cook"),
      way: "in the oven",
    } as const;
    const after = evolve(session, { seq: 9, at: at(2), command: "x", happening });
    expect(after?.wishes).toEqual(["salad/wash"]);
  });

  it.each<[string, MealLog, Order, string]>([
    [
      "is already planned so",
      begun,
      cookThePatties("in the oven"),
      "That is the plan already: cook in the oven.",
    ],
    ["has no such way", begun, cookThePatties("on the moon"), "The recipe names no such way: on the moon."],
    [
      "has one way only",
      begun,
      { type: "TakeWay", dish: dishId("patties"), step: stepId("shape"), way: "in a pan" },
      "The recipe names no such way: in a pan.",
    ],
    [
      "wants what is not there",
      begun,
      cookThePatties("on the grill"),
      'In the patties, "cook" needs a grill, and this kitchen has none.',
    ],
    [
      "is running",
      pattiesEvening([5, done("patties/shape")], [6, { type: "StartTask", task: taskId("patties/cook") }]),
      cookThePatties("in a pan"),
      "Too late for another way. You have begun to cook in the oven.",
    ],
    [
      "has a batch behind it",
      pattiesEvening(
        [1, cookThePatties("in a pan")],
        [5, done("patties/shape")],
        [6, { type: "StartTask", task: taskId("patties/cook#1") }],
        [30, done("patties/cook#1")],
      ),
      cookThePatties("in the oven"),
      "Too late for another way. You have begun to cook in a pan.",
    ],
  ])("[K32] is refused with a sentence where it %s", (_, log, order, said) => {
    expect(refused(log, 31, order)).toBe(said);
  });

  it("[K33] undo brings the planner's choice back with its reason", () => {
    const log = give(give(begun, 1, cookThePatties("in a pan")), 2, { type: "UndoLast" });
    expect(waysOf(log)).toEqual(waysOf(begun));
    expect(ids(log)).toEqual(ids(begun));
  });

  it("[K34] a step that was called and not yet set going is called anew in its other way", () => {
    const called = pattiesEvening(
      [5, done("patties/shape")],
      [6, { type: "ChooseTask", task: taskId("patties/cook") }],
    );
    expect(sessionOf(called).focus?.task).toBe("patties/cook");
    const log = give(called, 7, cookThePatties("in a pan"));
    expect(log.events.slice(-2).map(({ happening }) => happening)).toMatchObject([
      { type: "WayTaken" },
      { type: "TaskCalled", task: "patties/cook#1" },
    ]);
  });

  it("[K35] orders and events about ways are read back as they were written, and a replay is exact", () => {
    const order = cookThePatties("in a pan");
    expect(parseOrder(JSON.parse(JSON.stringify(order)))).toEqual({ ok: true, value: order });
    const log = pattiesEvening([1, order], [5, done("patties/shape")], [6, cookThePatties("in the oven")]);
    const read = log.events.map((event) => {
      const parsed = parseEvent(JSON.parse(JSON.stringify(event)));
      if (!parsed.ok) throw new Error(parsed.error);
      return parsed.value;
    });
    expect(appendEvents(emptyLog, read).session).toEqual(log.session);
    expect(parseOrder({ ...order, way: "" }).ok).toBe(false);
  });

  it("[K36] what the cook chose stays through what comes after it", () => {
    const log = pattiesEvening(
      [1, cookThePatties("in a pan")],
      [2, { type: "SetServing", serveAt: at(200) }],
      [5, done("patties/shape")],
      [6, { type: "Tick" }],
    );
    expect(waysOf(log)?.taken).toBe("in a pan");
    expect(outcome(log, 7, cookThePatties("in the oven"))).toMatchObject([{ type: "WayTaken" }]);
  });
});

describe("the first words of an evening", () => {
  const first = (log: MealLog, minute: number) =>
    toSay(cuesAt(sessionOf(log), sheetAt(log, minute), at(minute)), nothingSaid, at(minute)).map(
      ({ say }) => say,
    );

  it("[K37] tell the way that the planner chose, and why, in one sentence before the first call", () => {
    const [way, ...calls] = first(pattiesEvening(), 0);
    expect(way).toMatch(
      /^Planned: cook in the oven, for all six patties go in at once, and dinner is ready .*\.$/,
    );
    expect(way?.match(/\./g)).toHaveLength(1);
    expect((way ?? "").split(" ").length).toBeLessThanOrEqual(25);
    expect(calls).toContain("Patties: Now shape.");
  });

  it("[K37] tell it once, and not to whom comes later", () => {
    const log = pattiesEvening();
    const cues = cuesAt(sessionOf(log), sheetAt(log, 0), at(0));
    const said = afterSaying(nothingSaid, cues, at(0));
    expect(
      toSay(cuesAt(sessionOf(log), sheetAt(log, 2), at(2)), said, at(2)).map(({ key }) => key),
    ).not.toContain("way");
    expect(first(log, 3).join()).not.toContain("Planned");
  });

  it("[K37] tell nothing where nothing was chosen, or where the cook has chosen", () => {
    expect(first(evening(), 0).join()).not.toContain("Planned");
    expect(first(pattiesEvening([0, cookThePatties("in a pan")]), 0).join()).not.toContain("Planned");
    const asWritten = give(emptyLog, 0, { type: "BeginMeal", meal: pattiesMeal, serveAt: null });
    expect(first(asWritten, 0).join()).not.toContain("Planned");
  });
});
