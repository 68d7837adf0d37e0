import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readLabel } from "../../../core/food/read-label.ts";
import { spoilt } from "../recipe/bean-pot.ts";
import { DRINK, TOMATOES } from "./labels.ts";
import { shippedFoods } from "./shipped-foods.ts";

const { table } = await shippedFoods();

const told = (text: string): readonly unknown[] =>
  readLabel("labels/check.yaml", text, table).mistakes.map(({ line, field, sentence }) => [
    line,
    field,
    sentence,
  ]);

type Case = readonly [from: string, to: string, line: number, field: string, sentence: string];

const us: readonly Case[] = [
  [
    "sodium: 15 mg",
    "sodium: 4,000 g",
    9,
    "values.sodium",
    '"4,000" may be a thousand or one; write it without the comma, like 1000 or 1.5.',
  ],
  [
    "sodium: 15 mg",
    "sodium: 4000 g",
    9,
    "values.sodium",
    "That is more sodium than pure salt holds; check milligrams and grams.",
  ],
  [
    "protein: 2 g",
    "protein: 200 g",
    13,
    "values.protein",
    "100 grams cannot hold more than 100 grams of protein; check the figure and the serving.",
  ],
  [
    "serving: 1/2 cup (120 g)",
    "serving: 1/2 cup (8 g)",
    13,
    "values.protein",
    "Protein, fat and carbohydrate come to 116 grams in 100 grams; check the figures and the serving.",
  ],
  [
    "saturated: 0 g",
    "saturated: 4 g",
    8,
    "values.saturated",
    "There is more saturated fat than fat, of which it is a part; read the label again.",
  ],
  [
    "sugars: 5 g",
    "sugars: 15 g",
    12,
    "values.sugars",
    "There is more sugars than carbohydrate, of which it is a part; read the label again.",
  ],
  [
    "energy: 35 kcal",
    "energy: 350 kcal",
    6,
    "values.energy",
    "The energy is far from the 24 to 42 kilocalories that protein, fat and carbohydrate give in 100 grams; check kilojoules and the figures, or leave the energy out.",
  ],
  [
    "energy: 35 kcal",
    "energy: 1200 kcal",
    6,
    "values.energy",
    "That is more energy than pure fat holds; check the figure and the serving.",
  ],
  ["fat: 0.5 g", "fat: -5 g", 7, "values.fat", '"-5 g" is less than nothing; read the label again.'],
  [
    "fat: 0.5 g",
    "fat: 5 mg/l",
    7,
    "values.fat",
    '"5 mg/l" is no figure of a label; write a number and its unit, like 2.5 g.',
  ],
  ["fat: 0.5 g", "fat: 5", 7, "values.fat", '"fat" should be text like 2.5 g, not a number.'],
  [
    "sodium: 15 mg",
    'sodium: "8 %"',
    9,
    "values.sodium",
    '"8 %" is a share of a day\'s need; write the amount itself, like 140 mg, or leave it out.',
  ],
  [
    "serving: 1/2 cup (120 g)",
    "serving: 0 g",
    4,
    "serving",
    "A serving of nothing holds nothing; write the serving as the label prints it.",
  ],
  [
    "serving: 1/2 cup (120 g)",
    "serving: 1 cup (24 ml)",
    4,
    "serving",
    "The serving tells two volumes that do not fit each other; read the label again.",
  ],
  [
    "serving: 1/2 cup (120 g)",
    "serving: 1/2 cup (1200 g)",
    4,
    "serving",
    "A serving that weighs twice as much as water is a misprint; read the label again.",
  ],
  [
    "serving: 1/2 cup (120 g)",
    "serving: 3000 g",
    4,
    "serving",
    "A serving of more than 2 kilograms is a misprint; read the label again.",
  ],
  [
    "serving: 1/2 cup (120 g)",
    "serving: much",
    4,
    "serving",
    '"much" is no serving; write it as printed, like 1 cup (240 ml).',
  ],
  [
    "like: canned crushed tomato",
    "like: crushed tomato",
    3,
    "like",
    'There is no food called "crushed tomato"; did you mean "canned crushed tomato"?',
  ],
  [
    "label: crushed",
    "labell: x\nlabel: crushed",
    1,
    "labell",
    'There is no key "labell" here; did you mean "label"?',
  ],
  [
    "values:",
    "values:\n  magic: 3 g",
    6,
    "values.magic",
    'There is no key "magic" here; the keys are energy, protein, fat, saturated, carbohydrate, fibre, sugars, sodium, potassium, phosphorus, calcium, iron, vitamin-c and salt.',
  ],
];

describe("a mistake on a label", () => {
  it("[F33] labels without a mistake have none", () => {
    expect([told(TOMATOES), told(DRINK)]).toEqual([[], []]);
  });

  it.each(us)("[F33] %s written as %s is told in one sentence", (from, to, ...expected) => {
    expect(told(spoilt(TOMATOES, from, to))).toContainEqual(expected);
  });

  it.each<Case>([
    [
      "salt: 0.1 g",
      "salt: 0.1 g\n  sodium: 100 mg",
      14,
      "values.salt",
      "Salt is two and a half times the sodium, and here it is not; keep the right one.",
    ],
    [
      "weighs: 206 g\n",
      "",
      3,
      "serving",
      "The label does not tell what a serving weighs; weigh one and write it, like weighs: 247 g.",
    ],
    [
      "serving: 200 ml",
      "serving: 1 glass",
      3,
      "serving",
      "The values are for 100 ml, and the serving tells no millilitres; write both, like 240 ml (247 g).",
    ],
    ["energy: 190 kJ", "energy: 190 kcal", 7, "values.energy", ENERGY()],
  ])("[F33] on a label of the EU, %s written as %s", (from, to, ...expected) => {
    expect(told(spoilt(DRINK, from, to))).toContainEqual(expected);
  });

  it("[F33] no text at all makes the reader fail, and what is no food is told with a line and a sentence", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(TOMATOES, DRINK),
        fc.nat(),
        fc.nat(12),
        fc.oneof(fc.string(), fc.constantFrom("0", "-", "1/0", " g", "kJ", "<", "%", "9".repeat(40), ": ")),
        (text, at, cut, put) => {
          const start = at % text.length;
          const broken = text.slice(0, start) + put + text.slice(start + cut);
          const { food, mistakes } = readLabel("labels/check.yaml", broken, table);
          expect(food === null).toBe(mistakes.length > 0);
          for (const { line, sentence } of mistakes) {
            expect(line).toBeGreaterThanOrEqual(1);
            expect(sentence).toMatch(/^\S.*[.?]$/s);
          }
        },
      ),
      { numRuns: 500 },
    );
  });

  it("[F33] wrong grams are told once, and not as wrong energy too", () => {
    expect(told(spoilt(TOMATOES, "protein: 2 g", "protein: 200 g"))).toHaveLength(1);
    expect(told("label: [")).toHaveLength(1);
    expect(told("label: oat\nserving: 10 g\nvalues: {}\n")).toEqual([
      [3, "values", "This label tells no value; write at least one."],
    ]);
  });
});

function ENERGY(): string {
  return "The energy is far from the 39 to 42 kilocalories that protein, fat and carbohydrate give in 100 grams; check kilojoules and the figures, or leave the energy out.";
}
