import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { runCli } from "../../server/cli/run-cli.ts";
import type { MealValuesJson, ValuePartsJson } from "../../server/cli/values-json.ts";
import { valuesCommand } from "../../server/cli/values.ts";
import { loadFoods } from "../../server/pantry/load-foods.ts";

let folder = "";
let out: string[] = [];
let told: string[] = [];

beforeEach(() => {
  [out, told] = [[], []];
  folder = mkdtempSync(join(tmpdir(), "values-"));
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const values = (...words: readonly string[]): Promise<number> =>
  runCli(["values", ...words], [valuesCommand]);

describe("the values of a meal on the command line", () => {
  it("[F16] dishes, servings and the meal, what is unknown, the source, a caution; 80 letters wide", async () => {
    expect([await values("welcome-supper"), told]).toEqual([0, []]);
    expect(out.filter((line) => line.length > 80 || line !== line.trimEnd())).toEqual([]);
    expect(out[0]).toBe("Smoky Lentil Soup, 4 servings");
    expect(out.filter((line) => /^sodium +(?:at least )?\d+ (?:to \d+ )?mg/.test(line)).length).toBe(6);
    const text = out.join(" ");
    expect(text).toMatch(/vitamin C +at least [\d.]+ mg +at least [\d.]+ mg +1 of 9/);
    expect(text).toContain("No value for phosphorus: crushed tomatoes.");
    expect(text).toContain("No value for sugars: red lentils.");
    expect(text).toContain("Size taken, because the recipe names none: yellow onion (medium).");
    expect(text).toContain("Not counted: black pepper (to taste), cilantro (optional).");
    expect(text).toMatch(/Welcome Supper, all dishes .*one serving of each/);
    expect(text).toContain("Source: USDA National Nutrient Database for Standard Reference, Release 28");
    expect(text).toContain("This is no medical advice");
  });

  it("[F16] the same for another program: foods with their numbers, grams, and no ceiling over what is unknown", async () => {
    expect([await values("welcome-supper", "--json"), told, out.length]).toEqual([0, [], 1]);
    const meal = JSON.parse(out[0] ?? "") as MealValuesJson;
    const soup = meal.dishes.find(({ dish }) => dish === "lentil-soup");
    expect(meal.source).toContain("USDA");
    expect(meal.caution).toContain("no medical advice");
    expect(soup?.ingredients.find(({ item }) => item === "red lentils")).toEqual({
      item: "red lentils",
      amount: "1 1/2 cups",
      food: "dry red lentil",
      ndb: "16144",
      label: null,
      refuse: 0,
      grams: { low: 288, high: 288 },
      assumed: null,
      note: null,
      why: null,
    });
    expect(soup?.inAll.phosphorus).toMatchObject({ unit: "mg", high: null, unknown: ["crushed tomatoes"] });
    const carrots = meal.dishes.find(({ dish }) => dish === "cumin-carrots");
    // Eleven percent of a carrot is refuse (SR28 number 11124), and the dish does not say whether it is weighed too.
    expect(carrots?.ingredients.find(({ item }) => item === "carrots")).toMatchObject({
      refuse: 11,
      grams: { low: 605.55, high: 680.39 },
    });
    expect(meal.inAll.phosphorus.unknown).toContain("crushed tomatoes (Smoky Lentil Soup)");
  });

  it("[F36] each ingredient's figures are told with where they are from: a number in SR28 or a label", async () => {
    await values("welcome-supper");
    const text = out.join(" ");
    expect(text).toContain("From a label, as far as its rounding tells: crushed tomatoes");
    expect(text).toContain("(labels/crushed-tomatoes.yaml).");
    expect(text).toContain("From SR28, by number: yellow onion (11282), garlic (11215),");
    out = [];
    await values("welcome-supper", "--json");
    const meal = JSON.parse(out[0] ?? "") as MealValuesJson;
    const soup = meal.dishes.find(({ dish }) => dish === "lentil-soup");
    const tomatoes = soup?.ingredients.find(({ item }) => item === "crushed tomatoes");
    expect(tomatoes).toMatchObject({ ndb: null, label: "labels/crushed-tomatoes.yaml", refuse: 0 });
    // A cup of 236.5882365 mL, by 121 g in half a label cup of 240 mL.
    expect(tomatoes?.grams?.low).toBeCloseTo((236.5882365 * 121) / 120, 2);
    expect(soup?.inAll.sodium.low).toBeLessThan(soup?.inAll.sodium.high ?? 0);
  });

  it("[F58] --of tells where one value comes from: foods, numbers or labels, grams, in 100 g, in all; 80 wide", async () => {
    expect([await values("welcome-supper", "--of", "sodium"), told]).toEqual([0, []]);
    expect(out.filter((line) => line.length > 80 || line !== line.trimEnd())).toEqual([]);
    // SR28 number 16144: 7 mg of sodium in 100 g.
    const row = out.findIndex((line) => line.startsWith("red lentils"));
    expect(out.slice(row, row + 2).join(" ")).toMatch(
      /^red lentils, 1 1\/2 +dry red lentil, SR28 +288 g +7 mg +20.2 mg +cups +number 16144$/,
    );
    const text = out.join(" ");
    expect(text).toContain("sodium: 119 to 128 mg in all, 30 to 32 mg a serving.");
    expect(text).toContain("1. The recipe names no size, so a medium one was taken.");
    expect(text).toContain("Not counted: black pepper (to taste), cilantro (optional).");
    expect(text).toContain("USDA National Nutrient Database for Standard Reference, Release 28");
    expect(text).toContain("This is no medical advice");
  });

  it("[F58] --of and --json: the same for another program, by any name that the value has", async () => {
    expect([await values("welcome-supper", "--of", "Sugar", "--json"), told, out.length]).toEqual([0, [], 1]);
    const { of, unit, source, dishes } = JSON.parse(out[0] ?? "") as ValuePartsJson;
    expect([of, unit, source.slice(0, 4)]).toEqual(["sugars", "g", "USDA"]);
    const [soup] = dishes;
    expect(soup?.inAll).toMatchObject({ high: null, unknown: ["red lentils"] });
    expect(soup?.parts.at(-1)).toMatchObject({
      item: "red lentils",
      ndb: "16144",
      grams: { low: 288, high: 288 },
      why: "The table of foods has no figure for it.",
      in100g: null,
      inAll: null,
      aServing: null,
    });
    // SR28 number 09152: 2.52 g of sugars in 100 g of lemon juice.
    expect(soup?.parts.find(({ item }) => item === "lemon juice")).toMatchObject({
      ndb: "09152",
      in100g: { low: 2.52, high: 2.52 },
      inAll: { low: 0.77, high: 0.77 },
      why: null,
    });
  });

  it("[F36] a label of the cook's own folder counts there, and one with a mistake stops the reckoning", async () => {
    for (const shelf of ["dishes", "meals", "kitchens", "labels"]) mkdirSync(join(folder, shelf));
    writeFileSync(
      join(folder, "dishes/fog.yaml"),
      "dish: Fog\nabout: Known.\nyield: 1 bowl\ningredients: { fog: 50 g }\nsteps: { stir: { do: Stir., with: fog, time: 1 min } }\n",
    );
    writeFileSync(join(folder, "kitchens/nook.yaml"), "kitchen: Nook\nburners: 1\n");
    const file = join(folder, "meals/mist.yaml");
    writeFileSync(file, "meal: Mist\nabout: Nothing.\nkitchen: nook\ndishes: { fog: 1 }\n");
    const label = join(folder, "labels/fog.yaml");
    writeFileSync(label, "label: fog\nserving: 25 g\nvalues: { sodium: 200 mg }\n");
    expect([await values(file), told]).toEqual([0, []]);
    expect(out.find((line) => line.startsWith("sodium"))).toMatch(/^sodium +390 to 410 mg +390 to 410 mg$/);
    writeFileSync(label, "label: fog\nserving: 25 g\nvalues: { sodium: 200 kg }\n");
    out = [];
    expect([await values(file), told, out]).toEqual([
      1,
      [
        'labels/fog.yaml, line 3: "200 kg" is no figure of a label; write a number and its unit, like 140 mg.',
      ],
      [],
    ]);
  });

  it("[F14] where no ingredient has a figure there is none, and no nought", async () => {
    for (const shelf of ["dishes", "meals", "kitchens"]) mkdirSync(join(folder, shelf));
    writeFileSync(
      join(folder, "dishes/fog.yaml"),
      "dish: Fog\nabout: Nothing known.\nyield: 1 bowl\ningredients: { fog: 1 cup }\nsteps: { stir: { do: Stir., with: fog, time: 1 min } }\n",
    );
    writeFileSync(join(folder, "kitchens/nook.yaml"), "kitchen: Nook\nburners: 1\n");
    const file = join(folder, "meals/mist.yaml");
    writeFileSync(file, "meal: Mist\nabout: Nothing.\nkitchen: nook\ndishes: { fog: 1 }\n");
    expect([await values(file), told]).toEqual([0, []]);
    expect(out.find((line) => line.startsWith("sodium"))).toMatch(/^sodium +unknown +unknown +1 of 1$/);
    out = [];
    await values(file, "--json");
    const meal = JSON.parse(out[0] ?? "") as MealValuesJson;
    expect(meal.inAll.sodium).toEqual({ unit: "mg", low: null, high: null, unknown: ["fog (Fog)"] });
  });

  it.each([
    [[], 2, "Name the meal to reckon, for instance: values welcome-supper"],
    [["welcome-supper", "again"], 2, 'values takes one meal; "again" is one word too many.'],
    [["welcome-supper", "--grams"], 2, "There is no option --grams."],
    [["welcome-supper", "--of"], 2, "--of needs a value after it."],
    [
      ["welcome-supper", "--of", "moonlight"],
      2,
      'There is no value called "moonlight"; they are energy, protein, fat, saturated fat, carbohydrate, fibre, sugars, sodium, potassium, phosphorus, calcium, iron and vitamin C.',
    ],
    [
      ["no-such-meal"],
      1,
      "There is no meal called no-such-meal. There are: fog-bell-breakfast, slack-water-lunch, welcome-supper.",
    ],
  ])("[F17] values %j is answered with one sentence", async (words, code, sentence) => {
    expect([await values(...words), told, out]).toEqual([code, [sentence], []]);
  });
});

describe("the table of foods on disk", () => {
  it("[F5] a missing table and one with a mistake are told in one sentence", async () => {
    const place = join(folder, "foods/foods.txt");
    expect(await loadFoods(folder)).toEqual({
      ok: false,
      error: `The table of foods, ${place}, cannot be read; put it back.`,
    });
    mkdirSync(join(folder, "foods"));
    writeFileSync(place, "# no food yet\nbeet\n  usda 1\n");
    expect(await loadFoods(folder)).toEqual({
      ok: false,
      error: 'foods/foods.txt, line 3: "1" is no NDB number; it has five digits.',
    });
  });
});
