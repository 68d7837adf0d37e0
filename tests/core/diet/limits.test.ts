import { describe, expect, it } from "vitest";
import { CLAIMS } from "../../../core/diet/claims-table.ts";
import type { EatenMeal } from "../../../core/diet/eaten.ts";
import { readValueRule } from "../../../core/diet/rule-text.ts";
import { toNumber } from "../../../core/units/rational.ts";
import { butOf, checkOf, dishWith, limitsOf, told } from "./diet-kit.ts";

/** A serving of this holds 57.81 mg sodium, 651.65 mg potassium, 0.93 g fat: worked outside this project from USDA SR28. */
const SOUP = [
  "1 cup dry lentils",
  "1 onion, chopped",
  "1 cup carrots, sliced",
  "2 stalks celery",
  "3 cloves garlic",
  "1 cup canned tomatoes, no salt added",
  "1 tsp cumin seeds",
  "948 g water",
  "1 tbsp lemon juice",
];

const ate = (daysAgo: number, ...lines: readonly string[]): EatenMeal => ({
  daysAgo,
  dishes: [dishWith(lines)],
});

describe("limits on what food holds", () => {
  it.each([
    ["at most 57.9 mg sodium in a serving", "allowed"],
    ["at most 57.7 mg sodium in a serving", "not allowed"],
    ["at most 652 mg potassium in a serving", "allowed"],
    ["at most 651 mg potassium in a serving", "not allowed"],
    ["at least 13 g protein in the meal", "allowed"],
    ["at least 14 g protein in the meal", "not allowed"],
    ["low sodium (US) in a serving", "allowed"],
    ["very low sodium (US) in a serving", "not allowed"],
    ["low fat (US) in a serving", "allowed"],
    ["fat free (US) in a serving", "not allowed"],
  ])("[D17] [D18] the lentil soup of SR28, %s: %s", (limit, verdict) => {
    expect(checkOf(limitsOf(limit), SOUP).verdict).toBe(verdict);
  });

  it("[D17] what is unknown can only add: a limit is broken for sure, or cannot be told", () => {
    const lines = ["1 cup moonberries", "1 tsp salt"];
    expect(checkOf(limitsOf("at most 100 mg sodium in a serving"), lines).verdict).toBe("not allowed");
    const [only] = checkOf(limitsOf("at most 900 mg sodium in a serving"), lines).findings;
    expect([only?.verdict, only?.why]).toEqual([
      "cannot tell",
      "As far as I know a serving of Pot has 581.4 mg sodium, and for moonberries I have no figure; it may be at most 900 mg.",
    ]);
    expect(only?.mend).toBe("Give moonberries a food of the table or of a label, or a weight.");
  });

  it("[D17] a day is what the log has of it and this meal; too little of it nobody can tell before it is over", () => {
    const diet = limitsOf("at most 100 mg sodium in a day", "at least 500 g protein in a day");
    expect(checkOf(diet, SOUP).verdict).toBe("allowed");
    expect(checkOf(diet, SOUP, [ate(1, ...SOUP)]).verdict).toBe("allowed");
    expect(told(checkOf(diet, SOUP, [ate(0, ...SOUP)]))).toEqual([
      "not allowed | total | The day with Check Meal has 115.6 mg sodium; it may be at most 100 mg.",
    ]);
  });

  /** 21 CFR 101.61(b), 101.62(b) and (c); Regulation (EC) No 1924/2006, annex: a figure on each side of the threshold. */
  it.each([
    ["sodium free (US)", "below", 5, "serving"],
    ["very low sodium (US)", "at most", 35, "serving"],
    ["low sodium (US)", "at most", 140, "serving"],
    ["low sodium main dish (US)", "at most", 140, "100 g"],
    ["fat free (US)", "below", 0.5, "serving"],
    ["low fat (US)", "at most", 3, "serving"],
    ["sodium free (EU)", "at most", 5, "100 g"],
    ["very low sodium (EU)", "at most", 40, "100 g"],
    ["low sodium (EU)", "at most", 120, "100 g"],
    ["fat free (EU)", "at most", 0.5, "100 g"],
    ["low fat (EU)", "at most", 3, "100 g"],
    ["low fat liquid (EU)", "at most", 1.5, "100 g"],
  ])("[D18] %s: %s %d in a %s", (says, bound, figure, per) => {
    const claim = CLAIMS.find((one) => one.says === says);
    expect([claim?.bound, claim === undefined ? null : toNumber(claim.figure), claim?.per]).toEqual([
      bound,
      figure,
      per,
    ]);
    expect(claim?.source).not.toBe("");
  });

  it("[D18] below is below and at most is at most, on the very figure", () => {
    // Table salt has 38,758 mg sodium in 100 g (USDA SR28 02047); 4 servings.
    const salt = (milligrams: number): readonly string[] => [
      `${(milligrams * 4 * 100) / 38758} g salt`,
      "400 g peeled apples",
    ];
    const verdict = (limit: string, milligrams: number): string =>
      checkOf(limitsOf(limit), salt(milligrams)).verdict;
    expect([
      verdict("sodium free (US) in a serving", 4.999),
      verdict("sodium free (US) in a serving", 5.001),
    ]).toEqual(["allowed", "not allowed"]);
    expect([
      verdict("low sodium (US) in a serving", 139.99),
      verdict("low sodium (US) in a serving", 140.01),
    ]).toEqual(["allowed", "not allowed"]);
  });

  it("[D18] a serving of 30 g or less must keep a US threshold in 50 g too: 21 CFR 101.61(b)(4)", () => {
    const diet = limitsOf("low sodium (US) in a serving");
    const spoon = ["100 g white bread"];
    expect(checkOf(diet, spoon, [], 4).verdict).toBe("not allowed");
    const large = ["200 g white bread", "1800 g apples"];
    expect(checkOf(diet, large, [], 10).verdict).toBe("allowed");
  });

  it("[D18] in 100 g of what is eaten: water that may boil away makes it uncertain", () => {
    const diet = limitsOf("low sodium (EU) in a serving");
    const verdict = (...lines: readonly string[]): string => checkOf(diet, lines).verdict;
    // 80 mg sodium in 100 g of celery, 711 in salsa (USDA SR28).
    expect(verdict("400 g celery", "400 g water")).toBe("allowed");
    expect(verdict("400 g salsa", "400 g water")).toBe("not allowed");
    expect(verdict("100 g salsa", "600 g water")).toBe("cannot tell");
  });

  it("[D19] salt is 2.5 times its sodium (EU Regulation 1169/2011, annex I), a kilocalorie 4.184 kJ", () => {
    const figure = (text: string): number | null => {
      const read = readValueRule(text);
      return read.ok && read.value.kind !== "claim" ? toNumber(read.value.figure) : null;
    };
    expect(figure("at most 5 g salt in a day")).toBe(2000);
    expect(figure("at most 418.4 kJ energy in a serving")).toBe(100);
    expect(figure("at most 1.5 g of sodium in a day")).toBe(1500);
  });

  it("[D20] what may be left out counts from nought, what goes in to taste up to a tablespoon", () => {
    const diet = limitsOf("at most 100 mg sodium in a serving");
    const verdict = (...lines: readonly string[]): string => checkOf(diet, lines).verdict;
    expect(verdict("1 tsp salt (optional)")).toBe("cannot tell");
    expect(verdict("1 tsp salt")).toBe("not allowed");
    expect(verdict("4 carrots", "black pepper to taste")).toBe("allowed");
    expect(verdict("4 carrots", "salt to taste")).toBe("cannot tell");
  });
});

describe("how much and how often", () => {
  const diet = butOf("grains: { rule: twice a week, because: The plan's own measure. }");
  const rice = "1 cup brown rice";

  it("[D15] counted in the week up to the meal, and told from when it may be had again", () => {
    expect(checkOf(diet, [rice]).verdict).toBe("allowed");
    expect(checkOf(diet, [rice], [ate(2, rice)]).verdict).toBe("allowed");
    expect(checkOf(diet, ["1 onion"], [ate(2, rice), ate(3, rice)]).verdict).toBe("allowed");
    expect(checkOf(diet, [rice], [ate(2, rice), ate(7, rice)]).verdict).toBe("allowed");
    const [only] = checkOf(diet, [rice], [ate(2, rice), ate(5, "1 cup rolled oats"), ate(6, rice)]).findings;
    expect(only).toMatchObject({
      rule: "grains: at most twice a week",
      ingredient: "brown rice",
      verdict: "not allowed",
      why: "Brown rice counts as grains: 3 meals of this week had grains already, by the meal log.",
      because: "The plan's own measure.",
      mend: "It may be had again in 2 days.",
    });
  });

  it("[D15] a food in the log that nobody knows may have counted", () => {
    const eaten = [ate(1, "1 cup moonrice"), ate(2, rice)];
    expect(checkOf(diet, [rice], eaten).verdict).toBe("cannot tell");
  });

  it.each([
    ["tree nuts: 30 g a day", "120 g almonds", "allowed"],
    ["tree nuts: 30 g a day", "121 g almonds", "not allowed"],
    // A cup of rolled oats is 81 g (USDA SR28 08120).
    ["grains: 1/2 cup a serving", "162 g rolled oats", "allowed"],
    ["grains: 1/2 cup a serving", "163 g rolled oats", "not allowed"],
    ["tree nuts: 30 g a day", "2 handfuls almonds", "cannot tell"],
    ["eggs: 1 piece a day", "4 eggs", "allowed"],
    ["eggs: 1 piece a day", "5 eggs", "not allowed"],
  ])("[D16] %s, four servings of %s: %s", (rule, line, verdict) => {
    expect(checkOf(butOf(rule), [line]).verdict).toBe(verdict);
  });

  it("[D16] what the log has of the day and the week counts with it", () => {
    const nuts = butOf("tree nuts: 30 g a day");
    const week = butOf("tree nuts: 100 g a week");
    expect(checkOf(nuts, ["80 g almonds"], [ate(0, "80 g walnuts")]).verdict).toBe("not allowed");
    expect(checkOf(nuts, ["80 g almonds"], [ate(1, "80 g walnuts")]).verdict).toBe("allowed");
    expect(checkOf(week, ["200 g almonds"], [ate(6, "220 g walnuts")]).verdict).toBe("not allowed");
    const [finding] = checkOf(nuts, ["160 g almonds"]).findings;
    expect(finding?.why).toBe(
      "A serving has 133 percent of what is allowed, at most thirty grams a day, of tree nuts.",
    );
  });
});
