import { z } from "zod";
import { phrase, reading } from "../recipe/fields.ts";
import { CONDITIONS } from "./diet.ts";
import { readFoodRule, readValueRule } from "./rule-text.ts";

/** A food or a group by the name that the cook has for it. */
const foodName = phrase("A food or a group of foods, by its name in recipes/foods.", "leafy greens");
const because = phrase("The reason, as the cook would say it.", "It binds the medicine.", 300).optional();

const foodRule = reading(readFoodRule, "How often or how much, or avoided.", "once a week");

const ruled = z.strictObject({
  rule: foodRule,
  only: z
    .enum(CONDITIONS)
    .meta({ description: "What must be true of it, else it is not allowed." })
    .optional(),
  these: z.array(foodName).min(1).max(200).meta({ description: "Of the group only these." }).optional(),
  "also-called": z
    .array(phrase("Another name.", "dulse"))
    .max(20)
    .meta({ description: "For a food that is in no table: every name it goes by, apart from this one." })
    .optional(),
  because,
});

const valueRule = reading(readValueRule, "A limit, or a threshold.", "at most 140 mg sodium in a serving");

/** A diet's file. */
export const dietFile = z
  .strictObject({
    diet: phrase("What the diet is called.", "The lamp room's table"),
    about: phrase(
      "Who prescribed it, for what, and since when, in a sentence or two.",
      "Kept since spring.",
      600,
    ),
    "every-meal": z
      .boolean()
      .meta({ description: "Whether it holds for every meal; else only for those that name it." })
      .optional(),
    "may-eat": z
      .enum(["only what is listed", "all but what is listed"])
      .meta({ description: "What becomes of a food that is not listed." }),
    foods: z
      .record(z.string().trim().min(1).max(60), z.union([foodRule, ruled]))
      .meta({ description: "Foods and groups, and what holds for them." })
      .optional(),
    allergies: z
      .array(foodName)
      .max(50)
      .meta({ description: "Foods and groups of which a trace is too much." })
      .optional(),
    limits: z
      .array(z.union([valueRule, z.strictObject({ rule: valueRule, because })]))
      .max(50)
      .meta({ description: "How much or how little of a value, and over what." })
      .optional(),
  })
  .meta({ title: "A Stovecall diet" });

export type DietFile = z.output<typeof dietFile>;
