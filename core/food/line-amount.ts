import { parseSpokenUnit } from "../units/amount-words.ts";
import type { Measured } from "../units/amount.ts";
import { measured } from "../units/amount.ts";
import { convert, measureOf } from "../units/measures.ts";
import { ONE, add, compare, rational } from "../units/rational.ts";
import type { Result } from "../units/result.ts";
import { err, ok } from "../units/result.ts";
import type { Unit } from "../units/unit.ts";
import { findUnit, unitWords } from "../units/unit.ts";
import { readCount, unhedged } from "./line-count.ts";
import type { Count } from "./line-count.ts";

/** An amount at the head of a text, what stands beside it, and the text behind it. */
export interface HeadAmount {
  readonly amount: Measured;
  /** The size of each package or piece. */
  readonly each: Measured | null;
  /** The same amount in another measure. */
  readonly also: Measured | null;
  /** Words about the amount: "heaped", "2-inch piece". */
  readonly notes: readonly string[];
  readonly rest: string;
}

type Tail<T> = { readonly value: T; readonly rest: string };

/** What is sold closed, so that a measure beside it is the size of one. */
const PACKAGES: ReadonlySet<Unit> = new Set<Unit>([
  "can",
  "jar",
  "bag",
  "bottle",
  "packet",
  "box",
  "carton",
  "tub",
  "punnet",
  "cube",
]);

const MODIFIER =
  /^(?:(?:heap(?:ed|ing)|rounded|level|scant|generous|good|small|medium|large|big|thick|thin|(?:(?:lightly|firmly|tightly) )?packed|[\p{L}]+-sized)\s+)+/iu;
const LENGTH =
  /^((?:\d+\s+(?=\d+\/))?[\d.]*[\d¼-¾⅐-⅞](?:\/\d+)?[\s-]*(?:inch(?:es)?|in\.?|cm|mm|")(?![\p{L}-])(?:[\s-]+(?:piece|pieces|length|chunk))?)\s*/iu;

/** Whether a measure beside this unit is the size of one of it. */
export const isPackage = (unit: Unit): boolean => PACKAGES.has(unit);

const withoutOf = (text: string): string => text.trim().replace(/^of(?: (?:the|an?))?(?:\s+|$)/i, "");

/** The unit a text begins with, the longest name first; the text's own capitals tell "T" from "t". */
function readUnit(text: string): Tail<Unit> | null {
  const match = /^[\s-]*([^/()]+)(.*)$/s.exec(text);
  const words = (match?.[1] ?? "").trim().split(/\s+/);
  const behind = match?.[2] ?? "";
  const letter = findUnit(words[0] ?? "");
  const plain = words.map((word) => word.toLowerCase().replaceAll(".", ""));
  const found = parseSpokenUnit(plain, 0);
  if (found === null) return null;
  const value = found.next === 1 && letter !== null ? letter : found.value;
  const left = words.slice(found.next).join(" ");
  const gap = left !== "" && /\s$/.test(match?.[1] ?? "") ? " " : "";
  return { value, rest: `${left}${gap}${behind}`.trim() };
}

/** A length or volume or weight and no more, or with text behind it: "14.5 oz", "400 g each". */
function readMeasure(text: string): Tail<Measured> | null {
  const count = readCount(unhedged(text), text);
  if (!count.ok || count.value === null) return null;
  const unit = readUnit(count.value.rest);
  if (unit === null || measureOf(unit.value) === null) return null;
  return { value: measured(count.value.low, unit.value, count.value.high), rest: unit.rest };
}

/** Whether a text begins with a measure of something: "2 cups cream". */
export function isMeasured(text: string): boolean {
  const measure = readMeasure(text);
  return measure !== null && measure.rest !== "";
}

/** A measure alone, as it stands in brackets: "14.5 oz", "about 360 ml"; "400 g each" tells the size of each. */
export function bracketMeasure(text: string): { readonly of: Measured; readonly isEach: boolean } | null {
  const measure = readMeasure(text.trim());
  if (measure === null) return null;
  if (measure.rest === "") return { of: measure.value, isEach: false };
  return /^each$/i.test(measure.rest) ? { of: measure.value, isEach: true } : null;
}

/** "2 (15-ounce) cans", "2 x 400 g tins", "1 28-ounce can": the size before what it is the size of. */
function sizeBefore(text: string): Tail<Measured> | null {
  const bracket = /^\s*\(([^()]*)\)\s*(.*)$/s.exec(text);
  if (bracket !== null) {
    const measure = bracketMeasure(bracket[1] ?? "");
    return measure === null ? null : { value: measure.of, rest: bracket[2] ?? "" };
  }
  const bare = /^\s*(?:[x×]\s*)?(?=[\d.½¼¾])(.*)$/is.exec(text);
  return bare === null ? null : readMeasure(bare[1] ?? "");
}

/** "(2-inch)", "2-inch piece", "x 5 cm pieces": words rather than a measure, since no dish counts in lengths. */
function lengthBefore(text: string): Tail<string> | null {
  const bracket = /^\s*\(([^()]*)\)\s*(.*)$/s.exec(text);
  const inner = bracket === null ? text.replace(/^\s*[x×]?\s*/i, "") : (bracket[1] ?? "");
  const match = LENGTH.exec(inner);
  if (match?.[1] === undefined) return null;
  const left = inner.slice(match[0].length);
  if (bracket !== null) return left === "" ? { value: match[1], rest: bracket[2] ?? "" } : null;
  return { value: match[1].trim(), rest: left };
}

function modifiersBefore(text: string): Tail<readonly string[]> {
  const match = MODIFIER.exec(text.trimStart());
  const behind = text.trimStart().slice(match?.[0].length ?? 0);
  if (match === null || readUnit(behind) === null) return { value: [], rest: text };
  return { value: [match[0].trim()], rest: behind };
}

function sum(first: Measured, second: Measured): Measured | null {
  const same = convert(second, first.unit);
  if (!same.ok || measureOf(first.unit) === null) return null;
  const [a, b] = [first, same.value].map(({ low, high }) => ({ low: rational(low), high: rational(high) }));
  return a === undefined || b === undefined
    ? null
    : measured(add(a.low, b.low), first.unit, add(a.high, b.high));
}

/** "1 cup plus 2 tbsp", "1 lb 4 oz": one amount in two measures. */
function withMore(head: HeadAmount): HeadAmount {
  const match = /^\s*(plus\s+|and\s+|\+\s*)?(?=\d|[½¼¾⅓⅔⅛])(.*)$/is.exec(head.rest);
  const more = match === null ? null : readMeasure(match[2] ?? "");
  if (match === null || more === null) return head;
  const total = sum(head.amount, more.value);
  const isSmaller = match[1] !== undefined || isLess(more.value.unit, head.amount.unit);
  return total === null || !isSmaller ? head : { ...head, amount: total, rest: more.rest };
}

function isLess(unit: Unit, than: Unit): boolean {
  const [a, b] = [measureOf(unit), measureOf(than)];
  return a !== null && b !== null && compare(a.size, b.size) < 0;
}

/** What stands right behind the unit: "(10 oz)", "/7oz". */
function withBeside(head: HeadAmount): HeadAmount {
  const match = /^\s*(?:\/\s*(.*)|\(([^()]*)\)\s*(.*))$/s.exec(head.rest);
  if (match === null) return head;
  const [, other, inner, behind] = match;
  if (other !== undefined) {
    const measure = readMeasure(other);
    return measure === null ? head : { ...head, also: measure.value, rest: measure.rest };
  }
  const measure = bracketMeasure(inner ?? "");
  if (measure === null) return head;
  const isEach = measure.isEach || isPackage(head.amount.unit);
  return { ...head, ...(isEach ? { each: measure.of } : { also: measure.of }), rest: behind ?? "" };
}

const headOf = (count: Count, unit: Unit, rest: string): HeadAmount => ({
  amount: measured(count.low, unit, count.high),
  each: null,
  also: null,
  notes: [],
  rest,
});

/** "14-oz can": the number told the size, and there is one. */
function onePackage(head: HeadAmount, written: string): Result<HeadAmount, string> {
  const { amount } = head;
  const sold = measureOf(amount.unit) === null ? null : readUnit(head.rest);
  if (sold === null || !isPackage(sold.value)) return ok(head);
  const asWritten = head.rest.slice(0, head.rest.length - sold.rest.length).trim();
  if (/^\d+\s+\d+\s*[/⁄]/.test(written) || /s$/i.test(asWritten)) {
    return err(`"${written}" may be one ${unitWords(sold.value).one} or more; write it like 2 x 400 g cans.`);
  }
  return ok({ ...head, amount: measured(ONE, sold.value), each: amount, rest: sold.rest });
}

function sized(count: Count): HeadAmount | null {
  const size = sizeBefore(count.rest);
  if (size !== null) {
    const unit = readUnit(size.rest);
    const isSold = unit !== null && measureOf(unit.value) === null;
    const head = isSold ? headOf(count, unit.value, unit.rest) : headOf(count, "piece", size.rest);
    return { ...head, each: size.value };
  }
  const length = lengthBefore(count.rest);
  if (length === null) return null;
  const unit = readUnit(length.rest);
  const isThing = unit !== null && unitWords(unit.value).dimension === "count";
  const head = isThing ? headOf(count, unit.value, unit.rest) : headOf(count, "piece", length.rest);
  return { ...head, notes: [length.value] };
}

/** "5cm piece of ginger": a text that begins with a length is about one piece. */
function lengthAlone(text: string): HeadAmount | null {
  const length = lengthBefore(text);
  if (length === null) return null;
  return { ...headOf({ low: ONE, high: ONE, rest: "" }, "piece", length.rest), notes: [length.value] };
}

/** "Knob of butter", "pinch salt": one, though no number says so. */
function unitAlone(text: string): HeadAmount | null {
  const unit = readUnit(text);
  if (unit === null || unit.rest === "") return null;
  const { dimension, one } = unitWords(unit.value);
  const isOne = text.toLowerCase().startsWith(`${one} `);
  const isPart = isOne && (dimension === "bit" || (dimension === "count" && /^of\b/i.test(unit.rest)));
  return isPart ? headOf({ low: ONE, high: ONE, rest: "" }, unit.value, unit.rest) : null;
}

function counted(count: Count, written: string): Result<HeadAmount, string> {
  const before = sized(count);
  if (before !== null) return ok(before);
  const { value: notes, rest } = modifiersBefore(count.rest.replace(/^\s*[x×]\s+(?=\p{L})/u, ""));
  const unit = readUnit(rest);
  if (unit === null) return ok(headOf(count, "piece", rest));
  return onePackage({ ...headOf(count, unit.value, unit.rest), notes }, written);
}

/**
 * The amount that a text begins with; null where none stands.
 * @param whole the line, to be quoted in the sentence
 * Errors: one sentence for an amount that cannot be meant, or may be meant in two ways.
 */
export function readHeadAmount(text: string, whole: string): Result<HeadAmount | null, string> {
  const plain = unhedged(text);
  const byLength = lengthAlone(plain);
  if (byLength !== null) return ok({ ...byLength, rest: withoutOf(byLength.rest) });
  const count = readCount(plain, whole);
  if (!count.ok) return count;
  const head = count.value === null ? ok(unitAlone(plain)) : counted(count.value, plain);
  if (!head.ok || head.value === null) return head;
  const told = withMore(withBeside(head.value));
  return ok({ ...told, rest: withoutOf(told.rest) });
}
