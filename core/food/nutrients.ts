/** What is told of a food. `places`: decimals worth printing. */
interface NutrientWords {
  readonly unit: "kcal" | "g" | "mg";
  readonly places: 0 | 1;
}

const row = (unit: NutrientWords["unit"], places: NutrientWords["places"]): NutrientWords => ({
  unit,
  places,
});

/** Every value that the table of foods tells, in the order in which it is printed. Energy is in kilocalories. */
const NUTRIENTS = {
  energy: row("kcal", 0),
  protein: row("g", 1),
  fat: row("g", 1),
  saturated: row("g", 1),
  carbohydrate: row("g", 1),
  fibre: row("g", 1),
  sugars: row("g", 1),
  sodium: row("mg", 0),
  potassium: row("mg", 0),
  phosphorus: row("mg", 0),
  calcium: row("mg", 0),
  iron: row("mg", 1),
  "vitamin-c": row("mg", 1),
} as const satisfies Record<string, NutrientWords>;

/** One of the values, by its name in the table of foods. */
export type Nutrient = keyof typeof NUTRIENTS;

/** Whether a text is the name of a value. */
export function isNutrient(text: string): text is Nutrient {
  return Object.hasOwn(NUTRIENTS, text);
}

/** Every value, in order. */
export const NUTRIENT_NAMES: readonly Nutrient[] = Object.keys(NUTRIENTS).filter(isNutrient);

/** Its unit, and the decimals worth printing. */
export const nutrientWords = (nutrient: Nutrient): NutrientWords => NUTRIENTS[nutrient];

/** One entry for each value. */
export function eachNutrient<T>(make: (nutrient: Nutrient) => T): Readonly<Record<Nutrient, T>> {
  return Object.fromEntries(NUTRIENT_NAMES.map((name) => [name, make(name)])) as Record<Nutrient, T>;
}
