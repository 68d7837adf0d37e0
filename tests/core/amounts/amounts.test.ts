import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dishAmounts, figureTold } from "../../../core/amounts/dish-amounts.ts";
import { makeable, readFactor, readHaving } from "../../../core/amounts/factor.ts";
import { panArea, panFactor, readPan, type Pan } from "../../../core/amounts/pan.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import { scaledList } from "../../../core/recipe/scale.ts";
import { div, mul, ONE, ratio, rational, toNumber, type Rational } from "../../../core/units/rational.ts";
import type { Result } from "../../../core/units/result.ts";
import { dishWith } from "../diet/diet-kit.ts";
import { shippedFoods } from "../food/shipped-foods.ts";
import { BEAN_POT, dishOf, spoilt } from "../recipe/bean-pot.ts";
import { shippedPantry } from "../recipe/shelf.ts";

const { table } = await shippedFoods();
const pantry = await shippedPantry();
const dishes = [...pantry.dishes.values()];
const anyFactor = fc
  .tuple(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 1, max: 500 }))
  .map(([a, b]) => ratio(a, b));

function dishCalled(id: string): Dish {
  const dish = dishes.find((one) => one.id === id);
  if (dish === undefined) throw new Error(`no dish ${id}`);
  return dish;
}

/** The value, or the sentence. */
const told = <T>(result: Result<T, string>): T | string => (result.ok ? result.value : result.error);

describe("a list made some times", () => {
  it("[R53] a times and then b times is ab times, and there and back is exact", () => {
    fc.assert(
      fc.property(fc.constantFrom(...dishes), anyFactor, anyFactor, ({ ingredients }, a, b) => {
        expect(scaledList(scaledList(ingredients, a), b)).toEqual(scaledList(ingredients, mul(a, b)));
        expect(scaledList(scaledList(ingredients, a), div(ONE, a))).toEqual(ingredients);
      }),
    );
  });

  it("[R53] made once it is told as its author wrote it", () => {
    const { lines, cautions } = dishAmounts(dishCalled("lentil-soup"), ONE, table);
    expect(lines.map((line) => line.told).slice(0, 5)).toEqual([
      "1",
      "3 cloves",
      "2 tsp",
      "1½ tsp",
      "1½ cups",
    ]);
    expect(cautions).toEqual([]);
  });
});

describe("what is in the house", () => {
  const factor = (id: string, text: string): Rational | string => {
    const having = readHaving(dishCalled(id), text, pantry.foods ?? table);
    return having.ok ? having.value.factor : having.error;
  };

  /** A cup of red lentils weighs 192 g (SR28 number 16144): one and a half are 288. */
  it("[R54] 300 g of lentils are 25/24 of one and a half cups: four and a sixth bowls", () => {
    expect(factor("lentil-soup", "300 g red lentils")).toBe("25/24");
    expect(factor("lentil-soup", "300 grams of lentils")).toBe("25/24");
    const made = dishAmounts(dishCalled("lentil-soup"), ratio(25, 24), table);
    expect([made.servings, figureTold(made.servings)]).toEqual(["25/6", "4 1/6"]);
  });

  it.each([
    ["lentil-soup", "3 cups red lentils", "2/1"],
    ["lentil-soup", "1 onion", "1/1"],
    // A pound of 453.59237 g (NIST Handbook 44, appendix C), and no refuse of it matters.
    ["stewed-plums", "1 kg plums", "100000000/45359237"],
    // Eleven percent of a carrot may be refuse: two cups of slices are 244 g of 605 to 680 (SR28 number 11124).
    ["cumin-carrots", "2 cups sliced carrots", "one sure factor"],
  ])("[R54] of %s, %s make %s times as much", (id, text, expected) => {
    const made = factor(id, text);
    if (expected !== "one sure factor") return expect(made).toBe(expected);
    // The least that two cups may weigh, over the most that is wanted.
    expect(toNumber(made as Rational)).toBeCloseTo(220 / (1.5 * 453.59237), 6);
  });

  it("[R54] a plain dressing keeps two parts of lemon juice to one of oil, whatever there is of either", () => {
    // Common practice, no source: two parts of lemon juice to one of oil.
    const dressing = dishWith(["4 tbsp lemon juice", "2 tbsp olive oil"]);
    for (const have of ["3 tbsp lemon juice", "1 cup lemon juice", "5 tsp olive oil", "20 ml olive oil"]) {
      const having = told(readHaving(dressing, have, table));
      if (typeof having === "string") throw new Error(having);
      const [lemon, oil] = scaledList(dressing.ingredients, having.factor).map(({ amount }) => amount);
      if (lemon?.kind !== "measured" || oil?.kind !== "measured") throw new Error(have);
      expect([have, lemon.unit === oil.unit && div(rational(lemon.low), rational(oil.low))]).toEqual([
        have,
        ratio(2),
      ]);
    }
  });

  it("[R54] the list made of it takes all of it, exactly", () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 5000 }), (grams) => {
        const made = factor("stewed-plums", `${grams} g plums`);
        const [plums] = dishAmounts(dishCalled("stewed-plums"), made as Rational, table).lines;
        const pounds = plums?.ingredient.amount.kind === "measured" ? plums.ingredient.amount.low : "";
        expect(mul(pounds as Rational, ratio(45_359_237, 100_000))).toBe(ratio(grams));
      }),
    );
  });

  it.each([
    [
      "lentil-soup",
      "300 g",
      '"300 g" does not say how much there is of what; write it like 300 g red lentils.',
    ],
    [
      "stewed-plums",
      "300 g lentils",
      'Stewed Plums takes no "lentils"; it takes plums, orange juice and cinnamon.',
    ],
    ["lentil-soup", "1 tsp pepper", "Smoky Lentil Soup takes black pepper to taste, so that sets no amount."],
    [
      "stewed-plums",
      "1 g plums",
      "That is less than a quarter of a serving of Stewed Plums; it is too little to make.",
    ],
    [
      "stewed-plums",
      "2000 kg plums",
      "That is more than 100 servings of Stewed Plums; no home kitchen makes so much at once.",
    ],
    ["lentil-soup", "1 can red lentils", 'No food in the table is called "canned red lentils".'],
  ])("[R56] of %s, %s: %s", (id, text, sentence) => {
    expect(factor(id, text)).toBe(sentence);
  });

  it("[R56] where a name fits two ingredients, which one is asked", () => {
    const two = dishOf(
      spoilt(BEAN_POT, "item: cooked beans", "item: white beans").replace(
        "greens: 1 bunch, washed",
        "greens: { item: green beans, amount: 1 bunch }",
      ),
    );
    expect(told(readHaving(two, "200 g beans", table))).toBe(
      '"beans" may be white beans or green beans in Bean Pot; say which.',
    );
  });
});

describe("another pan", () => {
  const pan = (text: string): Pan => {
    const read = readPan(text);
    if (!read.ok) throw new Error(read.error);
    return read.value;
  };
  const SHAPES = [
    "9 inch round",
    "8 inch square",
    "9 x 13 inch",
    "20 cm square",
    "26 cm round",
    "8 1/2 x 4 1/2 in",
  ];

  /** Areas by geometry: pi r2, a2 and ab, with pi to a millionth. */
  it.each([
    ["9 inch round", Math.PI * 4.5 ** 2 * 2.54 ** 2],
    ["round 26 cm", Math.PI * 13 ** 2],
    ["8-inch square pan", 64 * 2.54 ** 2],
    ["9x13 inch", 117 * 2.54 ** 2],
    ["230 x 330 mm", 23 * 33],
    ['8 1/2 by 4 1/2"', 8.5 * 4.5 * 2.54 ** 2],
  ])("[R55] %s covers %d square centimetres", (text, area) => {
    expect(toNumber(panArea(pan(text))) / area).toBeCloseTo(1, 6);
  });

  it("[R55] from pan to pan and back is exact, and by way of a third the same", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SHAPES),
        fc.constantFrom(...SHAPES),
        fc.constantFrom(...SHAPES),
        (a, b, c) => {
          const [first, second, third] = [pan(a), pan(b), pan(c)];
          expect(mul(panFactor(first, second), panFactor(second, first))).toBe(ONE);
          expect(mul(panFactor(first, second), panFactor(second, third))).toBe(panFactor(first, third));
        },
      ),
    );
    expect(panFactor(pan("8 inch square"), pan("16 inch square"))).toBe("4/1");
    // Bakers take one for the other: a circle of nine inches has 63.6 square inches, a square of eight 64.
    expect(toNumber(panFactor(pan("9 inch round"), pan("8 inch square")))).toBeCloseTo(64 / 63.617, 4);
  });

  it.each([
    [
      "9 inch",
      '"9 inch" does not say whether it is round or square; write it like 9 inch round, 20 cm square or 9 x 13 inch.',
    ],
    ["9 round", '"9 round" lacks its unit; write it like 9 inch round, 20 cm square or 9 x 13 inch.'],
    [
      "9 x 13 inch round",
      '"9 x 13 inch round" has two lengths, so it is not round; write it like 9 inch round, 20 cm square or 9 x 13 inch.',
    ],
    ["0 cm round", '"0 cm round" is the size of no pan; check the figure and its unit.'],
    ["900 cm square", '"900 cm square" is the size of no pan; check the figure and its unit.'],
    ["a big one", '"a big one" is no pan; write it like 9 inch round, 20 cm square or 9 x 13 inch.'],
    [
      "1/0 inch round",
      '"1/0 inch round" is no pan; write it like 9 inch round, 20 cm square or 9 x 13 inch.',
    ],
  ])("[R56] %s is no pan that can be reckoned with", (text, sentence) => {
    expect(told(readPan(text))).toBe(sentence);
  });
});

describe("how many times", () => {
  it.each([
    ["2", "2/1"],
    ["1 1/2", "3/2"],
    ["0.75", "3/4"],
    ["0", "Nothing can be made no times; write a number above nought."],
    ["0.0", "Nothing can be made no times; write a number above nought."],
    ["-2", '"-2" is less than nothing; write a number above nought.'],
    ["lots", '"lots" is no number of times; write it like 2, 1.5 or 1 1/2.'],
    ["NaN", '"NaN" is no number of times; write it like 2, 1.5 or 1 1/2.'],
    ["", '"" is no number of times; write it like 2, 1.5 or 1 1/2.'],
  ])("[R56] %j: %s", (text, expected) => {
    expect(told(readFactor(text))).toBe(expected);
  });

  it("[R56] no text at all makes the readers fail: it is taken, or told in one sentence", () => {
    const words = [
      "0",
      "1",
      "/",
      "1/0",
      "-",
      ".",
      "cup",
      "kg",
      "red lentils",
      "x",
      "in",
      "round",
      "½",
      "%",
      "9".repeat(40),
    ];
    const text = fc.oneof(
      fc.string(),
      fc.array(fc.constantFrom(...words), { maxLength: 7 }).map((all) => all.join(" ")),
    );
    fc.assert(
      fc.property(text, (written) => {
        const having = readHaving(dishCalled("lentil-soup"), written, table);
        for (const read of [readPan(written), readFactor(written), having]) {
          if (!read.ok) expect(read.error).toMatch(/^\S.*\.$/s);
        }
        if (having.ok) expect(toNumber(having.value.factor)).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });

  it("[R56] a thousand times is more than any kitchen makes", () => {
    const factor = readFactor("1,000");
    expect(factor.ok && told(makeable(dishCalled("kachumber"), factor.value))).toBe(
      "That is more than 100 servings of Kachumber; no home kitchen makes so much at once.",
    );
  });
});
