import { describe, expect, it } from "vitest";
import { BEAN_POT, complaints, dishOf, spoilt } from "./bean-pot.ts";

const inSystem = (measures: string, text = BEAN_POT): string =>
  spoilt(text, "yield: 4 bowls\n", `yield: 4 bowls\nmeasures: ${measures}\n`);

const SWAPPED = spoilt(
  BEAN_POT,
  "{ item: cooked beans, amount: 3 cups }",
  "{ item: cooked beans, amount: 3 cups, swaps: [{ use: peas, amount: 2 cups, changes: { water: 1 pint } }] }",
);

describe("a dish in other measures", () => {
  it.each([
    ["imperial", "imperial-cup", "imperial-pint"],
    ["australian", "metric-cup", "imperial-pint"],
    ["us", "cup", "pint"],
  ])("[R52] in %s ones, list, steps and swaps are read so", (measures, cup, pint) => {
    const dish = dishOf(inSystem(measures, SWAPPED));
    const [beans, greens, water] = dish.ingredients;
    expect([beans?.amount, greens?.amount, water?.amount]).toMatchObject([
      { low: "3/1", unit: cup },
      { unit: "bunch" },
      { low: "2/1", unit: cup },
    ]);
    expect(beans?.swaps[0]).toMatchObject({ amount: { unit: cup }, changes: [{ amount: { unit: pint } }] });
    expect(dish.steps[1]?.uses.map(({ amount }) => amount)).toMatchObject([
      { low: "3/1", unit: cup },
      { low: "3/2", unit: cup },
    ]);
    expect(dish.steps[2]?.uses.find(({ ingredient }) => ingredient === "water")?.amount).toMatchObject({
      low: "1/2",
      unit: cup,
    });
  });

  it("[R52] a line that says whose measure it is means that one", () => {
    const dish = dishOf(inSystem("australian", BEAN_POT.replaceAll("cups", "label cups")));
    expect(dish.ingredients[0]?.amount).toMatchObject({ unit: "label-cup" });
  });

  it("[R52] a measure that the system does not have is told, and so is a system that is none", () => {
    expect(
      complaints(inSystem("metric", BEAN_POT.replaceAll("water: 2 cups", "water: 2 pints"))),
    ).toContainEqual([
      9,
      "ingredients.water",
      "There is no metric pint; write milliliters, or whose pint it is, like imperial pint.",
    ]);
    expect(complaints(inSystem("roman"))).toEqual([
      [5, "measures", '"measures" cannot be "roman"; write us, imperial, australian or metric.'],
    ]);
  });
});
