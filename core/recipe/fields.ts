import { z } from "zod";
import { parseAmount } from "../units/amount.ts";
import type { Amount } from "../units/amount.ts";
import { convert } from "../units/measures.ts";
import type { Result } from "../units/result.ts";

/** Lower-case words joined by hyphens: "peel-garlic". File names, steps, ingredients, dishes and kitchens. */
export const ID = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;

/** The text of a step must be readable from two metres in large type, and be said in one breath. */
const LONGEST_SENTENCE = 140;

/** A text that `read` turns into a value; its error becomes the sentence of the mistake. */
export function reading<T>(read: (text: string) => Result<T, string>, description: string, example: string) {
  return z
    .string()
    .meta({ description, examples: [example] })
    .transform((text, context): T => {
      const value = read(text);
      if (value.ok) return value.value;
      context.issues.push({ code: "custom", message: value.error, input: text });
      return z.NEVER;
    });
}

/** A bare figure is what YAML makes of `lemon: 2`. */
const figureOrText = z.union([z.string(), z.number()]);

/** "1 1/2 cups", or a bare figure for pieces. */
export const amountField = figureOrText
  .meta({
    description: "How much: a number and a unit, or a bare number of pieces.",
    examples: ["1 1/2 cups"],
  })
  .transform((written, context): Amount => {
    const value = parseAmount(String(written));
    if (value.ok) return value.value;
    context.issues.push({ code: "custom", message: value.error, input: written });
    return z.NEVER;
  });

/** "400 g", "2-5 g", "1 lb". */
export const weightField = z
  .string()
  .meta({ description: "What all of it weighs as eaten, where no measure tells it.", examples: ["400 g"] })
  .transform((written, context): Amount => {
    const value = parseAmount(written);
    if (value.ok && convert(value.value, "g").ok) return value.value;
    const message = value.ok ? `"${written}" is no weight; write it like 400 g.` : value.error;
    context.issues.push({ code: "custom", message, input: written });
    return z.NEVER;
  });

/** A name or phrase said aloud. */
export function phrase(description: string, example: string, longest = 60) {
  return z
    .string()
    .trim()
    .min(1)
    .max(longest)
    .meta({ description, examples: [example] });
}

/** A sentence said aloud and shown large. */
export const sentenceField = phrase(
  "What to do: one spoken sentence, at most 140 characters.",
  "Stir in the garlic.",
  LONGEST_SENTENCE,
);

export const idField = z.string().regex(ID).meta({ description: "Lower-case words joined by hyphens." });

/** A map from our own names to something. */
export function named<T extends z.ZodType>(of: T, description: string) {
  return z.record(idField, of).meta({ description });
}
