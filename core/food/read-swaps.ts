import type { Mistake } from "../recipe/mistake.ts";
import { parseAmount, type Measured } from "../units/amount.ts";
import { parseDuration } from "../units/duration.ts";
import { compare, ONE, parseRational, ZERO } from "../units/rational.ts";
import { seconds, type Seconds } from "../units/quantity.ts";
import { err, ok, type Result } from "../units/result.ts";
import type { FoodTable } from "./food.ts";
import { normaliseFood } from "./names.ts";
import type { Ratio, SwapRule } from "./swap-rule.ts";

/** Said in one breath. */
const LONGEST_EFFECT = 140;
const KEYS = ["for", "use", "take", "add", "time", "effect"] as const;
type Key = (typeof KEYS)[number];
const isKey = (text: string): text is Key => KEYS.some((key) => key === text);

interface Paragraph {
  readonly title: string;
  readonly line: number;
  readonly said: Map<Key, string>;
}

const FACTOR: Ratio = { kind: "factor", factor: ONE };

function measuredIn(text: string): Result<Measured, string> {
  const amount = parseAmount(text);
  if (!amount.ok) return amount;
  return amount.value.kind === "measured" ? ok(amount.value) : err(`"${text}" is no amount.`);
}

/** "3/4", "1 tbsp for 1 piece". */
function readRatio(text: string): Result<Ratio, string> {
  const [take = "", per, ...rest] = text.split(" for ");
  if (rest.length > 0) return err(`"${text}" cannot be read; write a factor, or so much for so much.`);
  if (per === undefined) {
    const factor = parseRational(take);
    return factor.ok && compare(factor.value, ZERO) > 0
      ? ok({ kind: "factor", factor: factor.value })
      : err(`"${take}" is no factor; write one like 3/4.`);
  }
  const [amount, of] = [measuredIn(take), measuredIn(per)];
  if (!amount.ok) return amount;
  return of.ok ? ok({ kind: "each", take: amount.value, for: of.value }) : of;
}

/** "+10 min", "-15 min". */
function readLonger(text: string): Result<Seconds, string> {
  const [, sign, length = ""] = /^([+-])(.+)$/.exec(text) ?? [];
  const span = parseDuration(length);
  if (sign === undefined || !span.ok || span.value.low !== span.value.high)
    return err(`"${text}" is no change of time; write one like +10 min or -15 min.`);
  return ok(seconds(span.value.low * (sign === "+" ? 1 : -1)));
}

function foodNamed(written: string, table: FoodTable): Result<string, string> {
  const food = table.get(normaliseFood(written));
  return food === undefined ? err(`No food in the table is called "${written}".`) : ok(food.name);
}

/** As it is written, for it is said so. */
function spokenFood(written: string, table: FoodTable): Result<string, string> {
  const food = foodNamed(written, table);
  return food.ok ? ok(written) : food;
}

/** "water 1/4", "water 3 tbsp for 1 piece". */
function readAdd(text: string, table: FoodTable): Result<SwapRule["add"], string> {
  const [, name = "", ratio = ""] = /^(\D+?) (\d.*)$/.exec(text) ?? [];
  const food = foodNamed(name, table);
  if (!food.ok) return food;
  const take = readRatio(ratio);
  return take.ok ? ok({ food: food.value, take: take.value }) : take;
}

/** A result, with its error put on the list. */
type Taken = <T>(read: Result<T, string>, otherwise: T) => T;

function ruleFrom({ title, said }: Paragraph, table: FoodTable, take: Taken): SwapRule {
  const parts = (said.get("for") ?? "").split(";").map((part) => part.trim());
  const read = <T>(key: Key, reader: (text: string) => Result<T, string>, otherwise: T): T => {
    const text = said.get(key);
    return text === undefined ? otherwise : take(reader(text), otherwise);
  };
  const effect = said.get("effect") ?? null;
  if (effect !== null && effect.length > LONGEST_EFFECT)
    take(err(`The effect has ${effect.length} letters; shorten it to ${LONGEST_EFFECT}.`), null);
  return {
    title,
    for: parts.filter(Boolean).map((part) => take(foodNamed(part, table), part)),
    use: read("use", (text) => spokenFood(text, table), ""),
    take: read("take", readRatio, FACTOR),
    add: read("add", (text) => readAdd(text, table), null),
    longer: read("time", readLonger, seconds(0)),
    effect,
  };
}

/**
 * Reads the table of swaps; a swap with a mistake is left out.
 * @param file the name to put on mistakes
 */
export function readSwaps(
  file: string,
  text: string,
  table: FoodTable,
): { readonly swaps: readonly SwapRule[]; readonly mistakes: readonly Mistake[] } {
  const mistakes: Mistake[] = [];
  const paragraphs: Paragraph[] = [];
  const wrong = (line: number, sentence: string): void =>
    void mistakes.push({ file, line, field: "", sentence });
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === "" || line.startsWith("#")) continue;
    if (!line.startsWith(" ")) {
      paragraphs.push({ title: line.trim(), line: index + 1, said: new Map() });
      continue;
    }
    const [, key = "", said = ""] = /^\s+(\S+)\s*(.*)$/.exec(line) ?? [];
    const swap = paragraphs.at(-1);
    if (swap === undefined || !isKey(key) || said === "")
      wrong(index + 1, `"${line.trim()}" is no line of a swap; write ${KEYS.join(", ")} below a title.`);
    else swap.said.set(key, said.trim());
  }
  const swaps = paragraphs.flatMap((one) => {
    const before = mistakes.length;
    const rule = ruleFrom(one, table, (read, otherwise) => {
      if (read.ok) return read.value;
      wrong(one.line, `${one.title}: ${read.error}`);
      return otherwise;
    });
    if (rule.for.length === 0 || rule.use === "") wrong(one.line, `${one.title} says not what for what.`);
    return mistakes.length === before ? [rule] : [];
  });
  return { swaps, mistakes };
}
