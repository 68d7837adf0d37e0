import { describe, expect, it } from "vitest";
import { rational } from "../../../core/units/rational.ts";
import { dish, listFor, meal, soupAndSauce, written } from "./market.ts";

/** SR28 has these weights and yields; the figures stand beside each check. */
const onlyLine = (soup: readonly string[], sauce: readonly string[] = []): string =>
  written(soupAndSauce(soup, sauce)).join("\n");

describe("one list for all dishes", () => {
  it("[B1] what several dishes want is one line, with what each of them takes", () => {
    expect(onlyLine(["2 leeks"], ["3 leeks, sliced"])).toBe(
      "leeks: 5, about 1.1 kg |  | 2 for the soup, 3 for the sauce",
    );
    expect(onlyLine(["2 leeks"])).toBe("leeks: 2, about 410 g |  | for the soup");
  });

  it("[B1] what a dish takes several times of one thing is told once", () => {
    expect(onlyLine(["1 leek", "2 leeks, sliced", "1 cup leeks"], ["1 leek"])).toContain(
      "3 for the soup, 1 cup for the soup, 1 for the sauce",
    );
  });

  it("[B1] several meals make one list; a dish of two meals is told with its meal", () => {
    const soup = dish("Soup", ["1 leek"]);
    const meals = [meal("Supper", [soup]), meal("Lunch", [soup, dish("Pie", ["2 leeks"])])];
    expect(written(meals)).toEqual([
      "leeks: 4, about 810 g |  | 1 for the Soup (Supper), 1 for the Soup (Lunch), 2 for the pie",
    ]);
  });

  it("[B1] two dishes of one short name are told by their whole names", () => {
    const salads = ["Cabbage Salad", "Bean Salad"].map((name) => ({
      ...dish(name, ["1 leek"]),
      says: [name, "salad"],
    }));
    expect(written([meal("Supper", salads)])).toEqual([
      "leeks: 2, about 410 g |  | 1 for the Cabbage Salad, 1 for the Bean Salad",
    ]);
  });
});

describe("what is one thing to buy", () => {
  it("[B2] however it is cut or named: the table says that it is the same food", () => {
    expect(onlyLine(["1 onion, diced"], ["2 onions, sliced thin"])).toContain("onions: 3,");
    expect(onlyLine(["2 spring onions"], ["3 scallions"])).toBe(
      "spring onions: 5, about a bunch |  | 2 for the soup, 3 for the sauce (scallions)",
    );
    expect(onlyLine(["2 cloves garlic"], ["3 garlic cloves, minced"])).toBe(
      "garlic: 5 cloves, about half a head |  | 2 cloves for the soup, 3 for the sauce (garlic cloves)",
    );
  });

  it.each([
    ["dry and canned", "1 cup chickpeas, dried", "1 can chickpeas, canned"],
    ["fresh and from a can", "3 tomatoes", "1 can tomatoes"],
    ["red and yellow", "1 red onion", "1 yellow onion"],
    ["ground and whole", "1 tsp ground cumin", "1 tsp cumin seeds"],
    ["smoked and not", "1 tsp smoked paprika", "1 tsp paprika"],
    ["raw and cooked", "1 cup dry lentils", "1 cup cooked lentils"],
    ["unknown and canned", "1 cup mung noodles", "1 cup mung noodles, canned"],
    ["without salt and not", "1 cup crushed tomatoes, no salt added", "1 cup crushed tomatoes"],
    ["merely near", "1 cup moon berries", "1 cup moon beans"],
  ])("[B2] %s are two things", (_, soup, sauce) => {
    expect(listFor(soupAndSauce([soup], [sauce])).buy).toHaveLength(2);
  });

  it("[B3] what the table does not know is listed under its own name, added up as far as its measures go", () => {
    expect(
      onlyLine(
        ["1 cup moon berries"],
        ["2 tbsp moon berries, mashed", "3 moon berries", "1 star fruit leaf"],
      ),
    ).toBe(
      [
        "moon berries: 1⅛ cups and 3 pieces |  | 1 cup for the soup, 2 tbsp for the sauce, 3 for the sauce",
        "star fruit leaf: 1 |  | for the sauce",
      ].join("\n"),
    );
  });

  it("[B4] equal measures are added exactly, and ranges keep both ends", () => {
    const [line] = listFor(soupAndSauce(["1/3 cup moon berries"], ["1/3 to 1/2 cup moon berries"])).buy;
    expect(line?.parcels).toEqual([
      { amount: { kind: "measured", low: "2/3", high: "5/6", unit: "cup" }, grams: null },
    ]);
  });

  it("[B4] bought is what the upper end wants, and what is sold whole in whole ones", () => {
    expect(onlyLine(["2 to 3 leeks"])).toContain("leeks: 3, about 610 g");
    expect(onlyLine(["1/2 red onion"], ["3/4 red onion"])).toContain("red onions: 2, about 160 g of it");
  });
});

describe("amounts in different measures", () => {
  // SR28 11282: 1 medium onion 110 g, 1 cup chopped 160 g, refuse 10 %; (110 + 160) / 110 = 2.45.
  it("[B5] are added by weight where the table weighs both, and told in the thing that a dish counts", () => {
    const [line] = listFor(soupAndSauce(["1 onion"], ["1 cup onions, chopped"])).buy;
    expect(line?.grams).toEqual({ low: "270/1", high: "270/1" });
    expect(onlyLine(["1 onion"], ["1 cup onions, chopped"])).toBe(
      "onions: 3, about 300 g of it |  | 1 for the soup, 1 cup for the sauce",
    );
  });

  // SR28 16144: 1 cup of raw red lentils 192 g.
  it("[B5] and in grams where none counts things", () => {
    expect(onlyLine(["1 cup red lentils"], ["100 g red lentils"])).toContain("red lentils: 292 g |");
  });

  it("[B5] and stand side by side where it cannot", () => {
    expect(onlyLine(["2 cups moon berries"], ["1 can moon berries"])).toMatch(
      /^moon berries: 2 cups and 1 can \|/,
    );
    expect(onlyLine(["2 tsp moon berries"], ["1 pinch moon berries"])).toMatch(
      /^moon berries: 2 tsp and 1 pinch \|/,
    );
  });

  // A head of ten cloves: common practice, no source.
  it.each([
    ["5 cloves garlic", "garlic: 5 cloves, about half a head"],
    ["2 cloves garlic", "garlic: 2 cloves, about a quarter of a head"],
    ["10 cloves garlic", "garlic: 10 cloves, about a head"],
    ["11 cloves garlic", "garlic: 11 cloves, about 2 heads"],
    ["1 head garlic", "garlic: 10 cloves, about a head"],
    ["3 stalks celery", "celery: 3 stalks, about half a head"],
  ])("[B7] %s is sold as %s", (written, told) => {
    expect(onlyLine([written]).split(" |")[0]).toBe(told);
  });

  // SR28 11215: a clove 3 g, a teaspoon 2.8 g: three cloves and a teaspoon are 11.8 g, or 3.93 cloves.
  it("[B7] spoonfuls of garlic are cloves as well", () => {
    expect(onlyLine(["3 cloves garlic"], ["1 tsp garlic"])).toContain("garlic: 4 cloves, about half a head");
    expect(onlyLine(["1 head garlic"], ["3 cloves garlic"])).toContain("garlic: 13 cloves, about 2 heads");
  });
});

describe("parts of something whole", () => {
  // SR28 09152: a lemon yields 48 g of juice, a cup is 244 g: 7 tbsp are 106.75 g, or 2.2 lemons.
  it("[B8] juice is bought as lemons", () => {
    expect(onlyLine(["3 tbsp lemon juice"], ["4 tbsp lemon juice"])).toBe(
      "lemons: 3, for ≈½ cup juice |  | 3 tbsp juice for the soup, ¼ cup juice for the sauce",
    );
  });

  // A tablespoon of zest from a lemon: common practice, no source.
  it("[B8] juice and zest come from the same lemons; whole ones are more", () => {
    expect(onlyLine(["2 tbsp lemon juice"], ["2 tsp lemon zest"])).toContain(
      "lemon: 1, for 2 tbsp juice and 2 tsp zest",
    );
    expect(onlyLine(["2 tbsp lemon juice"], ["2 tsp lemon zest", "1 lemon, sliced"])).toContain(
      "lemons: 2, for",
    );
    expect(onlyLine(["juice of 2 lemons"], ["1 tbsp lemon juice"])).toContain(
      // 15.25 g in a tablespoon and 48 g in a lemon: USDA SR28 09152.
      "lemons: 3, for the juice of ≈2⅓",
    );
  });

  it("[B8] a splash of juice is in any one", () => {
    expect(onlyLine(["1 splash lemon juice"])).toContain("lemon: 1, for 1 splash juice");
  });

  // SR28: a large egg's white is 33 g (01124), its yolk 17 g (01125).
  it("[B8] whites and yolks come from the same eggs, whole ones are more", () => {
    expect(onlyLine(["2 egg whites"], ["3 egg yolks", "1 egg"])).toContain(
      "eggs: 4, for the white of 2 and the yolk of 3",
    );
    expect(onlyLine(["99 g egg white"])).toContain("eggs: 3, for 99 g white");
  });
});

describe("what is bought", () => {
  it.each([
    // SR28: refuse of carrots 11 %, of pearl barley 0, of leeks 56 % (89 g of a leek are left).
    ["890 g carrots", "1000/1"],
    ["500 g pearl barley", "500/1"],
  ])("[B9] %s are %s grams as bought: edible = bought x (1 - refuse)", (written, grams) => {
    expect(listFor(soupAndSauce([written])).buy[0]?.boughtGrams).toBe(rational(grams));
  });

  it("[B9] a weight as bought is told rounded up, unless the amount tells it", () => {
    expect(onlyLine(["890 g carrots"])).toContain("carrots: 890 g, about 1 kg |");
    expect(onlyLine(["500 g pearl barley"])).toContain("pearl barley: 500 g |");
  });

  it("[B9] next to nothing is told by its spoon", () => {
    expect(onlyLine(["1 tsp dried thyme"])).toContain("dried thyme: 1 tsp |");
    expect(onlyLine(["3 tbsp dried thyme"])).toContain("dried thyme: 3 tbsp, about 15 g |");
  });

  it("[B9] where nobody knows the refuse no weight is told", () => {
    const [line] = listFor(soupAndSauce(["1 cup moon berries"])).buy;
    expect([line?.grams, line?.boughtGrams]).toEqual([null, null]);
  });

  it("[B10] what may be left out stands apart, and so does what goes in to taste", () => {
    const meals = soupAndSauce(
      ["black pepper to taste", "1/4 cup cilantro (optional)"],
      ["1/4 cup cilantro"],
    );
    expect(written(meals)).toEqual(["cilantro: ¼ cup |  | for the sauce"]);
    expect(written(meals, "if-you-like")).toEqual(["cilantro: ¼ cup |  | for the soup"]);
    expect(written(meals, "look")).toEqual(["black pepper:  |  | to taste for the soup"]);
  });

  it("[B10] what one dish measures and another wants to taste is told in one line", () => {
    expect(onlyLine(["black pepper to taste"], ["1/4 tsp black pepper"])).toBe(
      "black pepper: ¼ tsp |  | ¼ tsp for the sauce, to taste for the soup",
    );
  });

  it("[B11] water comes from the tap, however warm and whatever for", () => {
    const meals = soupAndSauce(
      ["6 cups water", "1/4 cup water for the onion", "1 cup lukewarm water", "2 cups pasta water"],
      ["1 l boiling water"],
    );
    expect(listFor(meals)).toMatchObject({ buy: [], ifYouLike: [], look: [] });
    expect(onlyLine(["1 cup rose water"])).toContain("rose water: 1 cup");
  });

  it("[B12] what to choose is told: sizes, ripe, without salt, canned; what is done at home is not", () => {
    const note = (line: string): string | undefined => onlyLine([line]).split(" | ")[1];
    expect(note("2 large leeks, sliced thin")).toBe("large");
    expect(note("2-inch piece ginger, grated")).toBe("2-inch piece");
    expect(note("4 pears, ripe but firm")).toBe("ripe but firm");
    expect(note("1 cup crushed tomatoes, no salt added")).toBe("no salt added");
    expect(note("1 cup cooked white beans, rinsed")).toBe("ready cooked, or raw to cook yourself");
  });

  it("[B13] the list is the same in whatever order the dishes come", () => {
    const dishes = [
      dish("Soup", ["1 leek", "2 tbsp lemon juice"]),
      dish("Sauce", ["2 cups leeks", "1 lemon"]),
    ];
    const names = (list: ReturnType<typeof listFor>) =>
      list.buy.map(({ key, grams, pieces }) => [key, grams, pieces]);
    expect(names(listFor([meal("Supper", dishes.toReversed())]))).toEqual(
      names(listFor([meal("Supper", dishes)])),
    );
  });
});
