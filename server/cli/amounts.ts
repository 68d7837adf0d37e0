import { dishAmounts, type DishAmounts } from "../../core/amounts/dish-amounts.ts";
import { makeable, readFactor, readHaving } from "../../core/amounts/factor.ts";
import { panFactor, readPan } from "../../core/amounts/pan.ts";
import { listed } from "../../core/recipe/nearest.ts";
import { formatAmount } from "../../core/units/amount.ts";
import { mul, ratio, type Rational } from "../../core/units/rational.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { amountsJson } from "./amounts-json.ts";
import { amountsText } from "./amounts-text.ts";
import { exit, readArguments, type CliCommand, type ExitCode } from "./command.ts";
import { findDishes, type FoundDishes, type WantedDish } from "./find-dishes.ts";
import { printData, printMessage } from "./print.ts";

const help = `amounts DISH|MEAL: print what goes in, for more or fewer, for what is in the house, or for another pan.

  DISH|MEAL               the name of a dish or a meal, or the path of its file
  --servings N            so many of the one dish; of a meal: --servings DISH=N, as often as there are dishes
  --times N               so many times the recipe: 2, 1.5, "1 1/2"
  --have "300 g lentils"  the most that can be made of what is in the house
  --pan "A to B"          as deep in another pan: "9 inch round to 8 inch square", "20 cm square to 23 x 33 cm"
  --json                  one object: why, and the dishes, each with factor, servings, its ingredients (exact and as
                          they can be measured) and cautions

Amounts are exact inside; what is told is rounded to what spoons, scales and eggs can measure. The cautions tell what
does not grow with the amounts: times, what boils away, spice, pans, turns, cooling. Choose one way to scale.

Example: amounts lentil-soup --have "300 g red lentils"`;

const options = {
  json: { type: "boolean", default: false },
  servings: { type: "string", multiple: true },
  times: { type: "string" },
  have: { type: "string" },
  pan: { type: "string" },
} as const;

type Way =
  | { readonly by: "servings"; readonly of: readonly string[] }
  | { readonly by: "times" | "have" | "pan"; readonly text: string };

interface Wanted {
  readonly word: string;
  readonly way: Way;
  readonly json: boolean;
}

function readWanted(args: readonly string[]): Result<Wanted, string> {
  const read = readArguments(args, options);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const [word, tooMuch] = positionals;
  if (word === undefined) return err("Name a dish or a meal, for instance: amounts lentil-soup --times 2");
  if (tooMuch !== undefined) return err(`amounts takes one dish or meal; "${tooMuch}" is one word too many.`);
  const texts = (["times", "have", "pan"] as const).flatMap((by): readonly Way[] => {
    const text = values[by];
    return text === undefined ? [] : [{ by, text }];
  });
  const ways: readonly Way[] = [
    ...(values.servings === undefined ? [] : [{ by: "servings", of: values.servings } as const]),
    ...texts,
  ];
  if (ways.length > 1)
    return err(`Scale in one way only, not by ${listed(ways.map(({ by }) => by))} at once.`);
  return ok({ word, way: ways[0] ?? { by: "servings", of: [] }, json: values.json });
}

/** Each dish with how many times it is made, and why. */
interface Scaled {
  readonly dishes: readonly { readonly dish: WantedDish["dish"]; readonly factor: Rational }[];
  readonly why: string | null;
}

const asWanted = ({ dish, servings }: WantedDish): Rational => ratio(servings, dish.yield.servings);

function bySize(
  dishes: readonly WantedDish[],
  factorOf: (one: WantedDish) => Result<Rational, string>,
): Result<Scaled, string> {
  const scaled: { readonly dish: WantedDish["dish"]; readonly factor: Rational }[] = [];
  for (const one of dishes) {
    const factor = factorOf(one);
    const made = factor.ok ? makeable(one.dish, factor.value) : factor;
    if (!made.ok) return made;
    scaled.push({ dish: one.dish, factor: made.value });
  }
  return ok({ dishes: scaled, why: null });
}

function readServings(
  texts: readonly string[],
  { dishes, name }: FoundDishes,
): Result<ReadonlyMap<string, number>, string> {
  const wanted = new Map<string, number>();
  for (const text of texts) {
    const [, id = dishes.length === 1 ? dishes[0]?.dish.id : undefined, figure = ""] =
      /^(?:([^=]*)=)?(.*)$/.exec(text) ?? [];
    if (id === undefined)
      return err(`Name the dish too, like --servings ${dishes[0]?.dish.id ?? "dish"}=${figure}.`);
    if (!dishes.some(({ dish }) => dish.id === id))
      return err(`${name} has no dish ${id}; it has ${listed(dishes.map(({ dish }) => dish.id))}.`);
    const servings = /^\d+$/.test(figure) ? Number(figure) : 0;
    if (servings < 1) return err(`"${figure}" is no number of servings; write a whole one from 1 to 100.`);
    wanted.set(id, servings);
  }
  return ok(wanted);
}

function one(found: FoundDishes): Result<WantedDish, string> {
  const [only, other] = found.dishes;
  if (only !== undefined && other === undefined) return ok(only);
  return err(
    `${found.name} has several dishes; name one of them: ${listed(found.dishes.map(({ dish }) => dish.id))}.`,
  );
}

function fromHouse(text: string, found: FoundDishes): Result<Scaled, string> {
  const { foods } = found;
  if (foods === null)
    return err("The table of foods cannot be read, so nothing can be weighed; put it back.");
  const read = found.dishes.map(({ dish }) => readHaving(dish, text, foods));
  const having = read.flatMap((each, index) => (each.ok ? [{ ...each.value, index }] : []));
  const [only, second] = having;
  const [first] = read;
  if (only === undefined) return first?.ok === false ? first : err("There is no dish to make.");
  if (second !== undefined)
    return err(`Several dishes of ${found.name} take it; name one of them instead of the meal.`);
  const why = `From ${formatAmount(only.have)} of ${only.ingredient.item}, of which the recipe takes ${formatAmount(only.ingredient.amount)}.`;
  const dishes = found.dishes.flatMap(({ dish }, index) =>
    index === only.index ? [{ dish, factor: only.factor }] : [],
  );
  return ok({ dishes, why });
}

function fromPan(text: string, found: FoundDishes): Result<Scaled, string> {
  const [from, to, more] = text.split(/\s+to\s+/i);
  if (from === undefined || to === undefined || more !== undefined)
    return err(`"${text}" is not two pans; write them like 9 inch round to 8 inch square.`);
  const [before, after] = [readPan(from), readPan(to)];
  if (!before.ok) return before;
  if (!after.ok) return after;
  const only = one(found);
  if (!only.ok) return only;
  const scaled = bySize([only.value], (each) =>
    ok(mul(asWanted(each), panFactor(before.value, after.value))),
  );
  return scaled.ok ? ok({ ...scaled.value, why: `As deep in a pan of ${to} as in one of ${from}.` }) : scaled;
}

function scaledBy(way: Way, found: FoundDishes): Result<Scaled, string> {
  switch (way.by) {
    case "servings": {
      const wanted = readServings(way.of, found);
      if (!wanted.ok) return wanted;
      return bySize(found.dishes, (each) =>
        ok(asWanted({ ...each, servings: wanted.value.get(each.dish.id) ?? each.servings })),
      );
    }
    case "times": {
      const factor = readFactor(way.text);
      return factor.ok ? bySize(found.dishes, (each) => ok(mul(asWanted(each), factor.value))) : factor;
    }
    case "have":
      return fromHouse(way.text, found);
    case "pan":
      return fromPan(way.text, found);
  }
}

async function run(args: readonly string[]): Promise<ExitCode> {
  const wanted = readWanted(args);
  if (!wanted.ok) {
    printMessage(wanted.error);
    return exit.misuse;
  }
  const found = await findDishes(wanted.value.word);
  const scaled = found.ok ? scaledBy(wanted.value.way, found.value) : found;
  if (!found.ok || !scaled.ok) {
    printMessage(scaled.ok ? "" : scaled.error);
    return exit.refused;
  }
  const { why, dishes } = scaled.value;
  const all = dishes.map(({ dish, factor }): DishAmounts => {
    const amounts = dishAmounts(dish, factor, found.value.foods);
    if (wanted.value.way.by !== "pan") return amounts;
    // The pan was chosen for the amount.
    return { ...amounts, cautions: amounts.cautions.filter(({ about }) => about !== "pan") };
  });
  printData(wanted.value.json ? JSON.stringify(amountsJson(all, why)) : amountsText(all, { why }));
  return exit.right;
}

/** `amounts`: what goes into dishes, for more, for fewer, for what there is. */
export const amountsCommand: CliCommand = {
  name: "amounts",
  summary: "tell what goes in: for more or fewer, for what is in the house, for another pan",
  help,
  run,
};
