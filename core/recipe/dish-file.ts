import { z } from "zod";
import { readIngredientLine } from "../food/ingredient-line.ts";
import type { IngredientLine } from "../food/ingredient-line.ts";
import { formatAmount } from "../units/amount.ts";
import type { Amount } from "../units/amount.ts";
import { MEASURE_SYSTEMS } from "../units/measure-system.ts";
import { seconds } from "../units/quantity.ts";
import type { Attention, Link } from "./model.ts";
import { amountField, idField, named, phrase, reading, sentenceField, weightField } from "./fields.ts";
import { readAhead, readBatch, readExtend, readLag, readMoment, readOven } from "./read-text.ts";
import { readServeWithin, readSpan, readWait, readYield } from "./read-text.ts";

const preparation = phrase("How it is prepared before it goes in.", "rinsed", 80);

const swap = z.strictObject({
  use: phrase("What to use instead, as spoken.", "sweet potato"),
  amount: amountField.optional(),
  effect: phrase("The side effect as one spoken sentence.", "Use half a cup less water.", 140).optional(),
  changes: named(amountField, "Other ingredients of the dish that become another amount.").optional(),
});

/** One ingredient as its file has it; `item` is null where the key says it, `line` where it is not one line. */
export interface IngredientFile {
  readonly line: string | null;
  readonly item: string | null;
  readonly amount: Amount;
  readonly prep: string | null;
  readonly food: string | null;
  readonly weighs: Amount | null;
  readonly optional: boolean;
  readonly swaps: readonly z.output<typeof swap>[];
}

/** What is done to it, with the sizes that the line tells: "400 grams each, drained". */
function prepOf({ amount, each, also, preparation }: IngredientLine): string | null {
  const isOne = amount.kind === "measured" && amount.high === "1/1";
  const told = [
    ...(each === null ? [] : [`${formatAmount(each)}${isOne ? "" : " each"}`]),
    ...(also === null ? [] : [`about ${formatAmount(also)}`]),
    ...(preparation === null ? [] : [preparation]),
  ];
  return told.length === 0 ? null : told.join(", ");
}

/** "3 cloves, minced", "2 x 400 g tins chickpeas, drained": one line, as people write it. */
const shortIngredient = z
  .union([z.string(), z.number()])
  .meta({
    description: "How much, perhaps of what, and behind a comma the preparation.",
    examples: ["3 cloves, minced"],
  })
  .transform((written, context): IngredientFile => {
    const line = readIngredientLine(String(written));
    if (line.ok) {
      const { amount, item, optional } = line.value;
      return {
        line: String(written),
        item,
        amount,
        prep: prepOf(line.value),
        food: null,
        weighs: null,
        optional,
        swaps: [],
      };
    }
    context.issues.push({ code: "custom", message: line.error, input: written });
    return z.NEVER;
  });

const fullIngredient = z
  .strictObject({
    item: phrase("As spoken; the key's own words when left out.", "red lentils").optional(),
    amount: amountField,
    prep: preparation.optional(),
    food: phrase(
      "Its name in the table of foods or on a label, or several with or between them.",
      "dry white bean",
      120,
    ).optional(),
    weighs: weightField.optional(),
    optional: z.boolean().meta({ description: "true where it may be left out." }).optional(),
    swaps: z.array(swap).meta({ description: "What may stand in for it." }).optional(),
  })
  .transform(({ item, amount, prep, food, weighs, optional, swaps }): IngredientFile => {
    return {
      line: null,
      item: item ?? null,
      amount,
      prep: prep ?? null,
      food: food ?? null,
      weighs: weighs ?? null,
      optional: optional ?? false,
      swaps: swaps ?? [],
    };
  });

/** What goes in at a step; a null amount means all that is left. */
export interface UseFile {
  readonly ingredient: string;
  readonly amount: Amount | null;
}

const withField = z
  .union([
    idField.transform((id): readonly UseFile[] => [{ ingredient: id, amount: null }]),
    z
      .array(idField)
      .transform((ids): readonly UseFile[] => ids.map((id) => ({ ingredient: id, amount: null }))),
    z
      .record(idField, z.union([z.null(), amountField]))
      .transform((map): readonly UseFile[] =>
        Object.entries(map).map(([ingredient, amount]) => ({ ingredient, amount })),
      ),
  ])
  .meta({
    description: "What goes in at this step: names for all that is left of it, or a map to amounts.",
    examples: ["{ water: 1 cup }"],
  });

const ANY_TIME: Omit<Link, "step"> = { atLeast: seconds(0), atMost: null };
const lag = reading(readLag, "How long after that step's end.", "at least 30 min and at most 2 h");

/** A step that comes before, and how long before. */
export interface AfterFile extends Omit<Link, "step"> {
  readonly step: string;
}

const afterField = z
  .union([
    idField.transform((step): readonly AfterFile[] => (step === "nothing" ? [] : [{ step, ...ANY_TIME }])),
    z.array(idField).transform((steps): readonly AfterFile[] => steps.map((step) => ({ step, ...ANY_TIME }))),
    z
      .record(idField, z.union([z.null(), lag]))
      .transform((map): readonly AfterFile[] =>
        Object.entries(map).map(([step, link]) => ({ step, ...(link ?? ANY_TIME) })),
      ),
  ])
  .meta({
    description:
      "The steps that must have ended; the step above when left out; the word nothing for a first step.",
    examples: ["{ rest-the-dough: at least 30 min }"],
  });

const attendField = z
  .record(z.string().meta({ examples: ["every 5 min", "20 min before the end"] }), sentenceField)
  .meta({ description: "Moments at which a step that runs by itself wants the cook." })
  .transform((map, context): readonly Attention[] => {
    return Object.entries(map).flatMap(([when, what]): readonly Attention[] => {
      const moment = readMoment(when, what);
      if (moment.ok) return [moment.value];
      context.issues.push({ code: "custom", message: moment.error, input: when, path: [when] });
      return [];
    });
  });

const names = (description: string, example: string) => {
  const one = phrase(description, example);
  return z
    .union([one.transform((name): readonly string[] => [name]), z.array(one).min(1)])
    .meta({ description });
};

const needs = z.strictObject({
  burner: z.int().min(1).max(8).meta({ description: "How many burners it occupies." }).optional(),
  oven: reading(
    readOven,
    "The heat or range of heats, and perhaps the racks.",
    "350-385 F on 2 racks",
  ).optional(),
  appliance: names("An appliance, or a list of them.", "blender").optional(),
  bowl: names("A bowl or pot to keep free for it, or a list of them.", "large bowl").optional(),
  fridge: z.literal(true).meta({ description: "It stands in the fridge." }).optional(),
});

const handsField = z.enum(["on", "off"]).meta({
  description: "on: the cook's hands all the time (the default). off: it runs by itself.",
});
const timeField = reading(readSpan, "From the earliest to the latest end.", "10-15 min");
const extendField = reading(
  readExtend,
  "How much more when it is not done, and in all.",
  "2-3 min, at most 5 min",
);
const batchField = reading(
  readBatch,
  "How many pieces, and how many fit at a time; the time is for one batch.",
  "8 patties, 3 at a time",
);

/** One other way of doing a step's work: what is left out here is as in a step that says nothing. */
const wayFile = z.strictObject({
  do: sentenceField,
  hands: handsField.optional(),
  time: timeField,
  extend: extendField.optional(),
  attend: attendField.optional(),
  needs: needs.optional(),
  batch: batchField.optional(),
});

const wayName = phrase("How it is done, to be said after the title.", "in a pan", 40);

/** One step as its file has it. */
export const stepFile = z.strictObject({
  title: phrase("A short spoken name; the key's own words when left out.", "roast the carrots").optional(),
  way: wayName.optional(),
  do: sentenceField,
  with: withField.optional(),
  hands: handsField.optional(),
  time: timeField,
  until: phrase("The doneness cue.", "a knife slides in without pushing", 100).optional(),
  latest: z
    .enum(["hard", "soft"])
    .meta({ description: "hard: never longer than the time and its extension. soft is the default." })
    .optional(),
  extend: extendField.optional(),
  attend: attendField.optional(),
  needs: needs.optional(),
  after: afterField.optional(),
  batch: batchField.optional(),
  ahead: reading(readAhead, "How long before serving it may be made.", "2 days").optional(),
  "serve-within": reading(
    readServeWithin,
    "It must end at most this long before serving.",
    "10 min",
  ).optional(),
  hold: reading(readWait, "How long its hot result may wait.", "20 min").optional(),
  or: z
    .record(wayName, wayFile)
    .meta({ description: "Other ways of doing the same work, each under a name like: in the oven." })
    .optional(),
});

/** One ingredient, short or long. */
export const ingredientFile = z.union([shortIngredient, fullIngredient]);

/** A dish's file, checked for its shape; what its parts say of each other is checked afterwards. */
export const dishFile = z
  .strictObject({
    dish: phrase("The dish's name as spoken.", "Smoky Lentil Soup"),
    says: z
      .array(phrase("A shorter name.", "soup"))
      .meta({ description: "Other ways to say its name." })
      .optional(),
    about: phrase(
      "One sentence for the person who chooses.",
      "A thick soup of lentils and smoked paprika.",
      300,
    ),
    yield: z
      .union([z.string(), z.number()])
      .meta({ description: "Servings, and of what.", examples: ["4 bowls"] })
      .transform(String)
      .pipe(reading(readYield, "Servings, and of what.", "4 bowls")),
    measures: z
      .enum(MEASURE_SYSTEMS)
      .meta({ description: "Whose cups, pints and spoons the bare names mean; us when left out." })
      .optional(),
    cautions: z
      .array(phrase("What can hurt, as one sentence.", "The lid lets out hot steam.", 200))
      .meta({ description: "What can hurt; said once when the dish begins." })
      .optional(),
    ingredients: named(ingredientFile, "Everything that goes in, under names of your own."),
    steps: named(stepFile, "The steps, under names of your own, in the order of the work."),
  })
  .meta({ title: "A Stovecall dish" });

export type StepFile = z.output<typeof stepFile>;
export type WayFile = z.output<typeof wayFile>;
export type DishFile = z.output<typeof dishFile>;
