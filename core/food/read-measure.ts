import { compare, parseRational, ZERO } from "../units/rational.ts";
import { err, ok, type Result } from "../units/result.ts";
import { findUnit, unitWords } from "../units/unit.ts";
import { SIZES, type FoodMeasure, type Size } from "./food.ts";

const WRITTEN = /^([\d.]+)(?: ([a-z][a-z -]*))?(?:, ([a-z ]+))? = ([\d.]+)$/i;

const isSize = (word: string): word is Size => SIZES.some((size) => size === word);

/**
 * Reads one measure of the table: "1 cup, chopped = 160", "1 medium = 110", "1 large head = 840", "3 clove = 9".
 * Error: one sentence.
 */
export function readMeasure(text: string): Result<FoodMeasure, string> {
  const match = WRITTEN.exec(text);
  const [, count = "", named = "", how, weight = ""] = match ?? [];
  const [number, grams] = [parseRational(count), parseRational(weight)];
  if (match === null || !number.ok || !grams.ok)
    return err(`"${text}" is no measure; write it like 1 cup, chopped = 160.`);
  const [first = "", ...rest] = named.split(" ");
  const size = isSize(first) ? first : null;
  const word = size === null ? named : rest.join(" ");
  const unit = word === "" ? "piece" : findUnit(word);
  if (unit === null) return err(`"${word}" is not a unit I know; write one like cup, clove or head.`);
  if (unitWords(unit).dimension === "mass")
    return err(`"${text}" weighs a weight; write a cup, a spoon or a thing to count.`);
  if (compare(number.value, ZERO) === 0 || compare(grams.value, ZERO) === 0)
    return err(`"${text}" weighs nothing; leave the measure out.`);
  return ok({ count: number.value, unit, size, how: how ?? null, grams: grams.value });
}
