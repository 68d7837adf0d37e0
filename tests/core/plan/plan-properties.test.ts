import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plan } from "../../../core/plan/plan.ts";
import { faultsOf } from "./check-sheet.ts";
import { madeUpMeal } from "./made-up-meals.ts";
import { at, evening } from "./small-meals.ts";

const serving = fc.constantFrom(null, at(-30), at(60), at(150), at(400));

describe("any meal", () => {
  it("[P1] gets a sheet that an independent check finds nothing wrong with", () => {
    fc.assert(
      fc.property(madeUpMeal, serving, (dishes, serveAt) => {
        const input = evening(dishes, { serveAt });
        expect(faultsOf(input, plan(input))).toEqual([]);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});
