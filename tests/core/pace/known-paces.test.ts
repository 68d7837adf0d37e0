import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { MealEvent } from "../../../core/cook/events.ts";
import { appendEvents, emptyLog } from "../../../core/cook/fold.ts";
import type { Order } from "../../../core/cook/orders.ts";
import { knownPaces, pacesFor, readEvening } from "../../../core/pace/known-paces.ts";
import type { KnownPace, WorkKind } from "../../../core/pace/pace.ts";
import { timesOf } from "../../../core/pace/pace.ts";
import { days, instant, plus } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { at, give, supper, task } from "../cook/supper.ts";

/** An evening so many days on, in which every hands-on step takes `times` as long as its recipe says. */
function cooked(
  day: number,
  times: number,
  ...orders: readonly (readonly [number, Order])[]
): readonly MealEvent[] {
  const finish = (minute: number, of: (typeof task)[keyof typeof task]) =>
    [minute * times, { type: "FinishTask", task: of }] as const;
  const begun = give(emptyLog, 0, { type: "BeginMeal", meal: supper, serveAt: null });
  const { events } = [finish(5, task.halve), finish(10, task.wash), ...orders].reduce(
    (log, [minute, order]) => give(log, minute, order),
    begun,
  );
  return events.map((event) => ({ ...event, at: plus(event.at, days(day)) }));
}

const known = (evenings: readonly (readonly MealEvent[])[], forgottenAt: Instant | null = null) =>
  knownPaces(evenings.map(readEvening), forgottenAt);
const of = (paces: readonly KnownPace[], kind: WorkKind): KnownPace | undefined =>
  paces.find((pace) => pace.kind === kind);
const slow = [0, 1, 2, 3, 4, 5].map((day) => cooked(day, 1.5));
const asWritten = { times: 1, steps: 0, evenings: 0, wish: null };
const moment = (day: number): Instant => plus(at(-300), days(day));
const set = (kind: WorkKind, wish: KnownPace["wish"]): readonly [number, Order] => [
  30,
  { type: "SetPace", kind, wish },
];

describe("what is known of a cook's pace", () => {
  it("[P93] six evenings of one step each, each a half longer, tell so", () => {
    // exp(ln 1.5 * 6 / 11) = 1.2475
    expect(of(known(slow), "cutting")).toEqual({
      kind: "cutting",
      times: 1.25,
      steps: 6,
      evenings: 6,
      wish: null,
    });
    expect(of(known(slow), "mixing")).toEqual({ kind: "mixing", ...asWritten });
  });

  it("[P93] a meal that was ended and begun again the same evening is no second evening", () => {
    const again = slow.map((events) =>
      events.map((event) => ({ ...event, at: instant(event.at - 86_400_000 * 3) })),
    );
    const oneDay = slow.map((_, index) => cooked(0, 1.5 + index / 100));
    expect(of(known(oneDay), "cutting")).toEqual({
      kind: "cutting",
      times: 1,
      steps: 6,
      evenings: 1,
      wish: null,
    });
    expect(of(known(again), "cutting")?.evenings).toBe(6);
  });

  it("[P94] the order of the evenings does not matter, nor does one out of the way", () => {
    const evenings = [...slow, cooked(9, 4.9)];
    fc.assert(
      fc.property(fc.shuffledSubarray(evenings, { minLength: evenings.length }), (shuffled) => {
        expect(known(shuffled)).toEqual(known(evenings));
      }),
    );
    const difference =
      (of(known(evenings), "cutting")?.times ?? 0) - (of(known(slow), "cutting")?.times ?? 0);
    expect(Math.abs(difference)).toBeLessThanOrEqual(0.03);
  });

  it("[P95] what the cook says wins over what was learnt, and goes on from evening to evening", () => {
    const paces = known([...slow, cooked(6, 1.5, set("cutting", "faster"), set("washing", "slower"))]);
    expect(paces.map(timesOf)).toEqual([1.3, 0.85, 1, 1, 1, 1, 1]);
    // The next evening begins with it, and is all that is read of it.
    const next = cooked(7, 1, set("washing", null));
    const begun: MealEvent["happening"] = { type: "PaceKnown", paces: pacesFor(supper, paces) };
    const carried = next.map((event, index) => (index === 1 ? { ...event, happening: begun } : event));
    expect(known([carried]).map(({ wish }) => wish)).toEqual([null, "faster", null, null, null, null, null]);
  });

  it("[P95] what was said and taken back was not said", () => {
    expect(
      of(known([cooked(0, 1, set("cutting", "faster"), [31, { type: "UndoLast" }])]), "cutting")?.wish,
    ).toBeNull();
  });

  it("[P95] at the stove nothing is planned shorter than the recipe has it", () => {
    expect(timesOf({ kind: "stove", ...asWritten, times: 0.7 })).toBe(1);
    expect(timesOf({ kind: "stove", ...asWritten, wish: "faster" })).toBe(1);
    expect(timesOf({ kind: "stove", ...asWritten, times: 1.2 })).toBe(1.2);
  });

  it("[P95] once forgotten, everything is as the recipes say; what comes later counts anew", () => {
    const before = [...slow, cooked(6, 1.5, set("cutting", "faster"))];
    const all = (paces: readonly KnownPace[]) => paces.map(({ kind: _, ...rest }) => rest);
    const nothing = Array(7).fill(asWritten);
    expect(all(known(before, moment(8)))).toEqual(nothing);
    expect(all(known([...before, cooked(7, 1.5, [40, { type: "ForgetPace" }])]))).toEqual(nothing);
    const after = [10, 11, 12, 13, 14, 15].map((day) => cooked(day, 0.8));
    const forgotten = [...before, cooked(7, 1.5, [40, { type: "ForgetPace" }]), ...after];
    expect(known(forgotten)).toEqual(known(after));
    expect(of(known(after), "cutting")?.times).toBe(0.89);
  });

  it("[P95] to forget can be taken back", () => {
    const forgotten = cooked(6, 1.5, [40, { type: "ForgetPace" }], [41, { type: "UndoLast" }]);
    expect(known([...slow, forgotten])).toEqual(known([...slow, cooked(6, 1.5)]));
  });

  it("[P91] each of a meal's hands-on steps has one pace, and nothing else has", () => {
    const named = pacesFor(supper, known([])).flatMap(({ kind, of: steps }) =>
      steps.map((step) => [kind, step]),
    );
    expect(named).toEqual([
      ["washing", "greens/wash"],
      ["cutting", "squash/halve"],
      ["mixing", "squash/mash"],
      ["plating", "greens/dress"],
    ]);
  });

  it("[P93] a log in which nothing happened tells nothing", () => {
    expect(known([[], appendEvents(emptyLog, []).events])).toEqual(known([]));
  });
});
