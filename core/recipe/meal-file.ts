import { z } from "zod";
import { idField, named, phrase, reading } from "./fields.ts";
import { readClock, readHeatRange, readHeatingRate } from "./read-text.ts";

/** A meal's file. */
export const mealFile = z
  .strictObject({
    meal: phrase("The meal's name as spoken.", "Welcome Supper"),
    about: phrase("One sentence for the person who chooses.", "A warm table for two late arrivals.", 300),
    "serve-at": reading(readClock, "When to eat; as soon as possible when left out.", "18:30").optional(),
    kitchen: idField.meta({
      description: "The file in kitchens/ that says what there is to cook on.",
      examples: ["galley"],
    }),
    diets: z
      .array(idField)
      .max(10)
      .meta({ description: "The files in diets/ that hold for it, besides those that hold for every meal." })
      .optional(),
    dishes: named(z.int().min(1).max(100), "The dishes by their file names, and the servings of each."),
  })
  .meta({ title: "A Stovecall meal" });

const oven = z.strictObject({
  racks: z.int().min(1).max(6).meta({ description: "How many things can stand in it above each other." }),
  heats: reading(readHeatingRate, "How fast it heats.", "20 F a minute"),
  cools: reading(readHeatingRate, "How fast it cools.", "6 F a minute"),
  hottest: reading(readHeatRange, "The hottest it gets.", "500 F"),
});

/** A kitchen's file. */
export const kitchenFile = z
  .strictObject({
    kitchen: phrase("What the kitchen is called.", "The galley"),
    burners: z.int().min(0).max(12).meta({ description: "How many pots can stand over heat." }),
    ovens: named(oven, "The ovens under their spoken names; none when left out.").optional(),
    appliances: z.array(phrase("An appliance.", "blender")).optional(),
  })
  .meta({ title: "A Stovecall kitchen" });

export type MealFile = z.output<typeof mealFile>;
export type KitchenFile = z.output<typeof kitchenFile>;
