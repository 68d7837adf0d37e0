import { z } from "zod";
import { idField, named, phrase } from "../recipe/fields.ts";

/** The days as a week's file names them. */
export const DAY_NAMES = [
  "monday",
  "tuesday",
  "wednesday",
  "thursday",
  "friday",
  "saturday",
  "sunday",
] as const;
export type DayName = (typeof DAY_NAMES)[number];

const servings = z.int().min(1).max(100).meta({ description: "How many servings." });

const cooked = z.strictObject({
  meal: idField,
  servings: named(servings, "Of single dishes more or fewer servings than the meal has.").optional(),
});

const leftover = z.strictObject({
  leftover: idField.meta({ description: "A dish that is left from a day before." }),
  servings: servings.optional(),
});

/** What is eaten at one time of a day: a meal that is cooked, or what is left of a dish. */
const entry = z.union([idField, cooked, leftover]);
const entries = z.array(entry).min(1).max(6);

/** A week's file. */
export const weekFile = z
  .strictObject({
    week: phrase("What the week is called.", "A week of tides"),
    about: phrase("One sentence about it.", "Two suppers that last for five.", 300).optional(),
    eaters: z
      .int()
      .min(1)
      .max(50)
      .meta({ description: "How many eat each time; what a meal makes beyond is left." }),
    days: z
      .partialRecord(z.enum(DAY_NAMES), entries)
      .meta({ description: "The days in their order, each with what is cooked or eaten of what is left." }),
  })
  .meta({ title: "A Stovecall week" });

export type WeekFile = z.output<typeof weekFile>;
