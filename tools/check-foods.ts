import { existsSync, readFileSync } from "node:fs";
import { z } from "zod";
import { NUTRIENT_NAMES, type Nutrient } from "../core/food/nutrients.ts";
import { readFoods } from "../core/food/read-foods.ts";
import { toNumber, type Rational } from "../core/units/rational.ts";

/**
 * Compares every figure and measure of recipes/foods/foods.txt with an extract of USDA SR28 where one lies beside the
 * checkout: `npx tsx tools/check-foods.ts [sr28-extract.json]`. Where there is none it says so and passes over it.
 */
const place = process.argv[2] ?? "../shared/data/food/sr28-extract.json";

const figure = z.number().nullable();
const extract = z.object({
  foods: z.array(
    z.object({
      ndb: z.string(),
      refuse_pct: figure,
      per100g: z.record(z.string(), figure),
      measures: z.array(z.object({ amount: z.number(), grams: z.number() })),
    }),
  ),
});

/** What the extract calls our values. */
const THEIRS: Readonly<Record<Nutrient, string>> = {
  energy: "energy_kcal",
  protein: "protein_g",
  fat: "fat_g",
  saturated: "satfat_g",
  carbohydrate: "carb_g",
  fibre: "fibre_g",
  sugars: "sugars_g",
  sodium: "sodium_mg",
  potassium: "potassium_mg",
  phosphorus: "phosphorus_mg",
  calcium: "calcium_mg",
  iron: "iron_mg",
  "vitamin-c": "vitc_mg",
};

const plain = (value: Rational | null): number | null => (value === null ? null : toNumber(value));

function differences(): readonly string[] {
  const table = new URL("../recipes/foods/foods.txt", import.meta.url);
  const { foods, mistakes } = readFoods("foods.txt", readFileSync(table, "utf8"));
  const rows = new Map(
    extract.parse(JSON.parse(readFileSync(place, "utf8"))).foods.map((row) => [row.ndb, row]),
  );
  const wrong = foods.flatMap(({ name, ndb: number, per100, refuse, measures }) => {
    const ndb = number ?? "none";
    const row = rows.get(ndb);
    if (row === undefined) return [`${name}: there is no number ${ndb}.`];
    const values = NUTRIENT_NAMES.filter((one) => plain(per100[one]) !== (row.per100g[THEIRS[one]] ?? null));
    const strange = measures.filter(
      ({ count, grams }) =>
        !row.measures.some((one) => one.amount === toNumber(count) && one.grams === toNumber(grams)),
    );
    return [
      ...values.map((one) => `${name}: ${one} differs from number ${ndb}.`),
      ...(plain(refuse) === row.refuse_pct ? [] : [`${name}: refuse differs from number ${ndb}.`]),
      ...strange.map(
        ({ unit, grams }) => `${name}: no measure of number ${ndb} is the ${unit} of ${grams} g.`,
      ),
    ];
  });
  console.log(`${foods.length} foods compared with ${place}.`);
  return [...mistakes.map(({ line, sentence }) => `foods.txt, line ${line}: ${sentence}`), ...wrong];
}

if (existsSync(place)) {
  const found = differences();
  for (const difference of found) console.log(difference);
  process.exitCode = found.length === 0 ? 0 : 1;
} else console.log(`${place} is not there, so the table of foods was not compared with it.`);
