import Fraction from "fraction.js";
import type { Result } from "./result.ts";
import { err, ok } from "./result.ts";

declare const rationalBrand: unique symbol;

/**
 * An exact number, kept as its lowest terms "n/d" ("3/2", "4/1", "-1/3").
 * A string on purpose: it is immutable, survives JSON, and equal numbers are `===`.
 */
export type Rational = string & { readonly [rationalBrand]: true };

const WRITTEN = /^(-?\d+)(?:\/(\d+))?$/;

function pack(value: Fraction): Rational {
  return `${String(value.s * value.n)}/${String(value.d)}` as Rational;
}

function unpack(value: Rational): Fraction {
  const cut = value.indexOf("/");
  return new Fraction(BigInt(value.slice(0, cut)), BigInt(value.slice(cut + 1)));
}

/**
 * The exact number `numerator / denominator`, both whole numbers.
 * Throws when either is not whole or the denominator is zero (a bug of the caller's).
 */
export function ratio(numerator: number | bigint, denominator: number | bigint = 1n): Rational {
  return pack(new Fraction(BigInt(numerator), BigInt(denominator)));
}

/**
 * Reads back the stored form "n/d" (a whole number "n" is taken too).
 * Throws on anything else: stored forms are ours, so a bad one is a bug. For people's text use `parseRational`.
 */
export function rational(stored: string): Rational {
  const match = WRITTEN.exec(stored);
  if (match?.[1] === undefined) throw new Error(`not a stored rational: "${stored}"`);
  return ratio(BigInt(match[1]), BigInt(match[2] ?? "1"));
}

/** Nought. */
export const ZERO: Rational = ratio(0);
/** One. */
export const ONE: Rational = ratio(1);

/** Vulgar fraction characters and their values (Unicode blocks Latin-1 Supplement and Number Forms). */
export const VULGAR: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅐": "1/7",
  "⅑": "1/9",
  "⅒": "1/10",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

function plain(text: string): string {
  return text
    .replace(/[¼-¾⅐-⅞]/g, (sign) => ` ${VULGAR[sign] ?? sign}`)
    .replaceAll("\u2044", "/")
    .replace(/\s+/g, " ")
    .replace(/ ?\/ ?/g, "/")
    .trim();
}

/**
 * Reads a number as cooks write it: "3", "1.5", ".5", "2/3", "1 1/2", "1½", "½".
 * Errors: one sentence for text that is no such number, or a fraction over nought.
 */
export function parseRational(text: string): Result<Rational, string> {
  const written = plain(text);
  const decimal = /^(\d*)\.(\d+)$/.exec(written);
  if (decimal !== null) {
    const digits = decimal[2] ?? "";
    return ok(ratio(BigInt(`${decimal[1] ?? ""}${digits}`), 10n ** BigInt(digits.length)));
  }
  if (/^\d+$/.test(written)) return ok(ratio(BigInt(written)));
  const fraction = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(written);
  if (fraction === null) {
    return err(`"${text}" is not a number I can read; write it like 2, 1.5 or 1 1/2.`);
  }
  const denominator = BigInt(fraction[3] ?? "1");
  if (denominator === 0n) return err(`"${text}" divides by zero; write a fraction like 1/2.`);
  const numerator = BigInt(fraction[1] ?? "0") * denominator + BigInt(fraction[2] ?? "0");
  return ok(ratio(numerator, denominator));
}

/** The exact value of a decimal number as it prints, so 0.1 is one tenth. Throws when not finite. */
export function fromNumber(value: number): Rational {
  if (!Number.isFinite(value)) throw new Error(`not a finite number: ${String(value)}`);
  const [figures = "0", exponent = "0"] = String(value).split("e");
  return pack(new Fraction(figures).mul(new Fraction(10).pow(Number(exponent))));
}

/** The nearest floating-point number; for drawing and comparison with measurements only. */
export const toNumber = (value: Rational): number => unpack(value).valueOf();

/** a + b. */
export const add = (a: Rational, b: Rational): Rational => pack(unpack(a).add(unpack(b)));
/** a - b. */
export const sub = (a: Rational, b: Rational): Rational => pack(unpack(a).sub(unpack(b)));
/** a x b. */
export const mul = (a: Rational, b: Rational): Rational => pack(unpack(a).mul(unpack(b)));
/** a / b. Throws when b is nought. */
export const div = (a: Rational, b: Rational): Rational => pack(unpack(a).div(unpack(b)));
/** Below 0 when a < b, 0 when equal, above 0 when a > b; fit for sorting. */
export const compare = (a: Rational, b: Rational): number => unpack(a).compare(unpack(b));
/** The distance from nought. */
export const abs = (value: Rational): Rational => pack(unpack(value).abs());

/** The whole part (towards minus infinity) and the rest, in [0, 1). */
export function mixed(value: Rational): { readonly whole: bigint; readonly part: Rational } {
  const whole = unpack(value).floor();
  return { whole: whole.s * whole.n, part: pack(unpack(value).sub(whole)) };
}

/** Numerator and denominator in lowest terms; the denominator is positive. */
export function terms(value: Rational): { readonly numerator: bigint; readonly denominator: bigint } {
  const { s, n, d } = unpack(value);
  return { numerator: s * n, denominator: d };
}

/** As a cook writes it: "3", "2/3", "1 1/2". Negative numbers carry one leading minus. */
export function formatRational(value: Rational): string {
  const sign = compare(value, ZERO) < 0 ? "-" : "";
  const { whole, part } = mixed(abs(value));
  if (part === ZERO) return `${sign}${String(whole)}`;
  return whole === 0n ? `${sign}${part}` : `${sign}${String(whole)} ${part}`;
}
