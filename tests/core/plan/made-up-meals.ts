import fc from "fast-check";
import type { Dish, Need, Step } from "../../../core/recipe/model.ts";
import { minutes } from "../../../core/units/quantity.ts";
import {
  after,
  appliance,
  bowl,
  burner,
  dish,
  fridge,
  handsOff,
  handsOn,
  mins,
  oven,
  stirEvery,
} from "./small-meals.ts";

const range = fc
  .tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 8 }))
  .map(([low, more]) => mins(low, low + more));
const maybe = (values: readonly number[]) =>
  fc.option(fc.constantFrom(...values).map(minutes), { nil: null, freq: 2 });

const unattendedNeed = fc.oneof(
  fc.constant<Need>(burner),
  fc.constant<Need>(fridge),
  fc
    .tuple(fc.constantFrom(300, 350, 365, 400, 425), fc.constantFrom(0, 25, 50), fc.constantFrom(1, 2))
    .map(([low, more, racks]): Need => oven(low, low + more, racks)),
);
const handsOnNeed = fc.constantFrom<readonly Need[]>(
  [],
  [],
  [bowl("big bowl")],
  [appliance("blender")],
  [burner],
);

/** A step after `index` others of its dish: waits for the one before, perhaps with a lag, or for none. */
function stepAt(index: number): fc.Arbitrary<Step> {
  const link = fc.constantFrom([0, null], [0, null], [5, null], [0, 10], [0, 0], [5, 40]) as fc.Arbitrary<
    [number, number | null]
  >;
  const links =
    index === 0
      ? fc.constant([])
      : fc.option(
          link.map(([low, high]) => [after(`s${index - 1}`, low, high)]),
          { nil: [], freq: 5 },
        );
  const on = fc
    .tuple(range, links, handsOnNeed, maybe([5, 15]))
    .map(([time, before, needs, close]) =>
      handsOn(`s${index}`, time, { after: before, needs, endsBeforeServing: close }),
    );
  const off = fc
    .tuple(range, links, unattendedNeed, maybe([5, 10, 30]), fc.boolean(), fc.constantFrom(0, 0, 0, 5))
    .map(([time, before, need, hold, stirred, pieces]) =>
      handsOff(`s${index}`, time, {
        after: before,
        needs: [need],
        hold,
        attend: stirred ? [stirEvery(4, 1)] : [],
        batch: pieces === 0 ? null : { of: pieces, holds: 2, pieces: "patties" },
      }),
    );
  return fc.oneof(on, off);
}

/** Only the last steps of a dish can be asked to end near serving without contradicting themselves. */
function freshAtTheEnd(steps: readonly Step[]): readonly Step[] {
  return steps.map((one, index) => (index === steps.length - 1 ? one : { ...one, endsBeforeServing: null }));
}

const steps = fc
  .integer({ min: 2, max: 7 })
  .chain((count) => fc.tuple(...Array.from({ length: count }, (_, index) => stepAt(index))))
  .map((all): readonly Step[] => freshAtTheEnd(all));

/** Three to six dishes of two to seven steps each, with everything a step can ask for. */
export const madeUpMeal: fc.Arbitrary<readonly Dish[]> = fc
  .array(steps, { minLength: 3, maxLength: 6 })
  .map((all) => all.map((one, index) => dish(`dish ${index + 1}`.replace(" ", "-"), one)));
