import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readDish } from "../../../core/recipe/read-dish.ts";
import { anyDish } from "./arbitraries.ts";
import { shippedPantry } from "./shelf.ts";
import { writeDish } from "./write-dish.ts";

const pantry = await shippedPantry();

describe("what is written is what is read", () => {
  it("[R27] any dish that the format can say reads back to itself", () => {
    fc.assert(
      fc.property(anyDish, (dish) => {
        expect(readDish("pot.yaml", "pot", writeDish(dish))).toEqual({ dish, mistakes: [] });
      }),
    );
  });

  it.each([...pantry.dishes.values()])("[R27] $name, written out in full, is the same dish", (dish) => {
    expect(readDish("pot.yaml", dish.id, writeDish(dish))).toEqual({ dish, mistakes: [] });
  });

  it("[R27] no text at all makes the reader fail, and every complaint has a line and a sentence", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...pantry.dishes.values()),
        fc.nat(),
        fc.nat(40),
        fc.string(),
        (dish, at, cut, put) => {
          const text = writeDish(dish);
          const start = at % text.length;
          const broken = text.slice(0, start) + put + text.slice(start + cut);
          const { mistakes } = readDish("pot.yaml", "pot", broken);
          const lines = broken.split("\n").length;
          for (const { line, sentence } of mistakes) {
            expect(line).toBeGreaterThanOrEqual(1);
            expect(line).toBeLessThanOrEqual(lines);
            expect(sentence).toMatch(/^\S.*[.?]$/s);
            expect(sentence).not.toMatch(/\{field\}|undefined|\[object/);
          }
        },
      ),
      { numRuns: 300 },
    );
  });
});
