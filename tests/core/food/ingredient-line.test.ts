import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readIngredientLine } from "../../../core/food/ingredient-line.ts";
import type { IngredientLine } from "../../../core/food/ingredient-line.ts";
import { formatAmount, parseAmount } from "../../../core/units/amount.ts";
import type { Amount, Measured } from "../../../core/units/amount.ts";
import { measureOf } from "../../../core/units/measures.ts";
import { unitWords } from "../../../core/units/unit.ts";
import { anyAmount } from "../units/arbitraries.ts";
import { lines } from "./ingredient-lines-table.ts";
import type { LineCase } from "./ingredient-lines-table.ts";
import { linesApart } from "./ingredient-lines-apart-table.ts";
import { refusedLines } from "./ingredient-lines-refused-table.ts";

function amountOf(text: string): Amount {
  const amount = parseAmount(text);
  if (!amount.ok) throw new Error(amount.error);
  return amount.value;
}

function measureIn(text: string | undefined): Measured | null {
  const read = text === undefined ? null : amountOf(text);
  return read?.kind === "measured" ? read : null;
}

function meaningOf([, amount, item, preparation, beside]: LineCase): IngredientLine {
  return {
    amount: amountOf(amount),
    each: measureIn(beside?.each),
    also: measureIn(beside?.also),
    item,
    preparation: preparation ?? null,
    optional: beside?.optional ?? false,
  };
}

it.each(["1.000 g flour", "2.500 ml water", "about 1.500 grams potatoes"])("[F62] %s", (line) => {
  const read = readIngredientLine(line);
  expect(read.ok ? "read" : read.error).toContain("may be a thousand or one; write it without the point");
});

it.each(["1.25 g saffron", "0.125 g saffron", "1.250 kg flour"])("[F62] %s is no thousand", (line) => {
  expect(readIngredientLine(line).ok).toBe(true);
});

const ANYTHING = { each: null, also: null, item: null, preparation: null, optional: false };
const foods = fc.constantFrom(
  "red lentils",
  "black pepper",
  "garlic",
  "jalapeños",
  "80% rye bread",
  "Hülsenfrüchte",
);
const preparations = fc.constantFrom("minced", "cut in half, then sliced", "at room temperature");
const measures = anyAmount.filter(
  (amount): amount is Measured => amount.kind === "measured" && measureOf(amount.unit) !== null,
);

describe("a line of ingredients", () => {
  it.each(lines.map((row) => [row[0], row] as const))("[U30] %s", (line, row) => {
    expect(readIngredientLine(line)).toEqual({ ok: true, value: meaningOf(row) });
  });

  it("[U33] of the lines kept apart at least 95 in 100 are read right", () => {
    const wrong = linesApart.filter(
      (row) =>
        JSON.stringify(readIngredientLine(row[0])) !== JSON.stringify({ ok: true, value: meaningOf(row) }),
    );
    expect(wrong.length / linesApart.length).toBeLessThanOrEqual(0.05);
  });

  it.each(refusedLines)('[U31] "%s" is refused', (line, sentence) => {
    const read = readIngredientLine(line);
    expect(read.ok ? read.value : read.error).toContain(sentence);
    expect(read.ok ? "" : read.error).toMatch(/^[^\n]+\.$/);
  });

  it("[U31] no text makes the reader fail, and every refusal is a sentence", () => {
    const part = fc.constantFrom(
      "1",
      "1/2",
      "½",
      "-",
      "to",
      "cup",
      "oz",
      "(",
      ")",
      ",",
      "x",
      "of",
      "juice",
      "a",
      "can",
    );
    const text = fc.oneof(
      fc.string(),
      fc.string({ unit: "grapheme" }),
      fc.array(part).map((parts) => parts.join(" ")),
    );
    fc.assert(
      fc.property(text, (line) => {
        const read = readIngredientLine(line);
        expect(read.ok || /[.]$/.test(read.error)).toBe(true);
      }),
    );
  });

  it("[U32] an amount alone is read as `parseAmount` reads it", () => {
    fc.assert(
      fc.property(anyAmount, (amount) => {
        expect(readIngredientLine(formatAmount(amount))).toEqual({
          ok: true,
          value: { ...ANYTHING, amount },
        });
      }),
    );
  });

  it("[U32] a line made from an amount, a food and a preparation is read back to them", () => {
    fc.assert(
      fc.property(
        anyAmount,
        foods,
        fc.option(preparations),
        fc.boolean(),
        (amount, item, preparation, optional) => {
          const food = amount.kind === "to-taste" ? `${item} to taste` : `${formatAmount(amount)} ${item}`;
          const line = `${food}${optional ? " (optional)" : ""}${preparation === null ? "" : `, ${preparation}`}`;
          const expected = { ...ANYTHING, amount, item, preparation, optional };
          expect(readIngredientLine(line)).toEqual({ ok: true, value: expected });
        },
      ),
    );
  });

  it.each(["before", "behind"] as const)("[U32] the size of each package is read %s the package", (place) => {
    const packages = fc.constantFrom(
      "can",
      "jar",
      "bag",
      "bottle",
      "packet",
      "box",
      "carton",
      "tub",
      "punnet",
    );
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), packages, measures, foods, (count, unit, each, item) => {
        const { one, many } = unitWords(unit);
        const [name, size] = [count === 1 ? one : many, `(${formatAmount(each)})`];
        const head = place === "before" ? `${count} ${size} ${name}` : `${count} ${name} ${size}`;
        const amount = amountOf(`${count} ${name}`);
        expect(readIngredientLine(`${head} ${item}`)).toEqual({
          ok: true,
          value: { ...ANYTHING, amount, each, item },
        });
      }),
    );
  });
});
