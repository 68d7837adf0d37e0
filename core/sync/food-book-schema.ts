import * as z from "zod/mini";
import { CONDITIONS, dietId } from "../diet/diet.ts";
import { SIZES } from "../food/food.ts";
import { NUTRIENT_NAMES } from "../food/nutrients.ts";
import { dishSchema, measuredSchema } from "../recipe/cooking-meal-schema.ts";
import type { Rational } from "../units/rational.ts";
import { isUnit, type Unit } from "../units/unit.ts";

const text = z.string().check(z.minLength(1), z.maxLength(2_000));
const texts = z.array(text);
const figure = z.custom<Rational>((value) => typeof value === "string" && /^\d+\/0*[1-9]\d*$/.test(value));
const nutrient = z.enum(NUTRIENT_NAMES);
const told = <T extends z.ZodMiniType>(value: T) =>
  z.discriminatedUnion("ok", [
    z.strictObject({ ok: z.literal(true), value }),
    z.strictObject({ ok: z.literal(false), error: text }),
  ]);

const food = z.strictObject({
  name: text,
  also: texts,
  ndb: z.nullable(text),
  label: z.nullable(text),
  madeOf: z.nullable(texts),
  mayHold: texts,
  per100: z.record(nutrient, z.nullable(figure)),
  bounds: z.nullable(z.record(nutrient, z.nullable(z.strictObject({ low: figure, high: figure })))),
  refuse: z.nullable(figure),
  measures: z.array(
    z.strictObject({
      count: figure,
      unit: z.custom<Unit>((value) => typeof value === "string" && isUnit(value)),
      size: z.nullable(z.enum(SIZES)),
      how: z.nullable(text),
      grams: figure,
    }),
  ),
});

const group = z.strictObject({ name: text, also: texts, is: texts, has: texts, may: texts });

/** What a rule is about; its group by the group's own name. */
const ruleName = z.discriminatedUnion("kind", [
  z.strictObject({ said: text, kind: z.literal("group"), group: text }),
  z.strictObject({ said: text, kind: z.literal("food"), food: text }),
  z.strictObject({ said: text, kind: z.literal("words"), words: texts }),
]);

const allowance = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("times"),
    times: z.int().check(z.nonnegative()),
    every: z.enum(["day", "week"]),
  }),
  z.strictObject({
    kind: z.literal("amount"),
    amount: measuredSchema,
    every: z.enum(["serving", "day", "week"]),
  }),
]);

const limit = { in: z.enum(["serving", "meal", "day"]), because: z.nullable(text) };

const diet = z.strictObject({
  id: z.pipe(text, z.transform(dietId)),
  name: text,
  about: z.string().check(z.maxLength(2_000)),
  isEveryMeal: z.boolean(),
  listed: z.enum(["only", "but"]),
  foods: z.array(
    z.strictObject({
      name: ruleName,
      verdict: z.enum(["allowed", "avoided"]),
      allowance: z.nullable(allowance),
      only: z.nullable(z.enum(CONDITIONS)),
      these: z.nullable(z.array(ruleName)),
      because: z.nullable(text),
    }),
  ),
  allergies: z.array(ruleName),
  values: z.array(
    z.discriminatedUnion("kind", [
      z.strictObject({ kind: z.enum(["at most", "at least"]), nutrient, figure, written: text, ...limit }),
      /** By the words for it, which both ends know. */
      z.strictObject({ kind: z.literal("claim"), claim: text, ...limit }),
    ]),
  ),
});

const holding = told(z.array(z.pipe(text, z.transform(dietId))));

/** GET /api/foods: what is known of foods and diets, as it goes over the wire. What has several names stands once. */
export const packedFoodBook = z.strictObject({
  foods: z.array(z.strictObject({ names: texts, is: food })),
  groups: z.array(z.strictObject({ names: texts, is: group })),
  diets: z.array(diet),
  holding: z.array(z.tuple([text, holding])),
  always: holding,
  eaten: told(
    z.array(z.strictObject({ daysAgo: z.int().check(z.nonnegative()), dishes: z.array(dishSchema) })),
  ),
});

export type PackedFoodBook = z.infer<typeof packedFoodBook>;
export type PackedDiet = PackedFoodBook["diets"][number];
export type PackedGroup = z.infer<typeof group>;
export type PackedName = z.infer<typeof ruleName>;
