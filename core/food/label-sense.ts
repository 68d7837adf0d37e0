import { add, compare, mul, ratio, sub, toNumber, ZERO, type Rational } from "../units/rational.ts";
import type { Bounds } from "./food.ts";
import type { Printed } from "./label-rounding-table.ts";
import { capital } from "../units/capital.ts";

/** What a label tells in 100 g, each between its ends; what it does not tell is missing. */
export type Told = ReadonlyMap<Printed, Bounds>;

/** What is wrong with a printed value. */
export interface Misprint {
  readonly value: Printed;
  readonly sentence: string;
}

const NOTHING: Bounds = { low: ZERO, high: ZERO };
/** Each figure of a sum is an analysis of its own: SR28 has 100.1 g in flaxseed oil, and more sugars than carbohydrate in milk. */
const MOST_GRAMS = ratio(101);
const PART_SLACK = { share: ratio(11, 10), grams: ratio(1, 10) };
/** Sodium in pure salt, in milligrams in 100 g: 22.99 of 58.44 (atomic weights of sodium and chlorine). */
const MOST_SODIUM = ratio(39_340);
/** Pure fat by the factors of 21 CFR 101.9(c)(1)(i) is 900; the tables have 902 for oil (SR28 number 04053: 884). */
const MOST_ENERGY = ratio(910);
/** Sodium times this is salt: Regulation (EU) 1169/2011, annex I, point 11. */
const SALT_OF_SODIUM = ratio(25, 10_000);

const words: Partial<Record<Printed, string>> = { saturated: "saturated fat", "vitamin-c": "vitamin C" };
const said = (value: Printed): string => words[value] ?? value;
const figure = (value: Rational): string => String(Math.round(toNumber(value)));

const withSlack = (whole: Rational): Rational => add(mul(whole, PART_SLACK.share), PART_SLACK.grams);

/** A part that is greater than what it is part of. */
function parts(told: Told, isEuropean: boolean): readonly Misprint[] {
  const pairs: readonly (readonly [part: Printed, whole: Printed])[] = [
    ["saturated", "fat"],
    ["sugars", "carbohydrate"],
    // The EU's carbohydrate is without fibre.
    ...(isEuropean ? [] : ([["fibre", "carbohydrate"]] as const)),
  ];
  return pairs.flatMap(([part, whole]) => {
    const [inner, outer] = [told.get(part), told.get(whole)];
    if (inner === undefined || outer === undefined || compare(inner.low, withSlack(outer.high)) <= 0)
      return [];
    return [
      {
        value: part,
        sentence: `There is more ${said(part)} than ${said(whole)}, of which it is a part; read the label again.`,
      },
    ];
  });
}

function tooMuch(told: Told, isEuropean: boolean): readonly Misprint[] {
  const sodium = told.get("sodium");
  if (sodium !== undefined && compare(sodium.low, MOST_SODIUM) > 0)
    return [
      { value: "sodium", sentence: "That is more sodium than pure salt holds; check milligrams and grams." },
    ];
  const things: readonly Printed[] = [
    "protein",
    "fat",
    "carbohydrate",
    ...(isEuropean ? (["fibre"] as const) : []),
  ];
  const all: readonly Printed[] = [...things, "saturated", "sugars", "fibre", "salt"];
  const alone = all.find((value) => {
    const one = told.get(value);
    return one !== undefined && compare(one.low, MOST_GRAMS) > 0;
  });
  if (alone !== undefined)
    return [
      {
        value: alone,
        sentence: `100 grams cannot hold more than 100 grams of ${said(alone)}; check the figure and the serving.`,
      },
    ];
  const sum = things.reduce((total, value) => add(total, told.get(value)?.low ?? ZERO), ZERO);
  if (compare(sum, MOST_GRAMS) <= 0) return [];
  return [
    {
      value: things.find((value) => told.has(value)) ?? "protein",
      sentence: `Protein, fat and carbohydrate come to ${figure(sum)} grams in 100 grams; check the figures and the serving.`,
    },
  ];
}

const [four, nine, two] = [ratio(4), ratio(9), ratio(2)];
/** Fruit, cocoa and mushrooms are told with smaller factors than 4, 4 and 9 (SR28's documentation, Atwater factors). */
const [LEAST_SHARE, MOST_SHARE, SLACK] = [ratio(6, 10), ratio(125, 100), ratio(10)];

/** Energy that the 4, 4 and 9 kilocalories of protein, carbohydrate and fat cannot give. */
function energyOff(told: Told, isEuropean: boolean): readonly Misprint[] {
  const [energy, protein, fat, carbohydrate] = (["energy", "protein", "fat", "carbohydrate"] as const).map(
    (value) => told.get(value),
  );
  if (energy !== undefined && compare(energy.low, MOST_ENERGY) > 0)
    return [
      {
        value: "energy",
        sentence: "That is more energy than pure fat holds; check the figure and the serving.",
      },
    ];
  if (energy === undefined || protein === undefined || fat === undefined || carbohydrate === undefined)
    return [];
  const fibre = told.get("fibre") ?? NOTHING;
  const sum = (a: Rational, b: Rational, c: Rational): Rational =>
    add(add(mul(a, four), mul(b, nine)), mul(c, four));
  const net = isEuropean ? carbohydrate.low : sub(carbohydrate.low, fibre.high);
  const least = sum(protein.low, fat.low, compare(net, ZERO) < 0 ? ZERO : net);
  const more = isEuropean ? mul(fibre.high, two) : ZERO;
  const most = add(sum(protein.high, fat.high, carbohydrate.high), more);
  const isLow = compare(energy.high, sub(mul(least, LEAST_SHARE), SLACK)) < 0;
  const isHigh = compare(energy.low, add(mul(most, MOST_SHARE), SLACK)) > 0;
  if (!isLow && !isHigh) return [];
  return [
    {
      value: "energy",
      sentence: `The energy is far from the ${figure(least)} to ${figure(most)} kilocalories that protein, fat and carbohydrate give in 100 grams; check kilojoules and the figures, or leave the energy out.`,
    },
  ];
}

function saltOff(told: Told): readonly Misprint[] {
  const [salt, sodium] = [told.get("salt"), told.get("sodium")];
  if (salt === undefined || sodium === undefined) return [];
  const [low, high] = [mul(sodium.low, SALT_OF_SODIUM), mul(sodium.high, SALT_OF_SODIUM)];
  if (compare(salt.low, high) <= 0 && compare(low, salt.high) <= 0) return [];
  return [
    {
      value: "salt",
      sentence: "Salt is two and a half times the sodium, and here it is not; keep the right one.",
    },
  ];
}

/**
 * What cannot be true of a printed label, at most one sentence for each kind.
 * @param isEuropean the EU's carbohydrate is without fibre
 */
export function misprints(told: Told, isEuropean: boolean): readonly Misprint[] {
  const amounts = tooMuch(told, isEuropean);
  return [
    ...amounts,
    ...parts(told, isEuropean),
    ...saltOff(told),
    // Wrong grams make wrong energy: one mistake is told once.
    ...(amounts.length > 0 ? [] : energyOff(told, isEuropean)),
  ].map(({ value, sentence }) => ({ value, sentence: capital(sentence) }));
}
