import { describe, expect, it } from "vitest";
import { plan } from "../../../core/plan/plan.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { faultsOf } from "./check-sheet.ts";
import {
  after,
  appliance,
  at,
  burner,
  dish,
  evening,
  handsOff,
  handsOn,
  kitchen,
  mins,
  oven,
} from "./small-meals.ts";

describe("what cannot be", () => {
  it("[P24] a circle of steps still gives a sheet, and one sentence names the two", () => {
    const circle = dish("circle", [
      handsOn("chop", mins(5), { after: [after("fry")] }),
      handsOn("fry", mins(5), { after: [after("chop")] }),
    ]);
    const sheet = plan(evening([circle]));
    expect(sheet.entries).toHaveLength(2);
    expect(sheet.broken).toEqual([
      'In the circle, "fry" and "chop" each wait for the other, so I let "chop" go first.',
    ]);
  });

  it("[P25] a maximum lag shorter than what must happen in between is told, and the rest is planned", () => {
    const bread = dish("bread", [
      handsOn("mix", mins(10)),
      handsOff("rest", mins(30), { after: [after("mix")] }),
      handsOn("bake", mins(5), { after: [after("rest"), after("mix", 0, 10)] }),
    ]);
    const sheet = plan(evening([bread]));
    expect(sheet.broken).toEqual([
      'In the bread, "bake" should follow "mix" within ten minutes, but what comes between takes half an hour.',
    ]);
    expect(sheet.entries.map((one) => one.start)).toEqual([at(0), at(10), at(40)]);
  });

  it("[P35] limits that contradict one another only together: one is let go and told", () => {
    // Half an hour after the batter, with no more than twenty-two minutes of waiting on the way there.
    const fritters = dish("fritters", [
      handsOn("stir", mins(5)),
      handsOn("fry", mins(5), { after: [after("stir", 0, 10)] }),
      handsOn("crisp", mins(5), { after: [after("stir", 30), after("fry", 0, 12)] }),
    ]);
    const input = evening([fritters]);
    const sheet = plan(input);
    expect(faultsOf(input, sheet)).toEqual([]);
    expect(sheet.broken[0]).toBe(
      'In the fritters, "crisp" should follow "fry" within twelve minutes, but that cannot be: not with "fry" soon after "stir".',
    );
  });

  it("[P26] what the kitchen has not got is told, one sentence for each, and planned all the same", () => {
    const bare = { burners: 1, ovens: [], appliances: [] };
    const wild = dish("wild", [
      handsOff("fry", mins(5), { needs: [{ kind: "burner", count: 2 }] }),
      handsOff("roast", mins(5), { needs: [oven(400)] }),
      handsOn("blend", mins(5), { needs: [appliance("blender")] }),
    ]);
    const sheet = plan(evening([wild], {}, bare));
    expect(sheet.entries).toHaveLength(3);
    expect(sheet.broken).toEqual([
      'In the wild, "fry" needs 2 burners, and this kitchen has 1.',
      'In the wild, "roast" needs an oven, and this kitchen has none.',
      'In the wild, "blend" needs a blender, and this kitchen has none.',
    ]);
  });

  it("[P26] a heat beyond the oven, and more racks than it has, are told", () => {
    const hot = dish("hot", [
      handsOff("char", mins(5), { needs: [oven(600)] }),
      handsOff("dry", mins(5), { needs: [oven(200, 200, 3)] }),
    ]);
    expect(plan(evening([hot])).broken).toEqual([
      'In the hot, "char" needs six hundred degrees, hotter than this oven goes.',
      'In the hot, "dry" needs 3 oven racks, and there are 2.',
    ]);
  });

  it("[P27] hot food that has to wait too long is told, and does not stop the plan", () => {
    const first = dish("first", [handsOn("fry", mins(20), { hold: minutes(5) })]);
    const second = dish("second", [handsOn("fry", mins(20), { hold: minutes(5) })]);
    expect(plan(evening([first, second])).broken).toEqual([
      'What comes of "fry" for the first waits twenty minutes, and keeps only five minutes.',
    ]);
  });

  it("[P28] a meal without steps is ready now", () => {
    expect(plan(evening([dish("nothing", [])]))).toEqual({
      entries: [],
      ovenMoves: [],
      readyAt: at(0),
      late: 0,
      broken: [],
    });
  });

  it("[P28] two hundred steps come back in a moment, none of them lost", () => {
    const long = Array.from({ length: 10 }, (_, index) =>
      dish(
        `long-${index}`,
        Array.from({ length: 20 }, (_unused, step) =>
          step % 3 === 0
            ? handsOff(`s${step}`, mins(5, 15), {
                needs: [burner],
                after: step === 0 ? [] : [after(`s${step - 1}`, 0, 30)],
              })
            : handsOn(`s${step}`, mins(2), { after: [after(`s${step - 1}`)] }),
        ),
      ),
    );
    const began = performance.now();
    const input = evening(long, {}, { ...kitchen, burners: 4 });
    const sheet = plan(input);
    expect(faultsOf(input, sheet)).toEqual([]);
    expect(sheet.entries).toHaveLength(200);
    expect(performance.now() - began).toBeLessThan(10_000);
  });
});
