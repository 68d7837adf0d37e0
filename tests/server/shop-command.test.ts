import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { runCli } from "../../server/cli/run-cli.ts";
import type { ShopJson } from "../../server/cli/shop-json.ts";
import { shopCommand } from "../../server/cli/shop.ts";
import { emptyHouseLog } from "../../core/house/house.ts";
import { holdLog } from "../../server/store/hold-log.ts";
import { at } from "../core/cook/supper.ts";
import { afterSupper, give, made, servings, store, supper } from "../core/house/house-at.ts";
import { keepHouse, wantIn } from "./kept-house.ts";
import { loadPlaces } from "../../server/pantry/load-places.ts";

let folder = "";
let out: string[] = [];
let told: string[] = [];

beforeEach(() => {
  [out, told] = [[], []];
  folder = mkdtempSync(join(tmpdir(), "shop-"));
  keepHouse(folder, emptyHouseLog);
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(...text.split("\n")));
  vi.spyOn(console, "error").mockImplementation((text: string) => void told.push(text));
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const shop = (...words: readonly string[]): Promise<number> =>
  runCli(["shop", ...words, "--data", folder], [shopCommand]);

const day = 60 * 24;

/** Of the soup that ships three bowls are in the fridge, a day after they were put there. */
function soupInTheFridge(): void {
  const soup = made("lentil-soup", { name: "Smoky Lentil Soup", says: ["soup"] });
  const noted = give(afterSupper(), 125, { type: "NoteMeal", made: { ...supper, dishes: [soup] } });
  keepHouse(folder, give(noted, 130, store("lentil-soup", servings(3))));
}

/** The house of the folder wants these. */
const want = (...names: readonly string[]): void => wantIn(folder, ...names);

const write = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};

async function json(...words: readonly string[]): Promise<ShopJson> {
  out = [];
  expect(await shop(...words, "--json")).toBe(0);
  return JSON.parse(out[0] ?? "") as ShopJson;
}

describe("the buying list on the command line", () => {
  it("[B24] meals, dishes, places, boxes to tick, who wants how much, a caution; 80 letters wide", async () => {
    expect([await shop("welcome-supper", "slack-water-lunch"), told]).toEqual([0, []]);
    expect(out.filter((line) => [...line].length > 80 || line !== line.trimEnd())).toEqual([]);
    expect(out[0]).toBe("What to buy for Welcome Supper and Slack Water Lunch");
    const places = out.filter((line) => line !== "" && line === line.toUpperCase());
    expect(places.slice(0, 3)).toEqual(["FRUIT AND VEGETABLES", "GRAINS, BEANS AND PASTA", "TINS AND JARS"]);
    expect(places.slice(-2)).toEqual(["IF YOU LIKE", "LOOK WHETHER THERE IS ENOUGH"]);
    const text = out.join(" ").replace(/ +/g, " ");
    expect(text).toContain(
      "[ ] garlic: 9 cloves, about a head 3 cloves for the soup, 2 cloves for the carrots",
    );
    expect(text).toContain("this list checks no diet and no allergy");
    expect(text).not.toMatch(/\bwater:/);
  });

  it("[B44] what the house wants besides stands under also wanted, and in --json; what was bought does not", async () => {
    want("kitchen paper", "lemon", "candles!");
    expect([await shop("welcome-supper"), told]).toEqual([0, []]);
    const at = out.indexOf("ALSO WANTED");
    // The lemons are on the list for a meal.
    expect(out.slice(at, at + 3)).toEqual(["ALSO WANTED", "[ ]  kitchen paper", ""]);
    expect(await json("welcome-supper")).toMatchObject({ alsoWanted: ["kitchen paper", "lemon"] });
  });

  it("[B44] where no log can be read nothing is known to be wanted, that is told, and the list is made", async () => {
    for (const name of readdirSync(folder)) rmSync(join(folder, name));
    expect(await json("welcome-supper")).toMatchObject({ alsoWanted: [], fridge: [] });
    expect(readdirSync(folder)).toEqual([]);
    write(
      "stovecall.db",
      "no log at all, but some text that is longer than a header of such a file would be".repeat(20),
    );
    told = [];
    expect([await shop("welcome-supper"), told.length]).toEqual([0, 1]);
  });

  it("[B24] every ingredient of every dish is on the list, but for the water", async () => {
    const { meals, buy, ifYouLike, look } = await json(
      "welcome-supper",
      "slack-water-lunch",
      "fog-bell-breakfast",
    );
    expect(meals.map(({ meal }) => meal)).toEqual([
      "welcome-supper",
      "slack-water-lunch",
      "fog-bell-breakfast",
    ]);
    // Counted in the thirteen files by hand: 78 ingredients, 8 of them water.
    expect([...buy, ...ifYouLike, ...look].flatMap((line) => line.for)).toHaveLength(70);
  });

  it("[B25] the same for another program: weights without and with refuse, what is not known is null", async () => {
    const { buy, caution } = await json("welcome-supper");
    expect(caution).toContain("clinician");
    // SR28 11124: refuse of carrots 11 %; a pound is 453.59237 g. The recipe says not whether it weighs them peeled.
    expect(buy.find(({ name }) => name === "carrots")).toEqual({
      name: "carrots",
      food: "carrot",
      place: "fruit and vegetables",
      buy: "1½ lb, about 770 g",
      amounts: ["1 1/2 pounds"],
      pieces: null,
      parts: [],
      grams: { low: 605.55, high: 680.39 },
      boughtGrams: 764.48,
      notes: [],
      for: [{ dish: "carrots", amount: "1 1/2 pounds", item: "carrots" }],
      inHouse: [],
      notReckoned: [],
    });
    expect(buy.find(({ name }) => name === "crushed tomatoes")).toMatchObject({
      food: null,
      amounts: ["1 cup"],
      grams: null,
      boughtGrams: null,
      notes: ["no salt added"],
    });
    // SR28 09152: 7 tbsp of juice at 244 g a cup, 48 g from a lemon.
    expect(buy.find(({ name }) => name === "lemon")).toMatchObject({
      buy: "3, for ≈½ cup juice",
      pieces: { low: 2.22, high: 2.22 },
      parts: [{ part: "juice" }],
    });
  });

  it("[B25] with the servings that are asked for", async () => {
    const { meals, buy } = await json(
      "welcome-supper",
      "--servings",
      "lentil-soup=8",
      "--servings",
      "cumin-carrots=2",
    );
    expect(meals[0]?.dishes.slice(0, 2)).toEqual([
      { dish: "lentil-soup", servings: 8 },
      { dish: "cumin-carrots", servings: 2 },
    ]);
    expect(buy.find(({ name }) => name === "red lentils")?.amounts).toEqual(["3 cups"]);
    expect(buy.find(({ name }) => name === "garlic")?.for).toEqual([
      { dish: "soup", amount: "6 cloves", item: "garlic" },
      { dish: "carrots", amount: "1 clove", item: "garlic" },
    ]);
  });

  it("[B26] what is in the house is taken off, and a line that cannot be read is told by its number", async () => {
    const have = write("cupboard.txt", "3 lemons\noil\n\n3 cups\nhalf a head of garlic\n");
    const { buy, enough, notNeeded } = await json("welcome-supper", "--have", have);
    expect(told).toEqual([
      `${have}, line 4: "3 cups" names no food; write one behind the amount, like 3 onions. Nothing was taken off for it.`,
    ]);
    expect(enough.map(({ name, inHouse }) => [name, inHouse])).toEqual([
      ["garlic", ["half a head of garlic"]],
      ["lemon", ["3 lemons"]],
    ]);
    expect(buy.some(({ name }) => name === "lemon")).toBe(false);
    expect(notNeeded).toEqual(["oil"]);
  });

  it("[B31] the list is written as a page; where that cannot be it is told", async () => {
    const page = join(folder, "list.html");
    expect([await shop("welcome-supper", "--page", page), told]).toEqual([0, []]);
    expect(readFileSync(page, "utf8")).toContain("<b>garlic</b>: 5 cloves, about half a head");
    expect([await shop("welcome-supper", "--page", "/nowhere/list.html"), told]).toEqual([
      1,
      ["/nowhere/list.html cannot be written. Name a file in a folder that is there."],
    ]);
  });

  it("[B36] of what is in the fridge it tells at the top; how many to cook is for the cook", async () => {
    const plain = await json("welcome-supper");
    soupInTheFridge();
    vi.useFakeTimers({ now: at(day), toFake: ["Date"] });
    const told = await json("welcome-supper");
    expect(told.fridge).toMatchObject([
      { kind: "dish", name: "Smoky Lentil Soup", dish: "lentil-soup", place: "fridge", servings: 3 },
    ]);
    expect({ ...told, fridge: [] }).toEqual(plain);
    out = [];
    expect(await shop("welcome-supper")).toBe(0);
    expect(out.filter((line) => [...line].length > 80)).toEqual([]);
    expect(out.join(" ")).toMatch(
      /Left from before: 3 bowls of smoky lentil soup are in the fridge until \w+day, Jan \d: eat those first, or cook fewer\./,
    );
    vi.useFakeTimers({ now: at(day * 6), toFake: ["Date"] });
    await shop("welcome-supper");
    expect(out.join(" ")).toContain("Throw away the smoky lentil soup, 3 bowls: it is past its day.");
  });

  it("[B36] also beside a server that runs; without a log, or with one that is damaged, the list goes on", async () => {
    soupInTheFridge();
    vi.useFakeTimers({ now: at(day), toFake: ["Date"] });
    const hold = holdLog(folder);
    expect((await json("welcome-supper")).fridge).toHaveLength(1);
    if (hold.ok) hold.value();
    const bare = join(folder, "bare");
    expect(await runCli(["shop", "welcome-supper", "--data", bare], [shopCommand])).toBe(0);
    writeFileSync(join(folder, "stovecall.db"), "no log at all, and long enough for one".repeat(60));
    expect(await shop("welcome-supper")).toBe(0);
    expect(told).toEqual([
      `There is no meal log in ${bare}. Cook a meal first, or name its folder after --data. So nothing is known of the house.`,
      expect.stringMatching(/is damaged.* So nothing is known of the house\.$/),
    ]);
  });

  it.each([
    [[], 2, "Name the meals to shop for, for instance: shop welcome-supper"],
    [["welcome-supper", "--loud"], 2, "There is no option --loud."],
    [
      ["welcome-supper", "--servings", "soup"],
      2,
      "--servings takes a dish and a whole number from 1 to 100, for instance: --servings lentil-soup=6",
    ],
    [
      ["welcome-supper", "--servings", "lentil-soup=0"],
      2,
      "--servings takes a dish and a whole number from 1 to 100, for instance: --servings lentil-soup=6",
    ],
    [
      ["fog-bell-breakfast", "--servings", "lentil-soup=6"],
      1,
      "There is no dish called lentil-soup in what you cook. There are: apple-porridge, chickpea-pancakes, stewed-plums.",
    ],
    [
      ["welcome-supper", "brunch"],
      1,
      "There is no meal called brunch. There are: fog-bell-breakfast, slack-water-lunch, welcome-supper.",
    ],
    [
      ["welcome-supper", "--have", "/nowhere/x.txt"],
      1,
      "/nowhere/x.txt cannot be read. Name a file with what is in the house.",
    ],
  ])("[B27] %j ends with %i and one sentence", async (words, code, sentence) => {
    expect([await shop(...words), told, out]).toEqual([code, [sentence], []]);
  });

  it("[B27] a missing table of places, or one with a mistake, is told", async () => {
    expect(await loadPlaces(folder)).toMatchObject({ ok: false });
    mkdirSync(join(folder, "foods"));
    write("foods/places.txt", "  leek\n");
    expect(await loadPlaces(folder)).toEqual({
      ok: false,
      error: "foods/places.txt, line 1: This line belongs to no place; write the place's name above it.",
    });
  });
});
