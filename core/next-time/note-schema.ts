import * as z from "zod/mini";
import { measuredSchema } from "../recipe/cooking-meal-schema.ts";
import { dishId, ingredientId, stepId } from "../recipe/model.ts";

const text = z.string().check(z.minLength(1), z.maxLength(200));
const ingredient = z.pipe(text, z.transform(ingredientId));

const change = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("times"),
    ingredient,
    times: z.string().check(z.regex(/^0*[1-9]\d*\/0*[1-9]\d*$/)),
  }),
  z.strictObject({
    kind: z.literal("amount"),
    ingredient,
    amount: measuredSchema,
    servings: z.number().check(z.positive()),
  }),
  z.strictObject({ kind: z.literal("leave-out"), ingredient }),
  z.strictObject({ kind: z.literal("first"), step: z.nullable(z.pipe(text, z.transform(stepId))) }),
  z.strictObject({ kind: z.literal("words"), words: text, ingredient: z.nullable(ingredient) }),
]);

/** A note as the log has it. */
export const noteSchema = z.strictObject({
  dish: z.pipe(text, z.transform(dishId)),
  change,
  from: z.enum(["asked", "used"]),
});
