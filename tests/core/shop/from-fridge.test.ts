import { describe, expect, it } from "vitest";
import type { HouseLog } from "../../../core/house/house.ts";
import { leftoverId, type Place } from "../../../core/house/leftover.ts";
import type { HouseOrder } from "../../../core/house/orders.ts";
import { dishId, type CookingMeal } from "../../../core/recipe/model.ts";
import { buyingList, type BuyingList } from "../../../core/shop/buying-list.ts";
import { fromFridge } from "../../../core/shop/from-fridge.ts";
import { readHouse } from "../../../core/shop/in-house.ts";
import { savedPage } from "../../../core/shop/saved-page.ts";
import { writtenList } from "../../../core/shop/written-list.ts";
import { ratio } from "../../../core/units/rational.ts";
import { at } from "../cook/supper.ts";
import { afterSupper, servings, store } from "../house/house-at.ts";
import { dish, listFor, meal, shippedPlaces, table } from "./market.ts";

const day = 60 * 24;
const soup = { ...dish("Tide soup", ["2 onions", "1 cup dry red lentils"]), id: dishId("soup") };
const bowl = dish("Rice bowl", ["4 cups cooked brown rice", "2 carrots"]);
const meals: readonly CookingMeal[] = [meal("Supper", [soup, bowl])];

const put = (name: string, words: string, place: Place = "fridge"): HouseOrder => ({
  type: "StoreLeftover",
  id: leftoverId(name),
  dish: null,
  name,
  rest: { kind: "words", words },
  place,
});

/** The list for the supper at a minute after five on the first of January, with what the fridge has to say to it. */
function list(log: HouseLog, minute: number, written = ""): BuyingList {
  const { house } = readHouse(written);
  const calendar = { now: at(minute), sayDay: (when: number) => new Date(when).toISOString().slice(0, 10) };
  const fridge = fromFridge(log.house, { meals, foods: table, written: house }, calendar);
  return buyingList({ meals, foods: table, places: shippedPlaces.places, house, fridge });
}

const says = ({ fridge }: BuyingList) => fridge.map(({ kind, say }) => [kind, say]);
const bought = ({ buy, ifYouLike, look, enough }: BuyingList) =>
  [...buy, ...ifYouLike, ...look, ...enough].map(({ name, parcels }) => [name, parcels]);

describe("a dish of the list that is in the fridge", () => {
  it("[B32] is told with its day; how many to cook is for the cook, and nothing is taken off for it", () => {
    const log = afterSupper(
      [130, store("soup", servings(3))],
      [131, store("soup", servings(1), "freezer", "ice")],
    );
    const told = list(log, day);
    expect(says(told)).toEqual([
      ["dish", "3 bowls of tide soup are in the fridge until 2030-01-04: eat those first, or cook fewer."],
      ["dish", "1 bowl of tide soup is in the freezer: eat that first, or cook fewer."],
    ]);
    expect(bought(told)).toEqual(bought(listFor(meals)));
    expect([told.useFirst, told.notNeeded]).toEqual([[], []]);
  });

  it("[B32] under its name alone it is that dish as well; of an unknown amount it is told, not counted", () => {
    const told = list(afterSupper([130, put("Tide soup", "half a pot")]), 140);
    expect(says(told)).toEqual([
      [
        "dish",
        "There is tide soup in the fridge until 2030-01-02 (half a pot), nobody knows how many servings: eat it first, or cook fewer.",
      ],
    ]);
    expect(bought(told)).toEqual(bought(listFor(meals)));
  });

  it("[B33] spoiled or heated it never counts: it is to be thrown away, or eaten now", () => {
    const log = afterSupper(
      [130, store("soup", servings(3))],
      [131, put("cooked brown rice", "2 cups")],
      [
        day,
        { type: "HeatLeftover", id: leftoverId("soup"), some: { servings: ratio(1), as: leftoverId("hot") } },
      ],
    );
    expect(says(list(log, day + 60))).toContainEqual([
      "heated",
      "The tide soup, 1 bowl, was heated: eat it now; it does not count.",
    ]);
    const old = list(log, day * 6);
    expect(says(old).map(([kind]) => kind)).toEqual(["throw-away", "throw-away", "throw-away"]);
    expect(says(old)).toContainEqual([
      "throw-away",
      "Throw away the tide soup, 2 bowls: it is past its day.",
    ]);
    expect(says(old)).toContainEqual([
      "throw-away",
      "Throw away the tide soup, 1 bowl: it was heated more than two hours ago.",
    ]);
    expect(bought(old)).toEqual(bought(listFor(meals)));
    expect([old.useFirst, old.notNeeded, old.enough]).toEqual([[], [], []]);
  });
});

describe("other things in the fridge", () => {
  it("[B34] what wants to be eaten within two days is named to use up first, and no list takes it off", () => {
    const log = afterSupper(
      [130, store("salad", servings(3, 2))],
      [131, store("pilaf", servings(2))],
      [132, store("mystery", servings(1), "freezer")],
    );
    const first = (minute: number) => list(log, minute).useFirst;
    expect(first(140)).toEqual([{ said: "2 bowls of tide pilaf, by 2030-01-02", dishes: [] }]);
    // The rice is gone by then, and the salad's day is near.
    expect(first(day * 2)).toEqual([{ said: "1 1/2 plates of tide salad, by 2030-01-04", dishes: [] }]);
    const written = writtenList(list(log, 140), meals);
    expect([written.useFirst, written.fridge]).toEqual([["2 bowls of tide pilaf, by 2030-01-02"], []]);
  });

  it("[B35] what is itself an ingredient is used first: its measure comes off where it was told", () => {
    const told = list(afterSupper([130, put("cooked brown rice", "3 cups")]), 140);
    expect(told.useFirst).toEqual([
      { said: "3 cups of cooked brown rice, in the fridge until 2030-01-02", dishes: ["rice bowl"] },
    ]);
    const line = told.buy.find(({ name }) => name === "cooked brown rice");
    expect(line?.parcels.map(({ amount }) => [amount.low, amount.unit])).toEqual([["1/1", "cup"]]);
    expect(line?.inHouse).toEqual(["3 cups of cooked brown rice, in the fridge until 2030-01-02"]);
  });

  it("[B35] of an unknown amount, or in servings, it is told and nothing comes off; nor does cooked food for raw", () => {
    const inServings: HouseOrder = { ...put("cooked brown rice", "x"), rest: servings(2) } as HouseOrder;
    for (const order of [
      put("cooked brown rice", "some"),
      put("cooked brown rice", "half of it"),
      inServings,
    ]) {
      const told = list(afterSupper([130, order]), 140);
      const line = told.look.find(({ name }) => name === "cooked brown rice");
      expect(
        line?.parcels.map(({ amount }) => amount.low),
        JSON.stringify(order),
      ).toEqual(["4/1"]);
      expect(line?.inHouse).toEqual([]);
      expect(line?.notReckoned).toHaveLength(1);
    }
    // A pot of lentils is no dry lentils, and carrots of a meal are not what the shop sells.
    for (const name of ["dry red lentils", "carrots"]) {
      const told = list(afterSupper([130, put(name, "1 cup")]), 140);
      const want = listFor(meals).buy.find((line) => name.includes(line.name) || line.name.includes(name));
      const line = [...told.buy, ...told.look].find((one) => one.key === want?.key);
      expect(line?.parcels, name).toEqual(want?.parcels);
    }
  });

  it("[B35] what the cook has written down as well is taken off once", () => {
    const log = afterSupper([130, put("cooked brown rice", "3 cups")]);
    const told = list(log, 140, "3 cups cooked brown rice");
    const line = told.buy.find(({ name }) => name === "cooked brown rice");
    expect(line?.parcels.map(({ amount }) => amount.low)).toEqual(["1/1"]);
    expect(line?.inHouse).toEqual(["3 cups cooked brown rice"]);
  });

  it("[B32] the page that is saved tells it too, and no name can put a script into it", () => {
    const page = savedPage(
      writtenList(list(afterSupper([130, put("Tide soup", "<script>alert(1)</script>")]), 140), meals),
      "x",
    );
    expect(page).toContain("<b>Left from before:</b> There is tide soup in the fridge");
    expect(page).not.toContain("<script>alert");
  });
});
