import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { spokenIngredient } from "../../../core/food/ingredient-words.ts";
import { matchName } from "../../../core/food/name-match.ts";
import { foodForms, isPlural, normaliseFood, pluralOf, singularOf } from "../../../core/food/names.ts";
import type { Amount } from "../../../core/units/amount.ts";
import { parseAmount } from "../../../core/units/amount.ts";

const LARDER = [
  "red lentils",
  "yellow onion",
  "red onion",
  "garlic",
  "tomato paste",
  "tomatoes",
  "black pepper",
  "bell peppers",
  "corn on the cob",
  "bay leaves",
  "jalapeño",
  "olive oil",
  "cauliflower",
  "milk",
] as const;

function amountOf(text: string): Amount {
  const read = parseAmount(text);
  if (!read.ok) throw new Error(read.error);
  return read.value;
}

describe("names of foods", () => {
  it.each([
    ["carrot", "carrots"],
    ["bay leaf", "bay leaves"],
    ["tomato", "tomatoes"],
    ["sweet potato", "sweet potatoes"],
    ["radish", "radishes"],
    ["loaf", "loaves"],
    ["olive", "olives"],
    ["chive", "chives"],
    ["anchovy", "anchovies"],
    ["avocado", "avocados"],
    ["squash", "squashes"],
    ["peach", "peaches"],
    ["patty", "patties"],
    ["chili", "chilies"],
    ["cheese", "cheeses"],
    ["cookie", "cookies"],
    ["sausage", "sausages"],
    ["jalapeño", "jalapeños"],
    ["molasses", "molasses"],
    ["hummus", "hummus"],
    ["couscous", "couscous"],
    ["asparagus", "asparagus"],
    ["rice", "rice"],
    ["watercress", "watercress"],
    ["tofu", "tofu"],
    ["kale", "kale"],
  ])("[U19] one %s, several %s", (one, many) => {
    expect([singularOf(many), singularOf(one), pluralOf(one), pluralOf(many)]).toEqual([
      one,
      one,
      many,
      many,
    ]);
  });

  it("[U19] a plural is told from a singular in -s", () => {
    expect(["red lentils", "hummus", "bay leaves", "rice"].map(isPlural)).toEqual([true, false, true, false]);
  });

  it("[U19] normalising twice changes nothing more", () => {
    const word = fc.constantFrom(
      ..."the Garlic cloves bay-leaves jalapeños of a Crème fraîche za'atar greens molasses".split(" "),
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 5 }), (words) => {
        const once = normaliseFood(words.join(" "));
        expect(normaliseFood(once)).toBe(once);
        expect(foodForms(foodForms(once).itself).itself).toBe(foodForms(once).itself);
      }),
    );
  });

  it.each([
    ["the lentils", "red lentils"],
    ["a clove of garlic", "garlic"],
    ["garlic cloves", "garlic"],
    ["tomato", "tomatoes"],
    ["tomatos", "tomatoes"],
    ["corn", "corn on the cob"],
    ["bay leaf", "bay leaves"],
    ["Jalapeno", "jalapeño"],
    ["the fresh red lentils", "red lentils"],
    ["oil", "olive oil"],
    ["Red-Onion", "red onion"],
  ])("[U19] '%s' is %s", (spoken, name) => {
    expect(matchName(spoken, LARDER)).toEqual({ kind: "exact", name });
  });

  it("[U19] every food is found by its own name, in the singular and in the plural", () => {
    for (const name of LARDER) {
      for (const spoken of [name, `the ${name}`, singularOf(name), pluralOf(name)]) {
        expect([spoken, matchName(spoken, LARDER)]).toEqual([spoken, { kind: "exact", name }]);
      }
    }
  });

  it("[U20] a name that fits several brings back all of them", () => {
    expect(matchName("the onions", LARDER)).toEqual({
      kind: "several",
      names: ["yellow onion", "red onion"],
    });
    expect(matchName("pepper", LARDER)).toEqual({ kind: "several", names: ["black pepper", "bell peppers"] });
  });

  it("[U20] a name that fits none brings the likeliest, or nothing", () => {
    expect(matchName("califlower", LARDER)).toEqual({ kind: "none", nearest: ["cauliflower"] });
    expect(matchName("galric", LARDER)).toEqual({ kind: "none", nearest: ["garlic"] });
    expect(matchName("zebra", LARDER)).toEqual({ kind: "none", nearest: [] });
    expect(matchName("the", LARDER)).toEqual({ kind: "none", nearest: [] });
  });

  it.each(["almond milk", "coconut oil", "onion soup", "garlic powder", "tomato ketchup", "cauliflour"])(
    "[U21] '%s' is never taken for another food",
    (spoken) => {
      expect(matchName(spoken, LARDER).kind).toBe("none");
    },
  );

  it("[U20] whatever is said, the answer is among the candidates", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 20 }), (spoken) => {
        const match = matchName(spoken, LARDER);
        const names =
          match.kind === "exact" ? [match.name] : match.kind === "several" ? match.names : match.nearest;
        expect(LARDER).toEqual(expect.arrayContaining([...names]));
      }),
    );
  });

  it.each([
    ["1 1/2 tbsp", "soy sauce", "one and a half tablespoons of soy sauce"],
    ["2", "carrot", "two carrots"],
    ["1", "carrots", "one carrot"],
    ["1/2", "onions", "half an onion"],
    ["3/4", "red pepper", "three quarters of a red pepper"],
    ["1 1/2", "onion", "one and a half onions"],
    ["2-3", "tomato", "two to three tomatoes"],
    ["2 cloves", "garlic", "two cloves of garlic"],
    ["2 cloves", "garlic cloves", "two garlic cloves"],
    ["2 cups", "red lentils", "two cups of red lentils"],
    ["1/4 cup", "miso", "a quarter cup of miso"],
    ["to taste", "salt", "salt to taste"],
  ])("[U16] %s of %s is said '%s'", (amount, item, said) => {
    expect(spokenIngredient(amountOf(amount), item)).toBe(said);
  });
});
