import type { z } from "zod";
import { normaliseFood } from "../food/names.ts";
import { dishFile, ingredientFile, stepFile } from "./dish-file.ts";
import type { DishFile, IngredientFile, StepFile } from "./dish-file.ts";
import type { FieldPath } from "./mistake.ts";

/**
 * As much of a dish as could be read. A part that is there but broken is null, so that nobody complains
 * about a step that "does not exist" when only its time is misspelt.
 */
export interface Draft {
  readonly ingredients: ReadonlyMap<string, IngredientFile | null>;
  readonly steps: ReadonlyMap<string, StepFile | null>;
}

/** What the parts of a dish say against each other, before it is tied to a line. */
export interface Finding {
  readonly path: FieldPath;
  readonly sentence: string;
}

/** The draft of a dish without a mistake in its shape. */
export function draftOf(file: DishFile): Draft {
  return {
    ingredients: new Map(Object.entries(file.ingredients)),
    steps: new Map(Object.entries(file.steps)),
  };
}

function member(value: unknown, key: string): object {
  const found: unknown = typeof value === "object" && value !== null ? Reflect.get(value, key) : null;
  return typeof found === "object" && found !== null && !Array.isArray(found) ? found : {};
}

function salvage<T>(parts: object, schema: z.ZodType<T>): ReadonlyMap<string, T | null> {
  return new Map(
    Object.entries(parts).map(([key, part]): [string, T | null] => {
      const read = schema.safeParse(part);
      return [key, read.success ? read.data : null];
    }),
  );
}

/** What can be saved of a dish whose shape is wrong somewhere. */
export function salvagedDraft(value: unknown): Draft {
  return {
    ingredients: salvage(member(value, "ingredients"), ingredientFile),
    steps: salvage(member(value, "steps"), stepFile),
  };
}

/** The whole shape at once; kept here so that only this file knows both ways of reading. */
export const parseShape = (value: unknown, error: z.core.$ZodErrorMap) =>
  dishFile.safeParse(value, { error });

/** A step's key as people read it. */
export const inWords = (id: string): string => id.replaceAll("-", " ");

/** Whether a line only repeats what its key says more fully: "milk" under "almond-milk" is almond milk. */
function isInKey(key: string, item: string): boolean {
  const [known, said] = [normaliseFood(key).split(" "), normaliseFood(item).split(" ")];
  return said.at(-1) === known.at(-1) && said.every((word) => known.includes(word));
}

/** "lentils" listed and used: the spoken item of an ingredient. */
export function itemOf(id: string, { item, line }: IngredientFile): string {
  const key = inWords(id);
  return item === null || (line !== null && isInKey(key, item)) ? key : item;
}
