import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Food } from "../../../core/food/food.ts";
import { weigh } from "../../../core/food/weigh.ts";
import { ingredientId, type Ingredient } from "../../../core/recipe/model.ts";
import { BUNDLES } from "../../../core/shop/bundle-table.ts";
import { PARTS } from "../../../core/shop/part-table.ts";
import { thingOf } from "../../../core/shop/thing.ts";
import { measured, type Measured } from "../../../core/units/amount.ts";
import { convert } from "../../../core/units/measures.ts";
import {
  add,
  compare,
  div,
  ratio,
  rational,
  sub,
  ZERO,
  type Rational,
} from "../../../core/units/rational.ts";
import { UNIT_IDS } from "../../../core/units/unit.ts";
import { allLines, dish, foods, listFor, meal, table } from "./market.ts";

/** Foods that are bought as themselves, and not in bundles. */
const plain = foods.filter((food) => {
  const thing = thingOf({ item: food.name, preparation: null }, table);
  return (
    thing !== null &&
    thing.part === null &&
    thing.food === food &&
    !PARTS.has(food.name) &&
    !BUNDLES.has(food.name)
  );
});

const amounts = fc
  .tuple(
    fc.constantFrom(...UNIT_IDS),
    fc.integer({ min: 1, max: 40 }),
    fc.constantFrom(1, 2, 3, 4),
    fc.nat(4),
  )
  .map(([unit, count, parts, more]): Measured =>
    measured(ratio(count, parts), unit, add(ratio(count, parts), ratio(more, 2))),
  );

const of = (item: string, amount: Measured): Ingredient => ({
  id: ingredientId(item),
  item,
  amount,
  preparation: null,
  optional: false,
  food: null,
  weighs: null,
  swaps: [],
});

/** Some foods with some amounts each, scattered over two dishes. */
const wanted = fc.array(
  fc.record({ food: fc.constantFrom(...plain), amount: amounts, isFirst: fc.boolean() }),
  { minLength: 1, maxLength: 12 },
);
type Wants = typeof wanted extends fc.Arbitrary<infer T> ? T : never;

const mealsOf = (wants: Wants) => {
  const lines = (first: boolean) =>
    wants.filter(({ isFirst }) => isFirst === first).map(({ food, amount }) => of(food.name, amount));
  return [meal("Supper", [dish("Soup", lines(true)), dish("Sauce", lines(false))])];
};

const sum = (figures: readonly Rational[]): Rational => figures.reduce(add, ZERO);

/** What all amounts of a food weigh that can be weighed, at least and at most. */
function gramsOf(food: Food, wants: Wants): readonly [Rational, Rational] {
  const weights = wants
    .filter((one) => one.food === food)
    .flatMap(({ amount }) => {
      const weight = weigh(food, amount, food.name, null);
      return weight.ok ? [weight.value] : [];
    });
  return [sum(weights.map(({ low }) => low)), sum(weights.map(({ high }) => high))];
}

describe("what merging may not do", () => {
  it("[B6] lose or make a gram: a line weighs what its ingredients weigh", () => {
    fc.assert(
      fc.property(wanted, (wants) => {
        const lines = allLines(listFor(mealsOf(wants)));
        for (const food of new Set(wants.map((one) => one.food))) {
          const parcels = lines.filter((line) => line.food === food.name).flatMap((line) => line.parcels);
          const grams = parcels.flatMap((parcel) => parcel.grams ?? []);
          expect([sum(grams.map(({ low }) => low)), sum(grams.map(({ high }) => high))]).toEqual(
            gramsOf(food, wants),
          );
        }
      }),
      { numRuns: 200 },
    );
  });

  it("[B6] lose what has no weight: every measure is there with its whole sum", () => {
    const strange = fc.array(fc.tuple(fc.constantFrom("moon berries", "fog root"), amounts), {
      minLength: 1,
      maxLength: 10,
    });
    fc.assert(
      fc.property(strange, (wants) => {
        const lines = allLines(
          listFor([
            meal("Supper", [
              dish(
                "Soup",
                wants.map(([item, amount]) => of(item, amount)),
              ),
            ]),
          ]),
        );
        for (const [item, { unit }] of wants) {
          const own = wants.filter(([name]) => name === item).map(([, amount]) => amount);
          const told = lines
            .filter(({ name }) => name === item)
            .flatMap(({ parcels }) => parcels.map(({ amount }) => amount));
          const inUnit = (all: readonly Measured[]): Rational =>
            sum(
              all.flatMap((amount) => {
                const same = convert(amount, unit);
                return same.ok ? [rational(same.value.high)] : [];
              }),
            );
          expect(inUnit(told)).toBe(inUnit(own));
        }
      }),
      { numRuns: 200 },
    );
  });

  it("[B6] drop a dish: each ingredient that is not water is told with its dish", () => {
    fc.assert(
      fc.property(wanted, (wants) => {
        const shares = allLines(listFor(mealsOf(wants))).flatMap((line) => line.shares);
        expect(shares).toHaveLength(wants.length);
      }),
    );
  });

  it("[B8] buy too few or too many lemons: they yield every part, and one less would not", () => {
    const spoons = fc.integer({ min: 1, max: 60 });
    fc.assert(
      fc.property(spoons, spoons, fc.nat(4), (juice, zest, whole) => {
        const soup = dish("Soup", [
          of("lemon juice", measured(ratio(juice), "tbsp")),
          of("lemon zest", measured(ratio(zest), "tsp")),
          ...(whole === 0 ? [] : [of("lemons", measured(ratio(whole), "piece"))]),
        ]);
        const pieces = listFor([meal("Supper", [soup])]).buy[0]?.pieces?.high ?? ZERO;
        // SR28: 244 g of juice in a cup of 16 tablespoons, 48 g from a lemon; a teaspoon of zest 2 g, 6 g from a lemon.
        const pressed = sub(pieces, ratio(whole));
        const needs = [div(ratio(juice * 244, 16), ratio(48)), div(ratio(zest * 2), ratio(6))];
        for (const need of needs) expect(compare(pressed, need)).toBeGreaterThanOrEqual(0);
        expect(needs).toContain(pressed);
      }),
    );
  });
});
