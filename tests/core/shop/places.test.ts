import { describe, expect, it } from "vitest";
import { normaliseFood } from "../../../core/food/names.ts";
import { elsewhere, placeOf, readPlaces } from "../../../core/shop/places.ts";
import { foods, listFor, shippedPlaces, soupAndSauce } from "./market.ts";

describe("where things are in the shop", () => {
  it("[B14] every food of the table has one place, and no name has two", () => {
    expect(shippedPlaces.mistakes).toEqual([]);
    const homeless = foods.filter(({ name }) => !shippedPlaces.places.has(normaliseFood(name)));
    expect(homeless.map(({ name }) => name)).toEqual([]);
    expect(foods.length).toBeGreaterThanOrEqual(739);
  });

  it("[B14] names that stand before the other names are foods of the table", async () => {
    const known = new Set(foods.map(({ name }) => normaliseFood(name)));
    const { readFile } = await import("node:fs/promises");
    const text = await readFile(new URL("../../../recipes/foods/places.txt", import.meta.url), "utf8");
    const own = text.split(/\n(?=\S)/).flatMap((paragraph) =>
      paragraph
        .replace(/\n {2}or [\s\S]*$/, "")
        .split("\n")
        .slice(1),
    );
    const names = own
      .flatMap((line) => line.split(";").map((name) => name.trim()))
      .filter((name) => name !== "");
    expect(names.filter((name) => !known.has(normaliseFood(name)))).toEqual([]);
  });

  it.each([
    ["carrot", "fruit and vegetables"],
    ["dry chickpea", "grains, beans and pasta"],
    ["rinsed canned chickpea", "tins and jars"],
    ["whole milk", "chilled"],
    ["frozen spinach", "frozen"],
    ["dried thyme", "spices and dried herbs"],
    ["whole wheat flour", "baking and sugar"],
    ["olive oil", "oil, vinegar and sauces"],
    ["raw salmon of the moon", "somewhere else"],
  ])("[B14] %s: %s", (name, place) => {
    expect(placeOf(shippedPlaces.places, [name]).name).toBe(place);
  });

  it("[B14] the list goes by place, frozen things after the others, what has no place at the very end", () => {
    const meals = soupAndSauce([
      "1 cup frozen spinach",
      "1 moon berry",
      "2 leeks",
      "1 tsp dried thyme",
      "1 carrot",
    ]);
    expect(listFor(meals).buy.map(({ name, place }) => `${name}: ${place.name}`)).toEqual([
      "carrot: fruit and vegetables",
      "leeks: fruit and vegetables",
      "dried thyme: spices and dried herbs",
      "frozen spinach: frozen",
      "moon berry: somewhere else",
    ]);
    expect(elsewhere.order).toBeGreaterThan(100);
  });

  it("[B15] a mistake in the table of places is told with its line", () => {
    const { places, mistakes } = readPlaces(
      "places.txt",
      "# note\n  leek\nshelf\n  leek; rice;\n  or fog\ncellar\n  Leeks\n",
    );
    expect(mistakes).toEqual([
      {
        file: "places.txt",
        line: 2,
        field: "",
        sentence: "This line belongs to no place; write the place's name above it.",
      },
      {
        file: "places.txt",
        line: 7,
        field: "",
        sentence: '"Leeks" already stands under shelf; a food has one place.',
      },
    ]);
    expect([...places].map(([name, place]) => [name, place.name])).toEqual([
      ["leek", "shelf"],
      ["rice", "shelf"],
      ["fog", "shelf"],
    ]);
  });
});
