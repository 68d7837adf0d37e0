import * as z from "zod/mini";
import { isUnit } from "../units/unit.ts";
import type { Unit } from "../units/unit.ts";
import { seconds } from "../units/quantity.ts";
import type { CookingMeal, Dish } from "./model.ts";
import { dishId, ingredientId, mealId, stepId } from "./model.ts";

const MOST_WAYS = 9;
const name = z.string().check(z.minLength(1), z.maxLength(200));
const line = z.string().check(z.maxLength(1000));
const length = z.pipe(z.number().check(z.nonnegative()), z.transform(seconds));
const count = z.int().check(z.positive());
const rational = z.string().check(z.regex(/^\d+\/0*[1-9]\d*$/));
const unit = z.custom<Unit>((value) => typeof value === "string" && isUnit(value));
const named = <T>(id: (text: string) => T) => z.pipe(name, z.transform(id));

/** An amount with figures, as the log has it; a fraction has no nought below. */
export const measuredSchema = z.strictObject({
  kind: z.literal("measured"),
  low: rational,
  high: rational,
  unit,
});
const amount = z.discriminatedUnion("kind", [
  measuredSchema,
  z.strictObject({ kind: z.literal("to-taste") }),
]);
const span = z.strictObject({ low: length, high: length });
const heat = z.strictObject({ degrees: z.number(), scale: z.enum(["F", "C"]) });
const ingredient = z.strictObject({
  id: named(ingredientId),
  item: name,
  amount,
  preparation: z.nullable(line),
  // A meal that was stored before ingredients could name their food names none.
  food: z._default(z.nullable(line), null),
  weighs: z._default(z.nullable(amount), null),
  optional: z.boolean(),
  swaps: z.array(
    z.strictObject({
      use: name,
      amount: z.nullable(amount),
      effect: z.nullable(line),
      changes: z.array(z.strictObject({ ingredient: named(ingredientId), amount })),
      longer: z.exactOptional(z.pipe(z.number(), z.transform(seconds))),
      isCommon: z.exactOptional(z.literal(true)),
    }),
  ),
});

const need = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("burner"), count }),
  z.strictObject({ kind: z.literal("oven"), heat: z.strictObject({ low: heat, high: heat }), racks: count }),
  z.strictObject({ kind: z.literal("appliance"), name }),
  z.strictObject({ kind: z.literal("bowl"), name }),
  z.strictObject({ kind: z.literal("fridge") }),
]);

const attention = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("every"), every: length, within: length, do: line }),
  z.strictObject({ kind: z.literal("at"), after: length, within: length, do: line }),
  z.strictObject({ kind: z.literal("before-end"), before: length, within: length, do: line }),
]);

/** What one way of doing a step may have for itself. */
const work = {
  do: line,
  hands: z.enum(["on", "off"]),
  time: span,
  extend: z.nullable(z.strictObject({ by: span, atMost: length })),
  attend: z.array(attention),
  needs: z.array(need),
  batch: z.nullable(z.strictObject({ of: count, holds: count, pieces: name })),
};

const ways = z.strictObject({
  all: z.array(z.strictObject({ name, ...work })).check(z.minLength(2), z.maxLength(MOST_WAYS)),
  taken: name,
  chosen: z.discriminatedUnion("by", [
    z.strictObject({ by: z.literal("recipe") }),
    z.strictObject({
      by: z.literal("plan"),
      over: z.array(z.strictObject({ way: name, because: line })),
    }),
    z.strictObject({ by: z.literal("cook") }),
  ]),
});

const step = z.strictObject({
  id: named(stepId),
  title: name,
  ...work,
  uses: z.array(z.strictObject({ ingredient: named(ingredientId), amount })),
  until: z.nullable(line),
  latest: z.enum(["hard", "soft"]),
  after: z.array(z.strictObject({ step: named(stepId), atLeast: length, atMost: z.nullable(length) })),
  ahead: z.nullable(length),
  endsBeforeServing: z.nullable(length),
  hold: z.nullable(length),
  // A meal that was stored before steps could have several ways has none.
  ways: z._default(z.nullable(ways), null),
});

/** A resolved dish, as the log has it. */
export const dishSchema: z.ZodMiniType<Dish> = z.strictObject({
  id: named(dishId),
  name,
  says: z.array(name),
  about: line,
  cautions: z.array(line),
  yield: z.strictObject({ servings: z.number().check(z.positive()), of: name }),
  ingredients: z.array(ingredient),
  steps: z.array(step),
});

/** A resolved meal as it stands in the log's first event: what a replay or another device must be able to trust. */
export const cookingMealSchema: z.ZodMiniType<CookingMeal> = z.strictObject({
  id: named(mealId),
  name,
  dishes: z.array(dishSchema).check(z.minLength(1), z.maxLength(40)),
  kitchen: z.strictObject({
    burners: z.int().check(z.nonnegative()),
    ovens: z.array(
      z.strictObject({
        name,
        racks: count,
        heats: z.number().check(z.positive()),
        cools: z.number().check(z.positive()),
        hottest: heat,
      }),
    ),
    appliances: z.array(name),
  }),
});
