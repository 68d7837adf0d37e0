import { describe, expect, it } from "vitest";
import { minutes } from "../../../core/units/quantity.ts";
import { dishOf } from "./bean-pot.ts";

const degrees = (figure: number): unknown => ({ degrees: figure, scale: "F" });

/** Each figure below: common practice, no source. The format must be able to say it. */
describe("what kitchens commonly do can be written down", () => {
  it("[R16] corn on the cob boils about 15 minutes and cools before it is cut", () => {
    const dish = dishOf(`dish: Corn
about: Corn cut from the cob.
yield: 4
ingredients:
  corn: 4 ears
steps:
  boil-the-corn: { do: Lower the corn into the boiling water., with: corn, hands: off, time: 15 min, needs: { burner: 1 } }
  cool-the-corn: { do: Lift the corn out and let it cool., hands: off, time: 10-20 min, until: you can hold it }
  cut-the-corn:
    do: Cut the kernels from the cobs.
    time: 5 min
    after: { cool-the-corn: at least 1 min }
`);
    expect(dish.steps.map(({ time, hands, after }) => ({ time, hands, after }))).toEqual([
      { time: { low: minutes(15), high: minutes(15) }, hands: "off", after: [] },
      {
        time: { low: minutes(10), high: minutes(20) },
        hands: "off",
        after: [{ step: "boil-the-corn", atLeast: 0, atMost: null }],
      },
      {
        time: { low: minutes(5), high: minutes(5) },
        hands: "on",
        after: [{ step: "cool-the-corn", atLeast: minutes(1), atMost: null }],
      },
    ]);
  });

  it("[R16] a halved winter squash roasts about an hour at 365 F", () => {
    const dish = dishOf(`dish: Squash
about: Winter squash.
yield: 2 halves
ingredients:
  squash: 1, halved
steps:
  roast-the-squash:
    do: Lay the halves cut side down in the oven.
    with: squash
    hands: off
    time: 55 min - 1 h 5 min
    until: a knife slides in without pushing
    needs: { oven: 365 F }
`);
    expect(dish.steps[0]).toMatchObject({
      time: { low: minutes(55), high: minutes(65) },
      until: "a knife slides in without pushing",
      needs: [{ kind: "oven", heat: { low: degrees(365), high: degrees(365) }, racks: 1 }],
    });
  });

  it("[R16] potato patties take 10 to 15 minutes a side between 350 and 385 F, and 2 to 3 more, never more than 5", () => {
    const side = (name: string, what: string, after: string): string => `  ${name}:
    do: ${what}
    hands: off
    time: 10-15 min
    until: the side is brown and lets go of the tray
    latest: hard
    extend: 2-3 min, at most 5 min
    batch: 8 patties, 3 at a time
    needs: { oven: 350-385 F }
    after: ${after}
`;
    const dish = dishOf(`dish: Patties
about: Patties of grated potato.
yield: 4 pairs
ingredients:
  potatoes: 1 1/2 lb, grated
steps:
  shape-the-patties: { do: Press the potato into patties., with: potatoes, time: 10 min }
${side("bake-one-side", "Bake the first side.", "shape-the-patties")}${side("bake-the-other", "Flip them at once and bake the other side.", "{ bake-one-side: at once }")}`);
    const expected = {
      time: { low: minutes(10), high: minutes(15) },
      latest: "hard",
      extend: { by: { low: minutes(2), high: minutes(3) }, atMost: minutes(5) },
      batch: { of: 8, holds: 3, pieces: "patties" },
      needs: [{ kind: "oven", heat: { low: degrees(350), high: degrees(385) }, racks: 1 }],
    };
    expect(dish.steps.slice(1)).toEqual([
      expect.objectContaining(expected),
      expect.objectContaining(expected),
    ]);
    expect(dish.steps[2]?.after).toEqual([{ step: "bake-one-side", atLeast: 0, atMost: 0 }]);
  });

  it("[R16] a sauce thickened with starch simmers 10 to 15 minutes under a spoon", () => {
    const dish = dishOf(`dish: Sauce
about: A thick sauce.
yield: 2 cups
ingredients:
  stock: 2 cups
  starch: { item: corn starch, amount: 2 tbsp }
steps:
  stir-the-starch: { do: Stir the starch into a little of the cold stock., with: { starch, stock: 1/4 cup }, time: 1 min }
  simmer-the-sauce:
    do: Stir it into the rest of the stock and simmer.
    with: stock
    hands: off
    time: 10-15 min
    attend: { every 2 min: Stir the sauce., 3 min before the end: Taste the sauce. }
    needs: { burner: 1 }
    after: { stir-the-starch: at most 5 min }
`);
    expect(dish.steps[1]).toMatchObject({
      uses: [{ ingredient: "stock", amount: { low: "7/4", high: "7/4", unit: "cup" } }],
      time: { low: minutes(10), high: minutes(15) },
      attend: [
        { kind: "every", every: minutes(2) },
        { kind: "before-end", before: minutes(3) },
      ],
    });
  });
});
