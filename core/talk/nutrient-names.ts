import { NUTRIENT_NAMES, type Nutrient } from "../food/nutrients.ts";
import type { SpokenValue } from "../units/spoken-words.ts";

/** How each value is called aloud; the first is how the caller says it. */
const NAMES: Readonly<Record<Nutrient, readonly [string, ...string[]]>> = {
  energy: ["energy", "calories", "kilocalories"],
  protein: ["protein"],
  fat: ["fat"],
  saturated: ["saturated fat"],
  carbohydrate: ["carbohydrate", "carbohydrates", "carbs"],
  fibre: ["fibre", "fiber"],
  sugars: ["sugars", "sugar"],
  sodium: ["sodium"],
  potassium: ["potassium"],
  phosphorus: ["phosphorus"],
  calcium: ["calcium"],
  iron: ["iron"],
  "vitamin-c": ["vitamin C"],
};

/** A value as the caller says it: "saturated fat". */
export const nutrientName = (nutrient: Nutrient): string => NAMES[nutrient][0];

/** All that a cook may call a value, in lower case. */
export const nutrientWords: readonly string[] = NUTRIENT_NAMES.flatMap((nutrient) =>
  NAMES[nutrient].map((name) => name.toLowerCase()),
);

/** The value that is named from a word on, the longest name first; null where none is. */
export function nutrientNamed(words: readonly string[], from: number): SpokenValue<Nutrient> | null {
  for (const length of [2, 1].filter((most) => from + most <= words.length)) {
    const said = words.slice(from, from + length).join(" ");
    const nutrient = NUTRIENT_NAMES.find((one) => NAMES[one].some((name) => name.toLowerCase() === said));
    if (nutrient !== undefined) return { value: nutrient, next: from + length };
  }
  return null;
}
