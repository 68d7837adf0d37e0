import { describe, expect, it } from "vitest";
import type { Diet } from "../../../core/diet/diet.ts";
import { butOf, checkOf, dietOf, onlyOf, told } from "./diet-kit.ts";

const NO_SALT = butOf("added salt: avoided");
const answer = (diet: Diet, line: string): string => checkOf(diet, [line]).verdict;

describe("what a diet says of an ingredient", () => {
  it.each([
    ["2 cups water", "allowed"],
    ["2 cups dry lentils", "allowed"],
    ["salt to taste", "not allowed"],
    ["1 tsp sea salt", "not allowed"],
    ["1 tsp chili powder", "not allowed"],
    ["1 stock cube", "not allowed"],
    ["1 cup canned chickpeas, drained", "not allowed"],
    ["2 tbsp soya sauce", "not allowed"],
    ["1 tsp curry powder", "cannot tell"],
    ["1 cup chickpeas", "cannot tell"],
    ["1 cup moonberries", "cannot tell"],
  ])("[D8] [D9] [D10] no added salt: %s is %s", (line, verdict) => {
    expect(answer(NO_SALT, line)).toBe(verdict);
  });

  it("[D9] it is told what a food counts as and what it is made with", () => {
    const diet = butOf("added salt: avoided", "grains: avoided");
    expect(told(checkOf(diet, ["2 tbsp soy sauce", "1 cup brown rice"]))).toEqual([
      "not allowed | soy sauce | Soy sauce is made with added salt, which is avoided.",
      "not allowed | soy sauce | Soy sauce is made with grains, which are avoided.",
      "not allowed | brown rice | Brown rice counts as grains, which are avoided.",
    ]);
  });

  it("[D10] of a food in no table everything that is avoided is told at once, and its words are looked at", () => {
    const diet = dietOf(
      "may-eat: all but what is listed\nfoods: {added salt: avoided, rice: avoided}\nallergies: [peanuts]\n",
    );
    expect(told(checkOf(diet, ["50 g peanut brittle", "1 cup moonberries"]))).toEqual([
      "cannot tell | peanut brittle | Peanut brittle may hold peanuts (the packet tells), an allergy that this diet names.",
      'cannot tell | peanut brittle | I cannot tell whether peanut brittle holds added salt or rice. No food in the table is called "peanut brittle".',
      'cannot tell | moonberries | I cannot tell whether moonberries hold peanuts, added salt or rice. No food in the table is called "moonberries".',
    ]);
  });

  it.each([
    [["grains: avoided", "rolled oats: allowed"], "1 cup rolled oats", "allowed"],
    [["grains: avoided", "rolled oats: allowed"], "1 cup brown rice", "not allowed"],
    [["fruit: avoided", "citrus fruit: allowed"], "2 lemons", "allowed"],
    [["fruit: avoided", "citrus fruit: allowed"], "1 apple", "not allowed"],
    [["fruit: allowed", "citrus fruit: avoided"], "2 lemons", "not allowed"],
    [["added salt: avoided", "legumes: allowed"], "2 tbsp miso", "not allowed"],
    [["added salt: avoided", "miso: allowed"], "2 tbsp miso", "allowed"],
  ])("[D11] %j: %s is %s", (foods, line, verdict) => {
    expect(answer(butOf(...foods), line)).toBe(verdict);
  });

  it.each([
    ["400 g parsnips, fried", "cannot tell"],
    ["400 g parsnips, cut in sticks", "allowed"],
    ["1 can parsnips", "cannot tell"],
    ["1 parsnip, steamed", "allowed"],
    ["1 lime, preserved in salt", "cannot tell"],
    ["1 lime, juice kept", "allowed"],
    ["1 lime, in light syrup", "cannot tell"],
    ["1 lime, rubbed with oil", "cannot tell"],
    ["1 (14.5 oz) can tomatoes, drained", "not allowed"],
    ["1 can tomatoes, no salt added", "allowed"],
    ["400 g tomatoes", "allowed"],
  ])("[D50] no added salt or fat, only what is listed: %s is %s", (line, verdict) => {
    const foods = ["parsnip: allowed", "lime: allowed", "tomatoes: allowed"];
    expect(answer(onlyOf(...foods, "added salt: avoided", "added fat: avoided"), line)).toBe(verdict);
  });

  it.each([
    ["salt and pepper to taste", "not allowed"],
    ["1 tsp salt & black pepper", "not allowed"],
    ["1 tbsp parsley and dill", "allowed"],
    ["1 tbsp black pepper and moonberries", "cannot tell"],
    ["1 tsp flaky sea salt", "not allowed"],
    ["1 tsp Himalayan pink salt", "not allowed"],
    ["2 tsp gomasio", "not allowed"],
  ])("[D51] no added salt: %s is %s", (line, verdict) => {
    expect(answer(NO_SALT, line)).toBe(verdict);
  });

  it("[D50] what is avoided is found however it was put up", () => {
    expect(answer(butOf("parsnip: avoided"), "1 can parsnips, salted")).toBe("not allowed");
  });

  it("[D11] nothing lifts an allergy", () => {
    const diet = dietOf("may-eat: all but what is listed\nfoods: {hummus: allowed}\nallergies: [sesame]\n");
    expect(answer(diet, "1 cup hummus")).toBe("not allowed");
  });

  it("[D12] only what is listed", () => {
    const diet = onlyOf(
      "vegetables: allowed",
      "cumin seed: allowed",
      "dulse: { rule: allowed, also-called: [] }",
    );
    const lines = [
      "1 onion",
      "1 tsp cumin",
      "1 tbsp dulse",
      "1 cup water",
      "2 apples",
      "1 tbsp olive oil",
      "1 cup moonberries",
    ];
    expect(told(checkOf(diet, lines))).toEqual([
      "not allowed | apples | Apples are not on the list of Test Diet.",
      "not allowed | olive oil | Olive oil is not on the list of Test Diet.",
      'cannot tell | moonberries | I cannot tell whether moonberries are on the list of Test Diet. No food in the table is called "moonberries".',
    ]);
  });

  it.each([
    ["milk products: { rule: allowed, only: nonfat }", "1 cup skim milk", "allowed"],
    ["milk products: { rule: allowed, only: nonfat }", "1 cup low-fat milk", "not allowed"],
    ["milk products: { rule: allowed, only: nonfat }", "1 cup milk", "cannot tell"],
    ["milk products: { rule: allowed, only: low-fat }", "1 cup low-fat milk", "allowed"],
    ["tree nuts: { rule: allowed, only: unsalted }", "30 g cashews", "allowed"],
    ["legumes: { rule: allowed, only: unsalted }", "30 g canned chickpeas, drained", "not allowed"],
    ["fruit: { rule: allowed, only: unsweetened }", "30 g dried cranberries", "not allowed"],
    ["vegetables: { rule: allowed, only: organic }", "2 carrots", "cannot tell"],
    ["vegetables: { rule: allowed, only: organic }", "2 carrots, organic", "allowed"],
    ["grains: { rule: allowed, only: whole-grain }", "1 cup brown rice", "allowed"],
    ["grains: { rule: allowed, only: whole-grain }", "1 cup dry long-grain white rice", "not allowed"],
    ["grains: { rule: allowed, only: whole-grain }", "1 cup moonrice", "cannot tell"],
    ["spices: { rule: allowed, these: [cumin seed] }", "1 tsp cumin", "allowed"],
    ["spices: { rule: allowed, these: [cumin seed] }", "1 tsp paprika", "not allowed"],
    ["spices: { rule: allowed, these: [cumin seed] }", "2 tbsp ketchup", "cannot tell"],
  ])("[D13] %s: %s is %s", (rule, line, verdict) => {
    expect(answer(butOf(rule), line)).toBe(verdict);
  });

  it.each([
    ["1 cup canned tomatoes", "not allowed"],
    ["1 cup canned tomatoes, no salt added", "allowed"],
    ["1 tsp curry powder, without salt", "allowed"],
    ["1 cup crushed tomatoes, no salt added", "allowed"],
  ])("[D14] no added salt: %s is %s", (line, verdict) => {
    expect(answer(NO_SALT, line)).toBe(verdict);
  });
});
