import { describe, expect, it } from "vitest";
import { listedPart } from "../../../core/diet/groups.ts";
import { readGroups } from "../../../core/diet/read-groups.ts";
import { normaliseFood } from "../../../core/food/names.ts";
import { compare, ratio } from "../../../core/units/rational.ts";
import { larder, shippedGroups } from "./diet-kit.ts";

const groupOf = (name: string) => larder.groups.get(normaliseFood(name));

describe("the list of groups", () => {
  it("[D1] lists, other names, lines that go on; a food by any of its names", () => {
    const text =
      "# head\nred foods\n  also  reds\n  is    tomatoes;\n        red bell pepper\n  may   sumac\n";
    const { groups, mistakes } = readGroups("groups.txt", text, larder.foods);
    const group = groups.get("red");
    expect([mistakes, group?.name, groups.get("red food")]).toEqual([[], "red foods", group]);
    expect([...(group?.is ?? [])]).toEqual(["tomato", "red bell pepper"]);
    expect(group === undefined ? null : listedPart(group, "sumac")).toBe("may");
  });

  it.each([
    ["  is   tomato\n", 1, "A list needs the name of its group above it"],
    ["reds\n  are  tomato\n", 2, '"are" is no list of a group; write also, is, has, may.'],
    ["reds\n  is   tomato\n  may  tomatoes\n", 3, '"tomatoes" stands under "is" of reds already'],
    ["reds\n  may  tomato\n", 1, "Nothing is of the group reds"],
    ["reds\n  is   tomato\nred\n  is   onion\n", 3, '"red" is a name of reds and of red'],
  ])("[D1] %j: line %d, %s", (text, line, sentence) => {
    const { mistakes } = readGroups("groups.txt", text, larder.foods);
    expect(mistakes.map((one) => [one.line, one.sentence.includes(sentence)])).toContainEqual([line, true]);
  });

  it("[D1] the list that ships has no mistake, and its narrower groups lie within the wider ones", () => {
    expect(shippedGroups.mistakes).toEqual([]);
    expect(new Set(larder.groups.values()).size).toBeGreaterThan(60);
    for (const [inner, outer] of [
      ["leafy greens", "vegetables"],
      ["citrus fruit", "fruit"],
      ["berries", "fruit"],
      ["rice", "grains"],
      ["wheat", "gluten grains"],
      ["gluten grains", "grains"],
      ["whole grains", "grains"],
      ["cheese", "milk products"],
      ["pork", "meat"],
      ["crustaceans", "shellfish"],
      ["soy", "legumes"],
    ] as const) {
      const [small, large] = [groupOf(inner), groupOf(outer)];
      const outside = [...(small?.is ?? [])].filter(
        (one) => large !== undefined && listedPart(large, one) === null,
      );
      expect([inner, outside]).toEqual([inner, []]);
    }
  });

  /** The fourteen of Annex II of EU Regulation 1169/2011, from memory. */
  it.each([
    ["cereals containing gluten", "rolled oats", "is"],
    ["crustaceans", "raw shrimp", "is"],
    ["eggs", "mayonnaise", "has"],
    ["fish", "Worcestershire sauce", "has"],
    ["peanuts", "peanut oil", "has"],
    ["soya", "tamari", "has"],
    ["milk", "ghee", "is"],
    ["nuts", "almond", "is"],
    ["celery", "celeriac", "is"],
    ["mustard", "mustard powder", "is"],
    ["sesame", "tahini", "is"],
    ["sulphur dioxide", "dried apricot", "has"],
    ["lupin", "white flour", "may"],
    ["molluscs", "raw mussel", "is"],
  ] as const)("[D2] %s: %s %s", (name, food, part) => {
    const group = groupOf(name);
    const main = larder.foods.get(normaliseFood(food))?.name ?? food;
    expect(group === undefined ? null : listedPart(group, normaliseFood(main))).toBe(part);
  });

  /** Common practice, no source: these are salty without anybody having added salt. */
  const BY_NATURE =
    /^(?:baking (?:powder|soda)|dried parsley|fresh wakame|skim milk powder|raw (?:clam|lobster))$/;

  it("[D3] above 300 mg sodium in 100 g (USDA SR28) a food is made with salt, or one of the few that are not", () => {
    const salt = groupOf("added salt");
    const foods = [...new Set(larder.foods.values())].filter(({ per100 }) => {
      return per100.sodium !== null && compare(per100.sodium, ratio(300)) > 0;
    });
    expect(foods.length).toBeGreaterThan(80);
    const unlisted = foods.filter(({ name }) => {
      return salt === undefined || listedPart(salt, normaliseFood(name)) === null;
    });
    expect(unlisted.map(({ name }) => name).filter((name) => !BY_NATURE.test(name))).toEqual([]);
  });

  it("[D3] below 20 mg sodium in 100 g (USDA SR28) hardly anything is listed as made with salt", () => {
    const salt = groupOf("added salt");
    const listed = [...new Set(larder.foods.values())].filter(({ name, per100 }) => {
      const part = salt === undefined ? null : listedPart(salt, normaliseFood(name));
      return part === "has" && per100.sodium !== null && compare(per100.sodium, ratio(20)) < 0;
    });
    // Boiled in salted water or packed in weak brine, by their names.
    expect(listed.map(({ name }) => name)).toEqual(["reduced-sodium dill pickle", "cooked rice noodles"]);
  });
});
