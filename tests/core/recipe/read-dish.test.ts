import { describe, expect, it } from "vitest";
import { minutes, seconds } from "../../../core/units/quantity.ts";
import { BEAN_POT, dishOf, spoilt } from "./bean-pot.ts";

const cups = (figure: string): unknown => ({ kind: "measured", low: figure, high: figure, unit: "cup" });
const stepOf = (text: string, id: string): unknown => dishOf(text).steps.find((step) => step.id === id);

describe("a dish as written", () => {
  it("[R1] a dish is read whole: names, yield, ingredients and steps with what they use", () => {
    const dish = dishOf(BEAN_POT);
    expect({
      ...dish,
      ingredients: dish.ingredients.length,
      steps: dish.steps.map((step) => step.id),
    }).toEqual({
      id: "pot",
      name: "Bean Pot",
      says: ["Bean Pot", "beans"],
      about: "Beans with greens.",
      cautions: [],
      yield: { servings: 4, of: "bowls" },
      ingredients: 4,
      steps: ["cut-the-greens", "boil-the-beans", "finish-the-pot"],
    });
    expect(dish.ingredients[1]).toEqual({
      id: "greens",
      item: "greens",
      amount: { kind: "measured", low: "1/1", high: "1/1", unit: "bunch" },
      preparation: "washed",
      food: null,
      weighs: null,
      optional: false,
      swaps: [],
    });
    expect(dish.steps[1]).toEqual({
      id: "boil-the-beans",
      title: "boil the beans",
      do: "Boil the beans in the first part of the water.",
      uses: [
        { ingredient: "beans", amount: cups("3/1") },
        { ingredient: "water", amount: cups("3/2") },
      ],
      hands: "off",
      time: { low: minutes(20), high: minutes(20) },
      until: null,
      latest: "soft",
      extend: null,
      attend: [{ kind: "every", every: minutes(5), within: minutes(1), do: "Stir the beans." }],
      needs: [{ kind: "burner", count: 1 }],
      after: [],
      batch: null,
      ahead: null,
      endsBeforeServing: null,
      hold: null,
      ways: null,
    });
  });

  it("[R2] an ingredient named without an amount is all that the other steps leave, exactly", () => {
    expect(stepOf(BEAN_POT, "finish-the-pot")).toMatchObject({
      uses: [
        { ingredient: "water", amount: cups("1/2") },
        { ingredient: "pepper", amount: { kind: "to-taste" } },
      ],
    });
    const spoons = spoilt(BEAN_POT, "water: 1 1/2 cups", "water: 5 tbsp");
    expect(stepOf(spoons, "finish-the-pot")).toMatchObject({ uses: [{ amount: cups("27/16") }, {}] });
  });

  it("[R3] a step comes after the step above it when it does not say otherwise", () => {
    const plain = spoilt(BEAN_POT, "    after: nothing\n", "");
    expect(stepOf(plain, "boil-the-beans")).toMatchObject({
      after: [{ step: "cut-the-greens", atLeast: 0, atMost: null }],
    });
    expect(dishOf(plain).steps[0]?.after).toEqual([]);
  });

  it.each<[string, number, number | null]>([
    ["at least 30 min", 1800, null],
    ["at most 10 min", 0, 600],
    ["at least 30 min and at most 2 h", 1800, 7200],
    ["at least 1 h and 20 min and at most 2 h", 4800, 7200],
    ["at once", 0, 0],
    ["any time", 0, null],
  ])('[R4] the lag "%s" is kept as its shortest and longest wait', (lag, atLeast, atMost) => {
    const text = spoilt(
      BEAN_POT,
      "after: [cut-the-greens, boil-the-beans]",
      `after: { boil-the-beans: ${lag} }`,
    );
    expect(stepOf(text, "finish-the-pot")).toMatchObject({
      after: [{ step: "boil-the-beans", atLeast, atMost }],
    });
  });

  it.each<[string, unknown]>([
    ["every 5 min", { kind: "every", every: 300, within: 60 }],
    ["every 5 min, within 2 min", { kind: "every", every: 300, within: 120 }],
    ["after 12 min", { kind: "at", after: 720, within: 60 }],
    ["3 min before the end", { kind: "before-end", before: 180, within: 60 }],
  ])('[R5] the attention moment "%s" is kept with how far it may slip', (when, moment) => {
    const text = spoilt(BEAN_POT, "every 5 min:", `${when}:`);
    expect(stepOf(text, "boil-the-beans")).toMatchObject({ attend: [moment] });
  });

  it.each<[string, unknown]>([
    ["{ burner: 2 }", [{ kind: "burner", count: 2 }]],
    [
      "{ oven: 350-385 F }",
      [
        {
          kind: "oven",
          racks: 1,
          heat: { low: { degrees: 350, scale: "F" }, high: { degrees: 385, scale: "F" } },
        },
      ],
    ],
    [
      "{ oven: 180 C on 2 racks }",
      [
        {
          kind: "oven",
          racks: 2,
          heat: { low: { degrees: 180, scale: "C" }, high: { degrees: 180, scale: "C" } },
        },
      ],
    ],
    [
      "{ appliance: [blender, kettle] }",
      [
        { kind: "appliance", name: "blender" },
        { kind: "appliance", name: "kettle" },
      ],
    ],
    ["{ bowl: wide dish, fridge: true }", [{ kind: "bowl", name: "wide dish" }, { kind: "fridge" }]],
  ])("[R6] a step needs %s from its start to its end", (needs, expected) => {
    expect(stepOf(spoilt(BEAN_POT, "{ burner: 1 }", needs), "boil-the-beans")).toMatchObject({
      needs: expected,
    });
  });

  it("[R7] batches, extension, making ahead, holding and serving at once are kept as written", () => {
    const text = spoilt(
      BEAN_POT,
      "    needs: { burner: 1 }\n",
      `    batch: 8 ladles, 3 at a time
    latest: hard
    extend: 2-3 min, at most 5 min
    ahead: 2 days
    hold: 20 min
    serve-within: at most 10 min
    until: they are soft
`,
    );
    expect(stepOf(text, "boil-the-beans")).toMatchObject({
      batch: { of: 8, holds: 3, pieces: "ladles" },
      latest: "hard",
      extend: { by: { low: minutes(2), high: minutes(3) }, atMost: minutes(5) },
      ahead: seconds(172_800),
      hold: minutes(20),
      endsBeforeServing: minutes(10),
      until: "they are soft",
    });
  });

  it("[R7] an extension without a ceiling ends with its longer figure", () => {
    const text = spoilt(BEAN_POT, "    needs: { burner: 1 }\n", "    extend: 1-2 min\n");
    expect(stepOf(text, "boil-the-beans")).toMatchObject({ extend: { atMost: minutes(2) } });
  });

  it("[R8] a swap carries its amount, its side effect and what else becomes another amount", () => {
    const text = spoilt(
      BEAN_POT,
      "  beans: { item: cooked beans, amount: 3 cups }\n",
      `  beans:
    item: cooked beans
    amount: 3 cups
    optional: true
    swaps:
      - use: dry lentils
        amount: 1 cup
        effect: Use a cup more water.
        changes: { water: 3 cups }
      - use: cooked chickpeas
`,
    );
    expect(dishOf(text).ingredients[0]).toMatchObject({
      optional: true,
      swaps: [
        {
          use: "dry lentils",
          amount: cups("1/1"),
          effect: "Use a cup more water.",
          changes: [{ ingredient: "water", amount: cups("3/1") }],
        },
        { use: "cooked chickpeas", amount: null, effect: null, changes: [] },
      ],
    });
  });

  it("[R1] a sentence written over several lines is one sentence", () => {
    const text = spoilt(BEAN_POT, "do: Cut the greens.", "do: >\n      Cut the\n      greens.\n");
    expect(stepOf(text, "cut-the-greens")).toMatchObject({ do: "Cut the greens." });
  });
});
