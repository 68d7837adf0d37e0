import { spokenIngredient } from "../food/ingredient-words.ts";
import { portionId } from "../mise/portion.ts";
import { atPace } from "../pace/pace.ts";
import { expandTasks } from "../plan/tasks.ts";
import type { Dish, DishId, StepId, Use } from "../recipe/model.ts";
import type { Amount, Measured } from "../units/amount.ts";
import { measured, scaleAmount } from "../units/amount.ts";
import { spokenAmount } from "../units/amount-words.ts";
import { convert } from "../units/measures.ts";
import { add, compare, div, ONE, ratio, rational, sub, ZERO } from "../units/rational.ts";
import type { Rational } from "../units/rational.ts";
import { err, ok } from "../units/result.ts";
import type { AmountWanted } from "./amount-wanted.ts";
import type { Decision } from "./decision.ts";
import type { Session } from "./session.ts";
import { makesSense } from "./unit-sense.ts";

const ends = ({ low, high }: Measured): readonly [Rational, Rational] => [rational(low), rational(high)];

/** The sum of amounts in one unit; null where one of them cannot be told in it. */
function sumIn(unit: Measured["unit"], amounts: readonly Amount[]): readonly [Rational, Rational] | null {
  let sum: readonly [Rational, Rational] = [ZERO, ZERO];
  for (const amount of amounts) {
    const like = amount.kind === "measured" ? convert(amount, unit) : null;
    if (like?.ok !== true) return null;
    const [low, high] = ends(like.value);
    sum = [add(sum[0], low), add(sum[1], high)];
  }
  return sum;
}

/** Shares an amount out in the proportion of what the uses had, each in its own unit where it can be told in it. */
function shared(uses: readonly Use[], to: Measured): readonly Use[] {
  const unit = uses.flatMap(({ amount }) => (amount.kind === "measured" ? [amount.unit] : []))[0] ?? to.unit;
  const sum = sumIn(
    unit,
    uses.map(({ amount }) => amount),
  );
  return uses.map((use) => {
    const own = use.amount.kind === "measured" ? convert(use.amount, unit) : null;
    const isKnown = own?.ok === true && sum !== null && compare(sum[1], ZERO) > 0;
    const share = isKnown ? div(rational(own.value.high), sum[1]) : div(ONE, ratio(uses.length));
    const amount = scaleAmount(to, share);
    const inOwn = use.amount.kind === "measured" ? convert(amount, use.amount.unit) : null;
    return { ...use, amount: inOwn?.ok === true ? inOwn.value : amount };
  });
}

/** What is left for the uses that are still to come; null where that is nothing, or cannot be told. */
function restOf(amount: Measured, over: readonly Use[]): Measured | null {
  const gone = sumIn(
    amount.unit,
    over.map((use) => use.amount),
  );
  if (gone === null) return null;
  const [low, high] = ends(amount);
  const [least, rest] = [sub(low, gone[0]), sub(high, gone[1])];
  return compare(least, ZERO) > 0 && compare(least, rest) <= 0 ? measured(least, amount.unit, rest) : null;
}

/** The uses of an ingredient with another amount of it: what has gone in stands, and the steps to come share the rest. */
function usesWith(uses: readonly Use[], amount: Measured, isOver: (use: Use) => boolean): readonly Use[] {
  const [over, open] = [uses.filter(isOver), uses.filter((use) => !isOver(use))];
  const rest = over.length === 0 || open.length === 0 ? null : restOf(amount, over);
  if (rest === null) return shared(uses, amount);
  const after = shared(open, rest);
  return uses.map((use) => after[open.indexOf(use)] ?? use);
}

interface Changed {
  readonly listed: Measured;
  /** In the order of the dish's own uses. */
  readonly uses: readonly Use[];
}

function changed(dish: Dish, wanted: AmountWanted, isOver: (step: StepId) => boolean): Changed | null {
  const places = dish.steps.flatMap((step) =>
    step.uses.filter((use) => use.ingredient === wanted.ingredient).map((use) => ({ step: step.id, use })),
  );
  const before = dish.ingredients.find(({ id }) => id === wanted.ingredient)?.amount;
  if (before === undefined) return null;
  const uses = places.map(({ use }) => use);
  const stepOf = new Map(places.map(({ step, use }) => [use, step]));
  if (wanted.step === null)
    return {
      listed: wanted.amount,
      uses: usesWith(uses, wanted.amount, (use) => {
        const step = stepOf.get(use);
        return step !== undefined && isOver(step);
      }),
    };
  const after = places.map(({ step, use }) =>
    step === wanted.step ? { ...use, amount: wanted.amount } : use,
  );
  const unit = before.kind === "measured" ? before.unit : wanted.amount.unit;
  const sum = sumIn(
    unit,
    after.map(({ amount }) => amount),
  );
  return sum === null || places.every(({ step }) => step !== wanted.step)
    ? null
    : { listed: measured(sum[0], unit, sum[1]), uses: after };
}

/** The dish with another amount of one ingredient, in its list and its steps; null where it cannot be told so. */
export function withAmount(dish: Dish, wanted: AmountWanted, isOver: (step: StepId) => boolean): Dish | null {
  const then = changed(dish, wanted, isOver);
  if (then === null) return null;
  let at = 0;
  return {
    ...dish,
    ingredients: dish.ingredients.map((one) =>
      one.id === wanted.ingredient ? { ...one, amount: then.listed } : one,
    ),
    steps: dish.steps.map((step) => ({
      ...step,
      uses: step.uses.map((use) => (use.ingredient === wanted.ingredient ? (then.uses[at++] ?? use) : use)),
    })),
  };
}

/** Whether what a step takes is in already. */
const isInFor =
  ({ tasks, progress }: Session, dish: DishId) =>
  (id: StepId): boolean =>
    tasks.some(({ id: task, dish: of, step }) => {
      const state = progress.get(task)?.state ?? "waiting";
      const isIn = state === "done" || (state === "running" && step.hands === "off");
      return of.id === dish && step.id === id && isIn;
    });

/** The dish of an evening as it would be. */
export function dishWith(session: Session, wanted: AmountWanted): Dish | null {
  const dish = session.meal.dishes.find(({ id }) => id === wanted.dish);
  return dish === undefined ? null : withAmount(dish, wanted, isInFor(session, wanted.dish));
}

/** Only an amount that can be meant, of a food that the dish has. */
export function decideAmount(wanted: AmountWanted, session: Session): Decision {
  const { dish, ingredient, step, amount } = wanted;
  const found = session.meal.dishes.find(({ id }) => id === dish);
  const food = found?.ingredients.find(({ id }) => id === ingredient);
  const uses = found?.steps.find(({ id }) => id === step)?.uses ?? [];
  const before = step === null ? food?.amount : uses.find((use) => use.ingredient === ingredient)?.amount;
  if (food === undefined || before === undefined) return err({ code: "NoSuchFood", asked: ingredient });
  const [low, high] = ends(amount);
  if (compare(low, ZERO) <= 0 || compare(low, high) > 0) return err({ code: "NoAmount" });
  const asked = spokenIngredient(amount, food.item);
  if (!makesSense(amount, before) || dishWith(session, wanted) === null)
    return err({ code: "OddAmount", asked, recipe: spokenAmount(before) });
  if (
    before.kind === "measured" &&
    before.unit === amount.unit &&
    ends(before).join() === ends(amount).join()
  )
    return err({ code: "AmountAlready", asked });
  return ok([{ ...wanted, type: "AmountChanged" }]);
}

/** The evening from then on. What was prepared of the food is another amount now. */
export function withAmountChanged(session: Session, wanted: AmountWanted): Session {
  const then = dishWith(session, wanted);
  if (then === null) return session;
  const meal = {
    ...session.meal,
    dishes: session.meal.dishes.map((dish) => (dish.id === wanted.dish ? then : dish)),
  };
  const stale = new Set(then.steps.map(({ id }) => portionId(wanted.dish, id, wanted.ingredient)));
  return {
    ...session,
    meal,
    tasks: atPace(expandTasks(meal), session.paces),
    prepared: new Set([...session.prepared].filter((id) => !stale.has(id))),
  };
}
