import { listed } from "../cook/say-call.ts";
import { isPlural, pluralOf, singularOf } from "../food/names.ts";
import { spokenIngredient } from "../food/ingredient-words.ts";
import { sumAmounts } from "../units/sum-amounts.ts";
import { theDish } from "../talk/speech.ts";
import type { Amount } from "../units/amount.ts";
import { shortAmount, spokenAmount } from "../units/amount-words.ts";
import { compare, ONE, rational } from "../units/rational.ts";
import { unitWords } from "../units/unit.ts";
import type { Preparation } from "./mise.ts";
import type { Act, Work } from "./preparation.ts";

/** How amounts are told: aloud in words, on a screen or paper in figures. */
interface Telling {
  readonly amount: (amount: Amount) => string;
  readonly food: (amount: Amount, item: string) => string;
}

const aloud: Telling = { amount: spokenAmount, food: spokenIngredient };

const inFigures: Telling = {
  amount: shortAmount,
  food: (amount, item) => {
    if (amount.kind === "to-taste") return `${item} to taste`;
    const isMany = compare(rational(amount.high), ONE) > 0;
    return amount.unit === "piece"
      ? `${shortAmount(amount)} ${isMany ? pluralOf(item) : singularOf(item)}`
      : `${shortAmount(amount)} of ${item}`;
  },
};

const verbOf = ({ manner, verb }: Act): string => `${manner} ${verb}`.trim();
const behind = (rest: string): string => (rest === "" ? "" : ` ${rest}`);

/** "rinse and pick over the lentils", "peel and cut a carrot into sticks", "garlic, as the recipe has it". */
function sentence({ acts, words }: Work, food: string, pronoun: string): string {
  const withRest = acts.findIndex(({ rest }) => rest !== "");
  const lead = withRest < 0 ? acts : acts.slice(0, withRest + 1);
  const then = acts.slice(lead.length).map((act) => `, then ${verbOf(act)} ${pronoun}${behind(act.rest)}`);
  const first =
    lead.length === 0 ? food : `${listed(lead.map(verbOf))} ${food}${behind(lead.at(-1)?.rest ?? "")}`;
  return [first, ...then, ...words.map((word) => `, ${word}`)].join("");
}

function foodOf({ amounts, food }: Preparation, telling: Telling): string {
  const [first, ...others] = amounts;
  if (first === undefined) return food;
  return listed([telling.food(first, food), ...others.map(telling.amount)]);
}

function isMany({ amounts: [amount], food }: Preparation): boolean {
  if (amount?.kind === "measured" && amount.unit === "piece") return compare(rational(amount.high), ONE) > 0;
  return isPlural(food);
}

/** What goes where: "two for the soup, three for the sauce"; "" where it all goes into one dish. */
function shares({ portions, amounts }: Preparation, telling: Telling): string {
  const dishes = [...new Map(portions.map(({ dish }) => [dish.id, dish])).values()];
  if (dishes.length < 2) return "";
  const of = dishes.map((dish) => {
    const own = sumAmounts(portions.filter((one) => one.dish.id === dish.id).map(({ amount }) => amount));
    const said = own.map((amount) => telling.amount(amounts.length === 1 ? unitSaid(amount) : amount));
    return `${listed(said)} for ${theDish(dish)}`;
  });
  return `: ${of.join(", ")}`;
}

/** "Two for the soup": things keep no unit that was said before. */
const unitSaid = (amount: Amount): Amount =>
  amount.kind === "measured" && unitWords(amount.unit).dimension === "count"
    ? { ...amount, unit: "piece" }
    : amount;

function told(preparation: Preparation, telling: Telling): string {
  const work = sentence(preparation.work, foodOf(preparation, telling), isMany(preparation) ? "them" : "it");
  const optional = preparation.isOptional ? ", if you use it" : "";
  return `${work}${optional}${shares(preparation, telling)}`;
}

/** One preparation as it is said: "mince five cloves of garlic: two cloves for the soup, three cloves for the sauce". */
export const sayPreparation = (preparation: Preparation): string => told(preparation, aloud);

/** The same in figures: "rinse 1½ cups of red lentils". */
export const writePreparation = (preparation: Preparation): string => told(preparation, inFigures);

/** Why raw food stands apart; null where there is none. Source: docs/sources.md, raw food on a board of its own. */
export function rawCaution(list: readonly Preparation[]): string | null {
  return list.some(({ place }) => place === "raw")
    ? "Raw meat, fish and eggs get a board and a knife of their own; wash your hands after them."
    : null;
}
