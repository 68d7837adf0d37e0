import { describe, expect, it } from "vitest";
import { outlookOf, triangular } from "../../../core/plan/on-time.ts";
import { plan } from "../../../core/plan/plan.ts";
import { inMinutes, instant, between } from "../../../core/units/quantity.ts";
import {
  after,
  at,
  dish,
  evening,
  five,
  handsOff,
  handsOn,
  harvestSupper,
  mins,
  oven,
} from "./small-meals.ts";

const many = { seed: 1, evenings: 4000 };
const inMinutesAfter = (moment: ReturnType<typeof at>): number => inMinutes(between(five, moment));

describe("a draw from the triangular distribution", () => {
  // Evans, Hastings & Peacock, Statistical Distributions (from memory): the mean is a third of the three figures' sum,
  // the variance (a² + b² + c² - ab - ac - bc) / 18, the distribution function 1 - (b - x)² / ((b - a)(b - c)) past c.
  it("[P70] has the mean and the variance that the handbook gives", () => {
    const [low, likely, high] = [10, 12, 20];
    const draws = Array.from({ length: 20_000 }, (_, index) =>
      triangular(low, likely, high, (index + 0.5) / 20_000),
    );
    const mean = draws.reduce((sum, value) => sum + value, 0) / draws.length;
    const variance = draws.reduce((sum, value) => sum + (value - mean) ** 2, 0) / draws.length;
    expect(mean).toBeCloseTo((low + likely + high) / 3, 2);
    const squares = low ** 2 + likely ** 2 + high ** 2;
    expect(variance).toBeCloseTo((squares - low * likely - low * high - likely * high) / 18, 2);
  });

  it("[P70] is the figure itself where there is but one", () => {
    expect(triangular(7, 7, 7, 0.3)).toBe(7);
  });
});

describe("the outlook of a sheet", () => {
  const simmer = evening([dish("soup", [handsOff("simmer", mins(10, 20))])]);

  it.each([
    [15, 0.5],
    [17.5, 1 - (20 - 17.5) ** 2 / (10 * 5)],
    [20, 1],
    [9, 0],
  ])(
    "[P70] one unattended step of 10 to 20 minutes is over after %s with the chance of the handbook",
    (serve, chance) => {
      const { onTime } = outlookOf({ ...simmer, serveAt: at(serve) }, plan(simmer), many);
      expect(onTime).toBeCloseTo(chance, 1);
    },
  );

  it("[P71] tells no chance where no time was asked for, and when dinner comes all the same", () => {
    const { onTime, readyAt } = outlookOf(simmer, plan(simmer), many);
    expect(onTime).toBeNull();
    expect(inMinutesAfter(readyAt.early)).toBeCloseTo(10 + Math.sqrt(0.1 * 10 * 5), 0);
    expect(inMinutesAfter(readyAt.middle)).toBeCloseTo(15, 0);
    expect(inMinutesAfter(readyAt.late)).toBeCloseTo(20 - Math.sqrt(0.1 * 10 * 5), 0);
  });

  it("[P71] is the same for the same seed", () => {
    const input = evening(harvestSupper, { serveAt: at(110) });
    const once = outlookOf(input, plan(input), { seed: 3, evenings: 50 });
    expect(outlookOf(input, plan(input), { seed: 3, evenings: 50 })).toEqual(once);
    expect(outlookOf(input, plan(input), { seed: 4, evenings: 50 })).not.toEqual(once);
  });

  it("[P72] one pair of hands does one thing after another: two jobs never take as long as one", () => {
    const alone = evening([dish("a", [handsOn("chop", mins(10, 20))])]);
    const both = evening([
      dish("a", [handsOn("chop", mins(10, 20))]),
      dish("b", [handsOn("grate", mins(10, 20))]),
    ]);
    const one = outlookOf(alone, plan(alone), many).readyAt.middle;
    const two = outlookOf(both, plan(both), many).readyAt.middle;
    expect(inMinutesAfter(two)).toBeGreaterThan(1.9 * inMinutesAfter(one));
  });

  it("[P72] what waits for a slow step waits, and the oven is turned only when it is free", () => {
    const roast = (id: string, heat: number) =>
      dish(id, [handsOff("bake", mins(20, 40), { needs: [oven(heat)] })]);
    const input = evening([roast("a", 350), roast("b", 425)]);
    const sheet = plan(input);
    const { readyAt } = outlookOf(input, sheet, many);
    const [first, second] = sheet.entries;
    if (first === undefined || second === undefined) throw new Error("two bakings were planned");
    // The second goes in when the first is out and the oven turned; later by what the first may run over.
    expect(readyAt.early).toBeGreaterThan(second.start);
    expect(readyAt.late - sheet.readyAt).toBeGreaterThan(6 * 60_000);
    const chained = evening([
      dish("a", [handsOff("one", mins(10, 30)), handsOff("two", mins(5), { after: [after("one", 10)] })]),
    ]);
    const { early } = outlookOf(chained, plan(chained), many).readyAt;
    expect(inMinutesAfter(early)).toBeCloseTo(10 + Math.sqrt(0.1 * 20 * 10) + 10 + 5, 0);
  });

  it("[P73] in mid-meal what is done is done, and what runs ends no sooner than now", () => {
    const input = evening(harvestSupper, { now: at(30), serveAt: at(140) });
    const halve = input.tasks.find(({ id }) => id === "squash/halve")?.id;
    const roast = input.tasks.find(({ id }) => id === "squash/roast")?.id;
    if (halve === undefined || roast === undefined) throw new Error("the squash has both");
    const progress = new Map([
      [halve, { state: "done", startedAt: five, at: at(8) }],
      [roast, { state: "running", startedAt: at(9), span: mins(15) }],
    ] as const);
    const late = { ...input, progress };
    const { readyAt } = outlookOf(late, plan(late), { seed: 1, evenings: 100 });
    expect(readyAt.early).toBeGreaterThanOrEqual(instant(late.now));
  });
});
