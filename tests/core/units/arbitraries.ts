import fc from "fast-check";
import type { Amount } from "../../../core/units/amount.ts";
import { measured } from "../../../core/units/amount.ts";
import type { Rational } from "../../../core/units/rational.ts";
import { compare, ratio } from "../../../core/units/rational.ts";
import { UNIT_IDS } from "../../../core/units/unit.ts";

/** Exact numbers from nought up, whole ones often. */
export const anyRational: fc.Arbitrary<Rational> = fc
  .tuple(fc.nat(20_000), fc.oneof(fc.constantFrom(1, 2, 3, 4, 8), fc.integer({ min: 1, max: 997 })))
  .map(([n, d]) => ratio(n, d));

/** Exact numbers above nought. */
export const positive: fc.Arbitrary<Rational> = anyRational.filter((value) => value !== ratio(0));

/** Any unit of the table. */
export const anyUnit = fc.constantFrom(...UNIT_IDS);

/** Amounts of every kind and unit, exact ones and ranges. */
export const anyAmount: fc.Arbitrary<Amount> = fc.oneof(
  { weight: 1, arbitrary: fc.constant<Amount>({ kind: "to-taste" }) },
  { weight: 4, arbitrary: fc.tuple(positive, anyUnit).map(([value, unit]) => measured(value, unit)) },
  {
    weight: 4,
    arbitrary: fc
      .tuple(positive, positive, anyUnit)
      .map(([a, b, unit]) => (compare(a, b) <= 0 ? measured(a, unit, b) : measured(b, unit, a))),
  },
);
