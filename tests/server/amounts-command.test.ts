import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { AmountsJson } from "../../server/cli/amounts-json.ts";
import { amountsCommand } from "../../server/cli/amounts.ts";
import { inProgram } from "../../server/cli/in-program.ts";
import { runCli } from "../../server/cli/run-cli.ts";

let out: string[] = [];
let told: string[] = [];

beforeEach(() => {
  [out, told] = [[], []];
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.restoreAllMocks();
});

const amounts = (...words: readonly string[]): Promise<number> =>
  runCli(["amounts", ...words], [amountsCommand]);
const json = (): AmountsJson => JSON.parse(out.join("\n")) as AmountsJson;

describe("amounts on the command line", () => {
  it("[R59] from what is in the house: the list, how much it makes, and why; 80 letters wide", async () => {
    expect([await amounts("lentil-soup", "--have", "600 g red lentils"), told]).toEqual([0, []]);
    expect(out.filter((line) => line.length > 80 || line !== line.trimEnd())).toEqual([]);
    expect(out[0]).toBe("From 600 grams of red lentils, of which the recipe takes 1 1/2 cups.");
    expect(out[2]).toBe("Smoky Lentil Soup: 8 1/3 bowls, 2 1/12 times the recipe for 4");
    const text = out.join(" ");
    expect(text).toMatch(/12½ cups {2}water/);
    expect(text).toContain("cilantro, chopped (may be left out)");
    expect(text).toContain("Enough for 8 whole bowls.");
    expect(text).toContain(
      "- Spice grows stronger than its amount: begin with three quarters of the smoked paprika",
    );
  });

  it("[R59] the same for another program, exactly", async () => {
    expect([await amounts("lentil-soup", "--have", "300 g red lentils", "--json"), told]).toEqual([0, []]);
    const [soup] = json().dishes;
    expect(soup).toMatchObject({ dish: "lentil-soup", factor: "25/24", of: "bowls", cautions: [] });
    expect(soup?.servings).toBeCloseTo(25 / 6, 12);
    expect(soup?.ingredients.find(({ item }) => item === "water")).toEqual({
      item: "water",
      preparation: null,
      optional: false,
      exact: "6 1/4 cups",
      told: "6¼ cups",
    });
  });

  it("[R59] a meal by the servings of its dishes, each from the recipe as written", async () => {
    await amounts(
      "fog-bell-breakfast",
      "--servings",
      "apple-porridge=6",
      "--servings",
      "stewed-plums=1",
      "--json",
    );
    expect(json().dishes.map(({ dish, factor }) => [dish, factor])).toEqual([
      ["apple-porridge", "2/1"],
      ["chickpea-pancakes", "1/1"],
      ["stewed-plums", "1/3"],
    ]);
  });

  it("[R59] one dish by its file, for servings, some times, or another pan", async () => {
    const file = inProgram("recipes/dishes/berry-crumble.yaml");
    const factor = async (...words: readonly string[]): Promise<string | undefined> => {
      out = [];
      await amounts(file, "--json", ...words);
      return json().dishes[0]?.factor;
    };
    expect(await factor("--servings", "6")).toBe("3/2");
    expect(await factor("--times", "1 1/2")).toBe("3/2");
    expect(await factor("--pan", "10 cm square to 20 cm square")).toBe("4/1");
    // The pan was chosen for it.
    expect(json().dishes[0]?.cautions.map(({ about }) => about)).not.toContain("pan");
    expect(await factor()).toBe("1/1");
  });

  it.each([
    [[], 2, "Name a dish or a meal, for instance: amounts lentil-soup --times 2"],
    [["a", "b"], 2, 'amounts takes one dish or meal; "b" is one word too many.'],
    [["a", "--times", "2", "--have", "1 onion"], 2, "Scale in one way only, not by times and have at once."],
    [["lentil-soop"], 1, "There is no dish or meal called lentil-soop. Did you mean lentil-soup?"],
    [["lentil-soup", "--times", "0"], 1, "Nothing can be made no times; write a number above nought."],
    [["lentil-soup", "--times=-1"], 1, '"-1" is less than nothing; write a number above nought.'],
    [
      ["lentil-soup", "--times", "1000"],
      1,
      "That is more than 100 servings of Smoky Lentil Soup; no home kitchen makes so much at once.",
    ],
    [
      ["lentil-soup", "--servings", "some"],
      1,
      '"some" is no number of servings; write a whole one from 1 to 100.',
    ],
    [["welcome-supper", "--servings", "4"], 1, "Name the dish too, like --servings lentil-soup=4."],
    [
      ["fog-bell-breakfast", "--servings", "kachumber=4"],
      1,
      "Fog Bell Breakfast has no dish kachumber; it has apple-porridge, chickpea-pancakes and stewed-plums.",
    ],
    [
      ["berry-crumble", "--pan", "9 inch round"],
      1,
      '"9 inch round" is not two pans; write them like 9 inch round to 8 inch square.',
    ],
    [
      ["welcome-supper", "--have", "1 cup orange juice"],
      1,
      "Several dishes of Welcome Supper take it; name one of them instead of the meal.",
    ],
    [
      ["/tmp/soup.yaml"],
      1,
      "/tmp/soup.yaml does not lie in a folder called dishes or meals. Move it there, or give a name.",
    ],
  ])("[R59] amounts %j is answered with one sentence", async (words, code, sentence) => {
    expect([await amounts(...words), told, out]).toEqual([code, [sentence], []]);
  });

  it.each([
    [["lentil-soup", "--servings", "-2"], '"-2" is no number of servings; write a whole one from 1 to 100.'],
    [["lentil-soup", "--times", "-1.5"], '"-1.5" is less than nothing; write a number above nought.'],
  ])("[F63] amounts %j: a number below nought is told as that", async (words, sentence) => {
    expect([await amounts(...words), told, out]).toEqual([1, [sentence], []]);
  });
});
