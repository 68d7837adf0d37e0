import { isNutrient, NUTRIENT_NAMES, nutrientWords, type Nutrient } from "../food/nutrients.ts";
import { NUMBER, parseAmount } from "../units/amount.ts";
import { compare, div, mul, parseRational, ratio, ZERO, type Rational } from "../units/rational.ts";
import { err, ok, type Result } from "../units/result.ts";
import { unitWords } from "../units/unit.ts";
import { CLAIMS, findClaim } from "./claims-table.ts";
import type { Allowance, FoodRule, Scope, ValueRule } from "./diet.ts";

type Said = Pick<FoodRule, "verdict" | "allowance">;

const TIMES: ReadonlyMap<string, number> = new Map([
  ["once", 1],
  ["twice", 2],
]);
const PLAIN = new RegExp(`^(?:at most )?(once|twice|(\\d+) times) (?:a|per) (day|week)$`, "i");
const AMOUNT = /^(?:at most )?(.+?) (?:a|per) (serving|day|week)$/i;

const ALLOWED: Said = { verdict: "allowed", allowance: null };
const AVOIDED: Said = { verdict: "avoided", allowance: null };

const limited = (allowance: Allowance): Said => ({ verdict: "allowed", allowance });

const UNCLEAR =
  "write allowed, avoided, how often (once a week, 3 times a day) or how much (30 g a day, 1/2 cup a serving)";

function readTimes(text: string): Result<Said, string> | null {
  const match = PLAIN.exec(text);
  if (match === null) return null;
  const [, often = "", figure = "", every = ""] = match;
  const times = TIMES.get(often.toLowerCase()) ?? Number(figure);
  if (times < 1) return err(`"${text}" is never; write avoided instead.`);
  return ok(limited({ kind: "times", times, every: every === "day" ? "day" : "week" }));
}

function readMuch(text: string): Result<Said, string> | null {
  const [, much = "", every = ""] = AMOUNT.exec(text) ?? [];
  if (much === "") return null;
  const amount = parseAmount(much);
  if (!amount.ok) return err(`"${text}" cannot be read: ${amount.error}`);
  if (amount.value.kind !== "measured" || unitWords(amount.value.unit).dimension === "bit")
    return err(
      `"${much}" is nothing that can be added up; write a weight, a cup, a spoon or a number of pieces.`,
    );
  const within = every.toLowerCase();
  return ok(
    limited({
      kind: "amount",
      amount: amount.value,
      every: within === "serving" || within === "day" ? within : "week",
    }),
  );
}

/**
 * Reads what a diet says of a food: "allowed", "avoided", "once a week", "at most 30 g a day", "1/2 cup a serving".
 * Error: one sentence.
 */
export function readFoodRule(text: string): Result<Said, string> {
  const plain = text.trim().replace(/\s+/g, " ");
  if (/^allowed$/i.test(plain)) return ok(ALLOWED);
  if (/^avoided$/i.test(plain)) return ok(AVOIDED);
  return readTimes(plain) ?? readMuch(plain) ?? err(`"${text}" is no rule for a food; ${UNCLEAR}.`);
}

/** What one of the unit is in the value's own; salt is 2.5 times its sodium by EU Regulation 1169/2011, annex I. */
const SALT = ratio(10, 25);
const KILOJOULES = ratio(4184, 1000);
const THOUSAND = ratio(1000);

/** More of it than anyone eats in a day: a slip of the pen, or of a unit. */
const MOST: Readonly<Record<"kcal" | "g" | "mg", Rational>> = {
  kcal: ratio(10_000),
  g: ratio(2_000),
  mg: ratio(50_000),
};

function inOwnUnit(nutrient: Nutrient, figure: Rational, unit: string): Rational | null {
  const own = nutrientWords(nutrient).unit;
  if (unit === own) return figure;
  if (own === "kcal") return unit === "kj" ? div(figure, KILOJOULES) : null;
  if (own === "mg" && unit === "g") return mul(figure, THOUSAND);
  return own === "g" && unit === "mg" ? div(figure, THOUSAND) : null;
}

const FIGURE = new RegExp(
  `^(at most|at least) (${NUMBER}) ?(kcal|kj|mg|g)(?: of)? ([a-z][a-z -]*?) (?:in|per) (?:a |the |each )?(serving|meal|day)$`,
  "i",
);
const CLAIMED = /^(.+\)) in (?:a |the |each )?(serving|meal)$/i;

const isScope = (text: string): text is Scope => text === "serving" || text === "meal" || text === "day";
const scopeOf = (text: string): Scope =>
  isScope(text.toLowerCase()) ? (text.toLowerCase() as Scope) : "serving";

const nutrientOf = (word: string): { readonly nutrient: Nutrient; readonly times: Rational } | null => {
  const plain = word.toLowerCase().replaceAll(" ", "-");
  if (plain === "salt") return { nutrient: "sodium", times: SALT };
  const nutrient = plain === "saturated-fat" ? "saturated" : plain === "fiber" ? "fibre" : plain;
  return isNutrient(nutrient) ? { nutrient, times: ratio(1) } : null;
};

type ValueSaid =
  | Omit<Extract<ValueRule, { kind: "claim" }>, "because">
  | Omit<Extract<ValueRule, { kind: "at most" | "at least" }>, "because">;

function readFigure(text: string, match: RegExpExecArray): Result<ValueSaid, string> {
  const [, bound = "", number = "", unit = "", word = "", scope = ""] = match;
  const value = nutrientOf(word);
  if (value === null)
    return err(`"${word}" is no value that I can reckon; they are ${NUTRIENT_NAMES.join(", ")} and salt.`);
  const read = parseRational(number);
  if (!read.ok) return read;
  const own = inOwnUnit(value.nutrient, read.value, unit.toLowerCase());
  const { unit: right } = nutrientWords(value.nutrient);
  if (own === null) return err(`"${text}" has the wrong unit; ${value.nutrient} is counted in ${right}.`);
  const figure = mul(own, value.times);
  if (compare(figure, MOST[right]) > 0)
    return err(`"${text}" is more than anyone eats; look at the figure and its unit again.`);
  const kind = bound.toLowerCase() === "at most" ? "at most" : "at least";
  if (kind === "at least" && compare(figure, ZERO) === 0)
    return err(`"${text}" is always so; take the limit away.`);
  return ok({ kind, nutrient: value.nutrient, figure, written: `${number} ${unit}`, in: scopeOf(scope) });
}

/**
 * Reads a limit: "at most 140 mg sodium in a serving", "at least 25 g fibre in a day", "at most 5 g salt in a day",
 * or a threshold of the law: "low sodium (US) in a serving".
 * Error: one sentence.
 */
export function readValueRule(text: string): Result<ValueSaid, string> {
  const plain = text.trim().replace(/\s+/g, " ");
  const figure = FIGURE.exec(plain);
  if (figure !== null) return readFigure(plain, figure);
  const [, says = "", scope = ""] = CLAIMED.exec(plain) ?? [];
  const claim = findClaim(says);
  if (claim !== null) return ok({ kind: "claim", claim, in: scopeOf(scope) });
  if (says !== "")
    return err(`No threshold is called "${says}"; there are ${CLAIMS.map((one) => one.says).join(", ")}.`);
  return err(`"${text}" is no limit; write one like: at most 140 mg sodium in a serving.`);
}
