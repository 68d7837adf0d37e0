import fc from "fast-check";
import type {
  Attention,
  Dish,
  Ingredient,
  Link,
  Need,
  Step,
  Swap,
  Use,
  Way,
  Ways,
} from "../../../core/recipe/model.ts";
import { dishId, ingredientId, stepId } from "../../../core/recipe/model.ts";
import type { Amount } from "../../../core/units/amount.ts";
import { measured } from "../../../core/units/amount.ts";
import { minutes, seconds } from "../../../core/units/quantity.ts";
import { ONE, add, ratio, rational } from "../../../core/units/rational.ts";

/** Text with what troubles YAML and speech: colons, quotes, dashes, other alphabets, signs at the start. */
const words = fc
  .array(
    fc.constantFrom(
      "stir",
      "it: well",
      "#2",
      "'quoted'",
      '"pot"',
      "- dash",
      "no",
      "1.0",
      "jalapeño",
      "[x]",
      "{y}",
      "*",
      "&",
      "%",
      "null",
    ),
    {
      minLength: 1,
      maxLength: 5,
    },
  )
  .map((parts) => parts.join(" "));

const whole = (min: number, max: number) => fc.integer({ min, max });
const orNull = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: null });
const figure = fc.tuple(whole(1, 400), fc.constantFrom(1, 2, 3, 4, 8)).map(([n, d]) => ratio(n, d));
const unit = fc.constantFrom(
  "cup" as const,
  "tbsp" as const,
  "g" as const,
  "clove" as const,
  "piece" as const,
);
const amount = fc.oneof(
  { weight: 1, arbitrary: fc.constant<Amount>({ kind: "to-taste" }) },
  { weight: 3, arbitrary: fc.tuple(figure, unit).map(([low, of]) => measured(low, of)) },
  { weight: 2, arbitrary: fc.tuple(figure, unit).map(([low, of]) => measured(low, of, add(low, ONE))) },
);

const wait = whole(1, 7200).map(seconds);
const heat = fc
  .tuple(whole(100, 250), whole(0, 40), fc.constantFrom("F" as const, "C" as const))
  .map(([low, more, scale]) => ({
    low: { degrees: low, scale },
    high: { degrees: low + more, scale },
  }));

const needs = fc
  .record({
    burner: orNull(whole(1, 8)),
    oven: orNull(fc.tuple(heat, whole(1, 6))),
    appliances: fc.uniqueArray(fc.constantFrom("blender", "kettle", "steamer"), { maxLength: 2 }),
    bowls: fc.uniqueArray(fc.constantFrom("wide dish", "salad bowl"), { maxLength: 2 }),
    fridge: fc.boolean(),
  })
  .map(({ burner, oven, appliances, bowls, fridge }): readonly Need[] => [
    ...(burner === null ? [] : [{ kind: "burner", count: burner } as const]),
    ...(oven === null ? [] : [{ kind: "oven", heat: oven[0], racks: oven[1] } as const]),
    ...appliances.map((name) => ({ kind: "appliance", name }) as const),
    ...bowls.map((name) => ({ kind: "bowl", name }) as const),
    ...(fridge ? [{ kind: "fridge" } as const] : []),
  ]);

/** Moments that fall within a step of at least 20 minutes. */
const moment: fc.Arbitrary<Attention> = fc
  .tuple(whole(61, 1100), whole(1, 60), words)
  .chain(([at, slip, what]) => {
    const said = { within: seconds(slip), do: what };
    return fc.constantFrom<Attention>(
      { kind: "every", every: seconds(at), ...said },
      { kind: "at", after: seconds(at), ...said },
      { kind: "before-end", before: seconds(at), ...said },
    );
  });

const lag = fc.oneof(
  fc.tuple(whole(0, 3600), orNull(whole(0, 3600))).map(([least, more]) => ({
    atLeast: seconds(least),
    atMost: more === null ? null : seconds(least + more),
  })),
  fc.constant({ atLeast: seconds(0), atMost: seconds(0) }),
);

type Work = Omit<Way, "name">;

/** What one way of working has for itself; its time makes it differ from every other one. */
const work = (least: number, most: number): fc.Arbitrary<Work> =>
  fc
    .record({
      low: whole(least, most),
      do: words,
      hands: fc.constantFrom("on" as const, "off" as const),
      more: whole(0, 39),
      extend: orNull(fc.tuple(whole(1, 300), whole(0, 300), whole(0, 300))),
      attend: fc.uniqueArray(moment, { maxLength: 3, selector: (one) => JSON.stringify({ ...one, do: "" }) }),
      needs,
      holds: orNull(whole(1, 12)),
    })
    .map(({ low, more, extend, attend, holds, ...rest }) => ({
      ...rest,
      time: { low: minutes(low), high: minutes(low + more) },
      extend:
        extend === null
          ? null
          : {
              by: { low: seconds(extend[0]), high: seconds(extend[0] + extend[1]) },
              atMost: seconds(extend[0] + extend[1] + extend[2]),
            },
      attend: rest.hands === "off" ? attend : [],
      batch: holds === null ? null : { of: 24, holds, pieces: "patties" },
    }));

/** One way of working, or several under names of which the first is the step's own. */
const waysOfWorking = fc
  .tuple(work(20, 60), fc.tuple(work(70, 110), work(120, 200)), whole(0, 2), whole(1, 60))
  .map(([first, rest, count, of]): Work & { readonly ways: Ways | null } => {
    const counted = (one: Work): Work => ({
      ...one,
      batch: one.batch === null ? null : { ...one.batch, of },
    });
    const [own, others] = [counted(first), rest.map(counted)];
    const names = ["on the stove", "in the oven", "With a blender"];
    const all = [own, ...others.slice(0, count)].map((one, at) => ({ name: names[at] ?? "", ...one }));
    return {
      ...own,
      ways: count === 0 ? null : { all, taken: "on the stove", chosen: { by: "recipe" } },
    };
  });

function step(index: number): fc.Arbitrary<Omit<Step, "uses">> {
  return fc
    .record({
      work: waysOfWorking,
      until: orNull(words),
      latest: fc.constantFrom("hard" as const, "soft" as const),
      after: fc.array(lag, { minLength: index, maxLength: index }),
      keep: fc.array(fc.boolean(), { minLength: index, maxLength: index }),
      ahead: orNull(wait),
      endsBeforeServing: orNull(wait),
      hold: orNull(wait),
    })
    .map(({ work: { ways, ...own }, after, keep, ...rest }) => ({
      ...rest,
      ...own,
      ways,
      id: stepId(`step-${index}`),
      title: `work ${index} of many`,
      after: after.flatMap((link, at): Link[] =>
        keep[at] === true ? [{ step: stepId(`step-${at}`), ...link }] : [],
      ),
    }));
}

const swap = (others: readonly string[]): fc.Arbitrary<Swap> =>
  fc.record({
    use: words,
    amount: orNull(amount),
    effect: orNull(words),
    changes: fc
      .tuple(fc.subarray([...others]), amount)
      .map(([ids, to]) => ids.map((id) => ({ ingredient: ingredientId(id), amount: to }))),
  });

const weight = whole(1, 2000).map((grams) => measured(ratio(grams), "g", ratio(grams + 5)));

const ingredients = whole(1, 5).chain((count) => {
  const ids = Array.from({ length: count }, (_, index) => `food-${index}`);
  return fc.tuple(
    ...ids.map((id, index): fc.Arbitrary<Ingredient> =>
      fc.record({
        id: fc.constant(ingredientId(id)),
        item: fc.constant(`food number ${"xyzwv"[index] ?? ""}`),
        amount,
        preparation: orNull(words),
        food: orNull(words),
        weighs: orNull(weight),
        optional: fc.boolean(),
        swaps: fc.array(swap(ids.filter((other) => other !== id)), { maxLength: 2 }),
      }),
    ),
  );
});

/** Each ingredient goes whole into one step, or in two halves into two. */
function shares(
  foods: readonly Ingredient[],
  stepCount: number,
  seeds: readonly number[],
): readonly (readonly Use[])[] {
  const uses: Use[][] = Array.from({ length: stepCount }, () => []);
  foods.forEach(({ id, amount: whole }, index) => {
    const [first, second] = [(seeds[index] ?? 0) % stepCount, ((seeds[index] ?? 0) + 1) % stepCount];
    if (whole.kind === "to-taste" || first === second) uses[first]?.push({ ingredient: id, amount: whole });
    else {
      const twice = measured(
        add(rational(whole.low), rational(whole.low)),
        whole.unit,
        add(rational(whole.high), rational(whole.high)),
      );
      uses[first]?.push({ ingredient: id, amount: whole });
      uses[second]?.push({ ingredient: id, amount: whole });
      foods = foods.map((one) => (one.id === id ? { ...one, amount: twice } : one));
    }
  });
  return [
    ...uses,
    ...([foods.map(({ id, amount: total }) => ({ ingredient: id, amount: total }))] as Use[][]),
  ];
}

/** Any dish that the format can say. */
export const anyDish: fc.Arbitrary<Dish> = fc
  .tuple(
    ingredients,
    whole(1, 6),
    fc.array(whole(0, 50), { minLength: 5, maxLength: 5 }),
    words,
    whole(1, 100),
  )
  .chain(([foods, stepCount, seeds, name, servings]) => {
    const shared = shares(foods, stepCount, seeds);
    const totals = shared.at(-1) ?? [];
    return fc.tuple(...Array.from({ length: stepCount }, (_, index) => step(index))).map((steps): Dish => ({
      id: dishId("pot"),
      name,
      says: [name, `also ${name}`],
      about: name,
      cautions: [name],
      yield: { servings, of: "bowls" },
      ingredients: foods.map((one, index) => ({ ...one, amount: totals[index]?.amount ?? one.amount })),
      steps: steps.map((one, index) => ({ ...one, uses: shared[index] ?? [] })),
    }));
  });
