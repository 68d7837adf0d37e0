import { describe, expect, it } from "vitest";
import { readPantry } from "../../../core/recipe/read-pantry.ts";
import type { PantryFile } from "../../../core/recipe/read-pantry.ts";
import { BEAN_POT, spoilt } from "./bean-pot.ts";

const KITCHEN = `kitchen: The shed
burners: 2
ovens:
  oven: { racks: 1, heats: 20 F a minute, cools: 5 F a minute, hottest: 450 F }
appliances: [blender]
`;
const MEAL = `meal: Shed Supper
about: Supper in the shed.
serve-at: "18:30"
kitchen: shed
dishes:
  bean-pot: 2
`;

function pantry(changes: Readonly<Record<string, string | null>> = {}) {
  const files: Readonly<Record<string, string | null>> = {
    "kitchens/shed.yaml": KITCHEN,
    "dishes/bean-pot.yaml": BEAN_POT,
    "meals/supper.yaml": MEAL,
    ...changes,
  };
  return readPantry(
    Object.entries(files).flatMap(([place, text]): PantryFile[] => {
      const [shelf, name = ""] = place.split("/");
      if (text === null || (shelf !== "kitchens" && shelf !== "dishes" && shelf !== "meals")) return [];
      return [{ shelf, name, text }];
    }),
  );
}

const told = (changes: Readonly<Record<string, string | null>>): readonly unknown[] =>
  pantry(changes).mistakes.map(({ file, line, field, sentence }) => [file, line, field, sentence]);

describe("a pantry", () => {
  it("[R17] a meal holds its dishes, servings, serving time and kitchen", () => {
    const { meals, dishes, mistakes } = pantry();
    expect(mistakes).toEqual([]);
    expect([...dishes.keys()]).toEqual(["bean-pot"]);
    expect(meals).toEqual([
      {
        id: "supper",
        name: "Shed Supper",
        about: "Supper in the shed.",
        dishes: [{ dish: "bean-pot", servings: 2 }],
        serveAt: 18 * 60 + 30,
        diets: [],
        kitchen: {
          burners: 2,
          ovens: [{ name: "oven", racks: 1, heats: 20, cools: 5, hottest: { degrees: 450, scale: "F" } }],
          appliances: ["blender"],
        },
      },
    ]);
  });

  it("[R17] a meal without a serving time is for as soon as possible", () => {
    expect(
      pantry({ "meals/supper.yaml": spoilt(MEAL, 'serve-at: "18:30"\n', "") }).meals[0]?.serveAt,
    ).toBeNull();
  });

  it("[R17] an oven that heats in Celsius degrees is kept in Fahrenheit degrees a minute", () => {
    const kitchen = spoilt(KITCHEN, "heats: 20 F a minute", "heats: 10 C a minute");
    expect(pantry({ "kitchens/shed.yaml": kitchen }).meals[0]?.kitchen.ovens[0]?.heats).toBe(18);
  });

  it("[R18] a file with a mistake takes nothing else with it", () => {
    const { dishes, meals, mistakes } = pantry({
      "dishes/broken.yaml": spoilt(BEAN_POT, "time: 20 min", "time: soon"),
      "meals/broken.yaml": "meal: [",
      "kitchens/broken.yaml": "",
    });
    expect([...dishes.keys()]).toEqual(["bean-pot"]);
    expect(meals.map(({ id }) => id)).toEqual(["supper"]);
    expect(mistakes.map(({ file }) => file)).toEqual([
      "kitchens/broken.yaml",
      "dishes/broken.yaml",
      "meals/broken.yaml",
    ]);
  });

  it("[R18] two dishes may not have one spoken name; the first keeps it", () => {
    const twin = spoilt(BEAN_POT, "dish: Bean Pot", "dish: BEAN-pot");
    expect(told({ "dishes/twin.yaml": twin })).toEqual([
      [
        "dishes/twin.yaml",
        1,
        "dish",
        '"BEAN-pot" is already the name of the dish in dishes/bean-pot.yaml; give one of them another name.',
      ],
    ]);
  });

  it("[R18] a file name that is no name is refused", () => {
    expect(told({ "dishes/Bean Pot 2.yaml": spoilt(BEAN_POT, "Bean Pot", "Another Pot") })).toEqual([
      [
        "dishes/Bean Pot 2.yaml",
        1,
        "",
        '"Bean Pot 2.yaml" cannot be a file name here; use lower-case words joined by hyphens, like lentil-soup.yaml.',
      ],
    ]);
  });
});

type Case = readonly [what: string, from: string, to: string, line: number, field: string, sentence: string];

const meals: readonly Case[] = [
  [
    "a dish that is not there",
    "bean-pot: 2",
    "bean-pit: 2",
    6,
    "dishes.bean-pit",
    'There is no dish "bean-pit"; did you mean "bean-pot"?',
  ],
  [
    "a dish that is like none",
    "bean-pot: 2",
    "omelet: 2",
    6,
    "dishes.omelet",
    'There is no dish "omelet"; there are bean-pot.',
  ],
  [
    "a kitchen that is not there",
    "kitchen: shed",
    "kitchen: sled",
    4,
    "kitchen",
    'There is no kitchen "sled"; did you mean "shed"?',
  ],
  [
    "no servings",
    "bean-pot: 2",
    "bean-pot: 0",
    6,
    "dishes.bean-pot",
    '"bean-pot" must be at least 1; write a larger number.',
  ],
  [
    "half past twenty-five",
    '"18:30"',
    '"25:30"',
    3,
    "serve-at",
    '"25:30" is not a time of day; write it like 18:30.',
  ],
  ["no dishes", "  bean-pot: 2\n", "  {}\n", 5, "dishes", "This meal has no dishes; name at least one."],
  [
    "an unknown key",
    "about:",
    "abuot: x\nabout:",
    2,
    "abuot",
    'There is no key "abuot" here; did you mean "about"?',
  ],
];

const needs: readonly Case[] = [
  [
    "more burners than there are",
    "{ burner: 1 }",
    "{ burner: 3 }",
    6,
    "dishes.bean-pot",
    'The step "boil the beans" of Bean Pot needs 3 burners and this kitchen has 2; leave the dish out or cook elsewhere.',
  ],
  [
    "more heat than the oven has",
    "{ burner: 1 }",
    "{ oven: 475-500 F }",
    6,
    "dishes.bean-pot",
    'The step "boil the beans" of Bean Pot needs 475°F and no oven here gets so hot; leave the dish out or cook elsewhere.',
  ],
  [
    "more racks than the oven has",
    "{ burner: 1 }",
    "{ oven: 400 F on 2 racks }",
    6,
    "dishes.bean-pot",
    'The step "boil the beans" of Bean Pot needs 2 oven racks and no oven here has so many; leave the dish out or cook elsewhere.',
  ],
  [
    "an appliance that is not there",
    "{ burner: 1 }",
    "{ appliance: steamer }",
    6,
    "dishes.bean-pot",
    'The step "boil the beans" of Bean Pot needs a steamer and this kitchen has none; leave the dish out or cook elsewhere.',
  ],
];

describe("a mistake in a meal", () => {
  it.each(meals)("[R19] %s is named with its line and field", (_, from, to, ...expected) => {
    expect(told({ "meals/supper.yaml": spoilt(MEAL, from, to) })).toEqual([
      ["meals/supper.yaml", ...expected],
    ]);
  });

  it.each(needs)("[R20] a step that needs %s cannot be done in this kitchen", (_, from, to, ...expected) => {
    const told1 = told({ "dishes/bean-pot.yaml": spoilt(BEAN_POT, from, to) });
    expect(told1).toEqual([["meals/supper.yaml", ...expected]]);
  });

  it("[R20] a kitchen without an oven bakes nothing", () => {
    const kitchen = KITCHEN.replace(/ovens:\n.*\n/, "");
    const dish = spoilt(BEAN_POT, "{ burner: 1 }", "{ oven: 400 F }");
    expect(told({ "kitchens/shed.yaml": kitchen, "dishes/bean-pot.yaml": dish })).toEqual([
      [
        "meals/supper.yaml",
        6,
        "dishes.bean-pot",
        'The step "boil the beans" of Bean Pot needs an oven and this kitchen has none; leave the dish out or cook elsewhere.',
      ],
    ]);
  });

  it("[R20] a range of heat is within reach when the oven gets to its lower end", () => {
    expect(
      told({ "dishes/bean-pot.yaml": spoilt(BEAN_POT, "{ burner: 1 }", "{ oven: 440-500 F }") }),
    ).toEqual([]);
  });

  it("[R19] a dish whose own file has mistakes is not called unknown", () => {
    expect(told({ "dishes/bean-pot.yaml": spoilt(BEAN_POT, "time: 20 min", "time: soon") })[1]).toEqual([
      "meals/supper.yaml",
      6,
      "dishes.bean-pot",
      'The file of the dish "bean-pot" has mistakes; mend that one first.',
    ]);
    expect(told({ "kitchens/shed.yaml": "kitchen: The shed\n" })).toContainEqual([
      "meals/supper.yaml",
      4,
      "kitchen",
      'The file of the kitchen "shed" has mistakes; mend that one first.',
    ]);
  });

  it("[R19] one spoken name for two dishes of a meal is a mistake, in different meals it is not", () => {
    const other = spoilt(
      spoilt(BEAN_POT, "dish: Bean Pot", "dish: Lima Stew"),
      "says: [beans]",
      "says: [Beans]",
    );
    expect(told({ "dishes/lima-stew.yaml": other })).toEqual([]);
    const both = spoilt(MEAL, "  bean-pot: 2\n", "  bean-pot: 2\n  lima-stew: 2\n");
    expect(told({ "dishes/lima-stew.yaml": other, "meals/supper.yaml": both })).toEqual([
      [
        "meals/supper.yaml",
        7,
        "dishes.lima-stew",
        '"Beans" can mean Bean Pot or Lima Stew in this meal; take it off the "says" of one of them.',
      ],
    ]);
  });
});
