import { describe, expect, it } from "vitest";
import { readFoods } from "../../../core/food/read-foods.ts";
import type { NUTRIENT_NAMES } from "../../../core/food/nutrients.ts";
import { normaliseFood } from "../../../core/food/names.ts";
import { fromNumber, toNumber, ZERO } from "../../../core/units/rational.ts";
import { spoilt } from "../recipe/bean-pot.ts";
import { shippedFoods } from "./shipped-foods.ts";

const BEET = `# A comment.
beetroot
  usda    11080
  also    beet; red beet
  main    energy 43; protein 1.61; fat 0.17; saturated 0.027; carbohydrate 9.56; fibre 2.8; sugars ?
  salts   sodium 78; potassium 325; phosphorus 40; calcium 16; iron 0.8; vitamin-c 4.9
  refuse  33
  weighs  1 cup, chopped = 136; 1 large = 100
  weighs  2 leaf = 3.5
`;

const mistakes = (text: string): readonly (readonly [number, string])[] =>
  readFoods("foods.txt", text).mistakes.map(({ line, sentence }) => [line, sentence]);

describe("reading the table of foods", () => {
  it("[F1] every line of a food is read, and a question mark is no figure", () => {
    const { foods, table, mistakes: wrong } = readFoods("foods.txt", BEET);
    expect(wrong).toEqual([]);
    expect(foods).toEqual([
      {
        name: "beetroot",
        also: ["beet", "red beet"],
        ndb: "11080",
        label: null,
        madeOf: null,
        mayHold: [],
        bounds: null,
        per100: {
          energy: "43/1",
          protein: "161/100",
          fat: "17/100",
          saturated: "27/1000",
          carbohydrate: "239/25",
          fibre: "14/5",
          sugars: null,
          sodium: "78/1",
          potassium: "325/1",
          phosphorus: "40/1",
          calcium: "16/1",
          iron: "4/5",
          "vitamin-c": "49/10",
        },
        refuse: "33/1",
        measures: [
          { count: "1/1", unit: "cup", size: null, how: "chopped", grams: "136/1" },
          { count: "1/1", unit: "piece", size: "large", how: null, grams: "100/1" },
          { count: "2/1", unit: "leaf", size: null, how: null, grams: "7/2" },
        ],
      },
    ]);
    expect([...table.keys()]).toEqual(["beetroot", "beet", "red beet"]);
  });

  it.each([
    ["usda    11080", "usda    1108", 3, '"1108" is no NDB number; it has five digits.'],
    ["  usda    11080\n", "", 2, "beetroot says nothing of usda; write ? for a figure not known."],
    ["; fibre 2.8", "", 2, "beetroot says nothing of fibre; write ? for a figure not known."],
    ["fibre 2.8", "fibre -2", 5, '"-2" is no figure; write one like 12.5, or ? where none is known.'],
    ["fibre 2.8", "fat 2.8", 5, "fat stands here twice; keep one figure."],
    ["refuse  33", "refuse  100", 7, "The refuse is a share in percent; write less than 100."],
    ["refuse  33", "refuse  ?\n  refuse  33", 8, 'beetroot has two lines "refuse"; keep one.'],
    ["1 large = 100", "1 huge = 100", 8, '"huge" is not a unit I know; write one like cup, clove or head.'],
    ["1 large = 100", "1 large", 8, '"1 large" is no measure; write it like 1 cup, chopped = 160.'],
    [
      "1 large = 100",
      "1 oz = 28",
      8,
      '"1 oz = 28" weighs a weight; write a cup, a spoon or a thing to count.',
    ],
    ["1 large = 100", "1 large = 0", 8, '"1 large = 0" weighs nothing; leave the measure out.'],
    ["red beet", "", 2, "A name is empty here; write one or leave it out."],
    ["beetroot\n", "", 2, "This line belongs to no food; write the food's name above it."],
  ])("[F2] %j as %j is told on line %i", (from, to, line, sentence) => {
    const text = spoilt(BEET, from, to);
    expect(mistakes(text)[0]).toEqual([line, sentence]);
    expect(readFoods("foods.txt", text).foods).toEqual([]);
  });

  it("[F2] an unknown value and an unknown line bring the known ones", () => {
    expect(mistakes(spoilt(BEET, "fibre 2.8", "fiber 2.8"))[0]?.[1]).toMatch(
      /^"fiber" is no value of this table; they are energy, protein, .*, vitamin-c\.$/,
    );
    expect(mistakes(spoilt(BEET, "  refuse  33", "  waste  33"))[0]).toEqual([
      7,
      '"waste" is no line of a food; write usda, also, main, salts, refuse, weighs.',
    ]);
  });

  it("[F3] a name for two foods is refused, in whatever number and case", () => {
    const second = spoilt(BEET, "beetroot\n", "winter beet\n").replace("beet; red beet", "Red-Beets");
    const read = readFoods("foods.txt", `${BEET}\n${second}`);
    expect(read.mistakes).toEqual([
      {
        file: "foods.txt",
        line: 12,
        field: "",
        sentence: '"Red-Beets" already stands for beetroot; a name means one food only.',
      },
    ]);
    expect(read.foods.map(({ name }) => name)).toEqual(["beetroot"]);
  });
});

const shipped = await shippedFoods();

/**
 * USDA National Nutrient Database for Standard Reference, Release 28 (2015), in 100 g: energy, protein, sodium,
 * potassium, phosphorus, vitamin C; null where it has none.
 */
const ROWS = [
  ["11282", "red onion", "40", "1.1", "4", "146", "29", "7.4"],
  ["11143", "celery", "16", "0.69", "80", "260", "24", "3.1"],
  ["11147", "Swiss chard", "19", "1.8", "213", "379", "46", "30"],
  ["02009", "chili powder", "282", "13.46", "2867", "1950", "300", "0.7"],
  ["16069", "dry lentils", "352", "24.63", "6", "677", "281", "4.5"],
  ["02047", "table salt", "0", "0", "38758", "8", "0", "0"],
  ["18371", "low-sodium baking powder", "97", "0.1", "90", "10100", "6869", "0"],
  ["09040", "bananas", "89", "1.09", "1", "358", "22", "8.7"],
  ["16358", "drained canned chickpeas", "139", "7.05", "246", "126", "85", "0.1"],
  ["16359", "rinsed canned chickpeas", "138", "7.04", "212", "109", "80", "0.1"],
  ["09152", "lemon juice", "22", "0.35", "1", "103", "8", "38.7"],
] as const;

describe("the table that ships", () => {
  it("[F4] has at least 500 foods without a mistake, and two names for most", () => {
    expect(shipped.mistakes).toEqual([]);
    expect(shipped.foods.length).toBeGreaterThanOrEqual(500);
    expect(shipped.table.size).toBeGreaterThan(1000);
  });

  it.each(ROWS)("[F4] SR28 number %s, %s", (ndb, name, ...figures) => {
    const food = shipped.table.get(normaliseFood(name));
    const told = (["energy", "protein", "sodium", "potassium", "phosphorus", "vitamin-c"] as const).map(
      (one) => (food === undefined ? null : food.per100[one]),
    );
    expect([food?.ndb, ...told]).toEqual([ndb, ...figures.map((figure) => fromNumber(Number(figure)))]);
  });

  it("[F4] a figure that SR28 does not have is not nought: sugars of dry red lentils, number 16144", () => {
    expect(shipped.table.get("red lentil")).toMatchObject({ ndb: "16144", per100: { sugars: null } });
  });

  it("[F4] protein, fat and carbohydrate of no food outweigh it, and no part outweighs its whole", () => {
    const over = shipped.foods.filter(({ per100 }) => {
      const figure = (name: (typeof NUTRIENT_NAMES)[number]): number => toNumber(per100[name] ?? ZERO);
      const parts = figure("protein") + figure("fat") + figure("carbohydrate");
      return (
        parts > 101 ||
        figure("saturated") > figure("fat") + 0.01 ||
        figure("sugars") > figure("carbohydrate") * 1.1 + 0.5
      );
    });
    expect(over.map(({ name }) => name)).toEqual([]);
  });

  it.each([
    ["dry chickpeas", "cooked chickpeas"],
    ["dry pearl barley", "cooked pearl barley"],
    ["brown rice", "cooked brown rice"],
    ["dry kidney beans", "rinsed canned kidney beans"],
    ["canned tomatoes", "unsalted canned tomatoes"],
    ["salted butter", "unsalted butter"],
  ])("[F4] %s and %s are two foods", (one, other) => {
    const [a, b] = [one, other].map((name) => shipped.table.get(normaliseFood(name))?.ndb);
    expect(a).toMatch(/^\d{5}$/);
    expect(b).toMatch(/^\d{5}$/);
    expect(a).not.toBe(b);
  });

  it.each([
    ["aubergine", "eggplant"],
    ["courgettes", "zucchini"],
    ["coriander leaves", "cilantro"],
    ["rocket", "arugula"],
    ["swede", "rutabaga"],
    ["spring onions", "scallions"],
    ["bicarbonate of soda", "baking soda"],
    ["wholemeal flour", "whole wheat flour"],
  ])("[F6] %s is %s", (british, american) => {
    const food = shipped.table.get(normaliseFood(british));
    expect(food).toBeDefined();
    expect(food).toBe(shipped.table.get(normaliseFood(american)));
  });
});
