import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { axisFlags } from "../../../client/ui/evening/axis-flags.ts";
import { chainOf, drawnEvening } from "../../../client/ui/evening/drawn-evening.ts";
import type { DrawnEvening } from "../../../client/ui/evening/drawn-evening.ts";
import type { Extent } from "../../../client/ui/evening/evening-layout.ts";
import { sayBar, sayEvening } from "../../../client/ui/evening/evening-words.ts";
import { fitTitle } from "../../../client/ui/evening/lane-text.ts";
import { acrossOf } from "../../../client/ui/evening/picture-size.ts";
import { taskId } from "../../../core/plan/model.ts";
import type { TaskId } from "../../../core/plan/model.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { at, dish, handsOn, mins } from "../../core/plan/small-meals.ts";
import { clockOf, eveningAt, twoPots } from "./two-pots.ts";
import type { Ordered } from "./two-pots.ts";

const chop = taskId("stew/chop-the-roots");
const simmer = taskId("stew/simmer-the-stew");
const cut = taskId("salad/cut-the-radishes");
const finished = (minute: number, task: TaskId): Ordered => [minute, { type: "FinishTask", task }];
const started = (minute: number, task: TaskId): Ordered => [minute, { type: "StartTask", task }];

function drawn(extent: Extent, minute = 0, ...orders: readonly Ordered[]): DrawnEvening {
  const known = eveningAt(minute, twoPots, null, ...orders);
  return drawnEvening(known, chainOf(known), extent);
}
const barsOf = ({ evening }: DrawnEvening, lane: string) =>
  evening.lanes.find(({ name }) => name === lane)?.bars ?? [];

describe("the picture of the evening", () => {
  it("[W65] it marks what dinner waits for, to the moment when all is ready", () => {
    // By hand: chopping takes until 5:05, the stew simmers until 5:35; nothing else takes as long.
    const { evening } = drawn("whole");
    expect(evening.chain).toEqual([chop, simmer]);
    expect(evening.readyAt).toBe(at(35));
    const awaited = evening.lanes.flatMap(({ bars }) => bars.filter((bar) => bar.awaitedTo !== null));
    expect(awaited.map(({ task, awaitedTo }) => [task, awaitedTo])).toEqual([
      [chop, at(5)],
      [simmer, at(35)],
    ]);
  });

  it("[W65] of what runs by itself only the putting on is waited for where the next one needs no more", () => {
    // By hand: chopping until 5:05, a minute to put the pot on, then kneading until 5:46; the stew is ready before.
    const dishes = [twoPots[0], dish("loaf", [handsOn("knead-the-dough", mins(40))])].flatMap(
      (one) => one ?? [],
    );
    const known = eveningAt(0, dishes, null);
    const { evening } = drawnEvening(known, chainOf(known), "whole");
    const bars = new Map(evening.lanes.flatMap((lane) => lane.bars.map((bar) => [bar.task, bar])));
    expect(evening.chain).toEqual([chop, simmer, "loaf/knead-the-dough"]);
    expect([bars.get(simmer)?.to, bars.get(simmer)?.awaitedTo, evening.readyAt]).toEqual([
      at(35),
      at(6),
      at(46),
    ]);
    const said = [simmer, chop].flatMap((task) => bars.get(task) ?? []).map((bar) => sayBar(bar, clockOf));
    expect(said).toEqual([
      "simmer the stew, to come, Stew, 5:05 pm to 5:35 pm, dinner waits for its beginning",
      "chop the roots, in hand, Stew, 5:00 pm to 5:05 pm, dinner waits for it",
    ]);
  });

  it("[W65] what is done is not waited for any more", () => {
    const { evening } = drawn("whole", 6, finished(5, chop), started(5, simmer));
    const awaited = evening.lanes.flatMap(({ bars }) => bars.filter((bar) => bar.awaitedTo !== null));
    expect(awaited.map(({ task }) => task)).toEqual([simmer]);
  });

  it("[W66] a step's tail is how much later it may start; what runs or is over has none", () => {
    // By hand: chopping takes until 5:05 and putting the pot on a minute; the radishes take 5 and are wanted at 5:35.
    const radishes = barsOf(drawn("whole"), "cook").find(({ task }) => task === cut);
    expect([radishes?.from, radishes?.slack]).toEqual([at(6), minutes(24)]);
    const later = drawn("whole", 6, finished(5, chop), started(5, simmer));
    const slack = new Map(
      later.evening.lanes.flatMap(({ bars }) => bars.map((bar) => [bar.task, bar.slack])),
    );
    expect([slack.get(chop), slack.get(simmer)]).toEqual([0, 0]);
  });

  it("[W70] the small one begins a quarter of an hour back, without lanes that nothing is on", () => {
    const orders = [finished(5, chop), started(5, simmer), finished(10, cut)] as const;
    const whole = drawn("whole", 30, ...orders);
    const ahead = drawn("ahead", 30, ...orders);
    expect([whole.evening.from, ahead.evening.from]).toEqual([at(0), at(15)]);
    expect(barsOf(whole, "cook").length).toBe(2);
    expect(ahead.evening.lanes.map(({ name, bars }) => [name, bars.length])).toEqual([
      ["cook", 0],
      ["oven", 0],
      ["burner 1", 1],
    ]);
    const x = acrossOf(ahead.evening, {
      width: 500,
      rowHeight: 17,
      gutter: 60,
      axis: 20,
      heat: 13,
      text: 13,
      title: null,
    });
    expect([x(at(5)), x(at(15))]).toEqual([60, 60]);
  });

  it("[W68] now, ready and the time asked for stand side by side inside the picture", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 300 }),
        fc.integer({ min: 0, max: 300 }),
        fc.option(fc.integer({ min: 0, max: 300 })),
        fc.integer({ min: 300, max: 1400 }),
        (now, ready, asked, width) => {
          const { evening } = drawn("whole");
          const end = Math.max(now, ready, asked ?? 0) + 3;
          const moved = {
            ...evening,
            now: at(now),
            readyAt: at(ready),
            serveAt: asked === null ? null : at(asked),
            to: at(end),
          };
          const size = { width, rowHeight: 17, gutter: 60, axis: 20, heat: 13, text: 13, title: null };
          const flags = axisFlags(moved, acrossOf(moved, size), size, clockOf, "now");
          const edges = flags.flatMap(({ left, width: wide }) => [left, left + wide]);
          expect(edges).toEqual(edges.toSorted((a, b) => a - b));
          expect(edges[0]).toBeGreaterThanOrEqual(0);
          expect(edges.at(-1)).toBeLessThanOrEqual(width);
          const isOne = asked !== null && Math.abs(asked - ready) < 1.5;
          expect(flags.length).toBe(asked === null || isOne ? 2 : 3);
        },
      ),
    );
  });

  it("[W69] tells the same in words", () => {
    const { evening, heats } = drawn("whole");
    expect(sayEvening(evening, heats, clockOf)).toEqual([
      "It is 5:00 pm. Dinner is ready at 5:35 pm.",
      "Dinner waits for these, one after the other: Stew, chop the roots, 5:00 pm to 5:05 pm; Stew, simmer the stew, 5:05 pm to 5:35 pm.",
      "These can be put off: Salad, cut the radishes, may start twenty-four minutes later.",
      "The oven stays cold.",
    ]);
    expect(evening.lanes[0]?.bars.map((bar) => sayBar(bar, clockOf))).toEqual([
      "chop the roots, in hand, Stew, 5:00 pm to 5:05 pm, dinner waits for it",
      "cut the radishes, to come, Salad, 5:06 pm to 5:11 pm, may start twenty-four minutes later",
    ]);
  });

  it("[W69] says whether dinner is in time", () => {
    const said = (serveAt: number): string | undefined => {
      const known = eveningAt(0, twoPots, at(serveAt));
      const { evening, heats } = drawnEvening(known, chainOf(known), "whole");
      return sayEvening(evening, heats, clockOf)[0];
    };
    expect(said(60)).toMatch(/^It is 5:00 pm\. Dinner is ready at 5:\d\d pm, in time for 6:00 pm\.$/);
    expect(said(20)).toBe("It is 5:00 pm. Dinner is ready at 5:35 pm; you asked to eat at 5:20 pm.");
  });

  it("[W65] a title is set in whole words, cut where it must be, and left out where it would tell nothing", () => {
    expect(fitTitle("roast the carrots", 20, 1)).toEqual(["roast the carrots"]);
    expect(fitTitle("roast the carrots", 10, 2)).toEqual(["roast the", "carrots"]);
    expect(fitTitle("roast the carrots", 9, 1)).toEqual(["roast th…"]);
    expect(fitTitle("caramelise it", 8, 2)).toEqual(["caramel…"]);
    expect(fitTitle("roast the carrots", 4, 2)).toEqual([]);
  });
});
