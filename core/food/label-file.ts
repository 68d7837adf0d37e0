import { z } from "zod";
import { phrase } from "../recipe/fields.ts";
import { figureExample } from "./label-figure.ts";
import { ROUNDINGS, type Printed } from "./label-rounding-table.ts";
import { NUTRIENT_NAMES } from "./nutrients.ts";

const figure = (printed: Printed) =>
  z
    .string()
    .meta({ description: "As printed, with its unit.", examples: [figureExample(printed)] })
    .optional();

const figures = Object.fromEntries(
  [...NUTRIENT_NAMES, "salt" as const].map((name) => [name, figure(name)]),
) as Record<Printed, ReturnType<typeof figure>>;

/** A label of the cook's own, as its file has it. */
export const labelFile = z
  .strictObject({
    label: phrase("The food as the recipes call it.", "plain oat drink", 80),
    also: z
      .array(phrase("Another name in recipes.", "oat drink", 80))
      .meta({ description: "Other names that recipes have for it." })
      .optional(),
    like: phrase(
      "The food of the table whose measures and refuse it shares.",
      "canned crushed tomato",
    ).optional(),
    "made-of": z
      .array(phrase("A food or a group of foods.", "tomato"))
      .min(1)
      .max(60)
      .meta({ description: "What the packet lists it as made of; a diet cannot tell without it." })
      .optional(),
    "may-hold": z
      .array(phrase("A food or a group of foods.", "sesame"))
      .max(30)
      .meta({ description: "What the packet says that there may be traces of." })
      .optional(),
    serving: phrase("The serving as printed.", "1 cup (240 ml)", 80),
    weighs: phrase("What a serving weighs, where the label tells none.", "247 g", 20).optional(),
    per: z
      .enum(["serving", "100 g", "100 ml"])
      .meta({ description: "What the values were printed for; the serving when left out." })
      .optional(),
    rounding: z
      .enum(ROUNDINGS)
      .meta({
        description:
          "By whose rules they are rounded: us (the default for a serving), eu (for 100 g or ml) or exact.",
      })
      .optional(),
    values: z
      .strictObject(figures)
      .meta({ description: "The printed values; what the label does not tell is left out." }),
  })
  .meta({ title: "A Stovecall label" });

export type LabelFile = z.output<typeof labelFile>;
