import { describe, expect, it } from "vitest";
import { contradictions } from "../../../core/diet/contradictions.ts";
import { butOf, dietOf, limitsOf, mistakesIn } from "./diet-kit.ts";

const BUT = "may-eat: all but what is listed\n";

describe("a diet's file", () => {
  it("[D4] is read whole", () => {
    const diet = dietOf(`may-eat: only what is listed
every-meal: true
foods:
  vegetables: allowed
  grains: { rule: once a week, because: The plan's own measure. }
  tree nuts: 30 g a day
  milk products: { rule: 1/2 cup a serving, only: nonfat }
  spices: { rule: allowed, these: [cumin, paprika] }
  dulse: { rule: avoided, also-called: [dillisk] }
allergies: [peanuts]
limits:
  - at most 140 mg sodium in a serving
  - { rule: at least 25 g of fibre in the meal, because: For the gut. }
  - low fat (US) in a serving
`);
    expect([diet.isEveryMeal, diet.listed, diet.allergies.map(({ said }) => said)]).toEqual([
      true,
      "only",
      ["peanuts"],
    ]);
    expect(
      diet.foods.map(({ name, verdict, allowance, only }) => [
        name.said,
        name.kind,
        verdict,
        allowance?.kind,
        only,
      ]),
    ).toEqual([
      ["vegetables", "group", "allowed", undefined, null],
      ["grains", "group", "allowed", "times", null],
      ["tree nuts", "group", "allowed", "amount", null],
      ["milk products", "group", "allowed", "amount", "nonfat"],
      ["spices", "group", "allowed", undefined, null],
      ["dulse", "words", "avoided", undefined, null],
    ]);
    expect(diet.foods[1]?.because).toBe("The plan's own measure.");
    expect(diet.values.map((rule) => [rule.kind, rule.in, rule.because])).toEqual([
      ["at most", "serving", null],
      ["at least", "meal", "For the gut."],
      ["claim", "serving", null],
    ]);
  });

  it.each([
    ["may-eat: all\n", '"may-eat" cannot be "all"; write only what is listed or all but what is listed.'],
    ["may-eat: only what is listed\n", "Test Diet allows only what is listed, and lists nothing as allowed."],
    [`${BUT}foods: {grains: sometimes}\n`, '"sometimes" is no rule for a food; write allowed, avoided,'],
    [`${BUT}foods: {grains: 0 times a week}\n`, '"0 times a week" is never; write avoided instead.'],
    [`${BUT}foods: {grains: -2 g a day}\n`, '"-2 g a day" cannot be read'],
    [`${BUT}foods: {nuts: 1 pinch a day}\n`, '"1 pinch" is nothing that can be added up'],
    [
      `${BUT}foods: {grains: {rule: avoided, only: organic}}\n`,
      '"grains" is avoided, so nothing of it can be',
    ],
    [`${BUT}limits: [at most 4000 g sodium in a serving]\n`, "is more than anyone eats; look at the figure"],
    [`${BUT}limits: [at most 4 kcal sodium in a day]\n`, "has the wrong unit; sodium is counted in mg."],
    [
      `${BUT}limits: [at most 4 g sodium]\n`,
      "is no limit; write one like: at most 140 mg sodium in a serving.",
    ],
    [`${BUT}limits: [at most 2 g magnesium in a day]\n`, '"magnesium" is no value that I can reckon'],
    [`${BUT}limits: [no sodium (US) in a serving]\n`, 'No threshold is called "no sodium (US)"; there are'],
    [`${BUT}extra: 1\n`, 'There is no key "extra" here'],
  ])("[D5] %j: %s", (text, sentence) => {
    expect(mistakesIn(text).filter((one) => one.includes(sentence))).toHaveLength(1);
  });

  it.each([
    [
      "chicory root",
      'No food and no group is called "chicory root"; if it has no other name, write also-called: []',
    ],
    ["granes", 'No food and no group is called "granes"; did you mean "grains"?'],
    ["oats", '"oats" may be rolled oats or oat groats; write which, or the group.'],
  ])("[D6] %s: %s", (name, sentence) => {
    expect(mistakesIn(`${BUT}foods: {${name}: avoided}\n`).join(" ")).toContain(sentence);
  });

  it("[D6] a food that is in no table, with every name it goes by", () => {
    expect(mistakesIn(`${BUT}foods: {chicory root: {rule: avoided, also-called: []}}\n`)).toEqual([]);
  });

  it.each([
    [
      `${BUT}foods: {grains: avoided, grain foods: allowed}\n`,
      'has two rules for the same food, "grains" and',
    ],
    [
      `${BUT}allergies: [peanuts]\nfoods: {groundnuts: allowed}\n`,
      'allows "groundnuts" and names it as an allergy',
    ],
    [
      `${BUT}limits: [at least 40 g protein in a day, at most 20 g protein in a day]\n`,
      "asks for at least 40 g and at",
    ],
  ])("[D7] %j: %s", (text, sentence) => {
    expect(mistakesIn(text).join(" ")).toContain(sentence);
  });

  it("[D7] two diets: what one avoids is avoided, and limits that cannot both be kept are told", () => {
    expect(contradictions([butOf("rice: allowed"), butOf("rice: avoided")])).toEqual([]);
    const [more, less] = [
      limitsOf("at least 4000 mg potassium in a day"),
      limitsOf("at most 2000 mg potassium in a day"),
    ];
    expect(contradictions([more, less])).toEqual([
      "Test Diet and Test Diet ask for at least 4000 mg and at most 2000 mg potassium in a day, which cannot both be; ask your clinician which holds.",
    ]);
  });
});
