import { stringify } from "yaml";
import type { Attention, Dish, Link, Need, Step, Way } from "../../../core/recipe/model.ts";
import { formatAmount } from "../../../core/units/amount.ts";
import { formatDuration, span } from "../../../core/units/duration.ts";
import type { Seconds } from "../../../core/units/quantity.ts";

const length = (of: Seconds): string => formatDuration(span(of));

function lag({ atLeast, atMost }: Link): string {
  if (atMost === null) return atLeast === 0 ? "any time" : `at least ${length(atLeast)}`;
  if (atMost === 0) return "at once";
  return atLeast === 0
    ? `at most ${length(atMost)}`
    : `at least ${length(atLeast)} and at most ${length(atMost)}`;
}

function when(moment: Attention): string {
  const slip = `, within ${length(moment.within)}`;
  switch (moment.kind) {
    case "every":
      return `every ${length(moment.every)}${slip}`;
    case "at":
      return `after ${length(moment.after)}${slip}`;
    case "before-end":
      return `${length(moment.before)} before the end${slip}`;
  }
}

function needs(all: readonly Need[]): Readonly<Record<string, unknown>> {
  const named = (kind: "appliance" | "bowl"): readonly string[] =>
    all.flatMap((need) => (need.kind === kind ? [need.name] : []));
  return Object.fromEntries(
    all.map((need): [string, unknown] => {
      switch (need.kind) {
        case "burner":
          return ["burner", need.count];
        case "oven": {
          const { low, high } = need.heat;
          return ["oven", `${low.degrees}-${high.degrees} ${low.scale} on ${need.racks} racks`];
        }
        case "appliance":
        case "bowl":
          return [need.kind, named(need.kind)];
        case "fridge":
          return ["fridge", true];
      }
    }),
  );
}

/** What a step and each of its other ways have alike. */
function work(of: Omit<Way, "name">): Readonly<Record<string, unknown>> {
  return {
    do: of.do,
    hands: of.hands,
    time: formatDuration(of.time),
    ...(of.extend === null
      ? {}
      : { extend: `${formatDuration(of.extend.by)}, at most ${length(of.extend.atMost)}` }),
    ...(of.attend.length === 0
      ? {}
      : { attend: Object.fromEntries(of.attend.map((moment) => [when(moment), moment.do])) }),
    ...(of.needs.length === 0 ? {} : { needs: needs(of.needs) }),
    ...(of.batch === null ? {} : { batch: `${of.batch.of} ${of.batch.pieces}, ${of.batch.holds} at a time` }),
  };
}

function waysOf({ ways }: Step): Readonly<Record<string, unknown>> {
  if (ways === null) return {};
  const others = ways.all.filter(({ name }) => name !== ways.taken);
  return { way: ways.taken, or: Object.fromEntries(others.map((way) => [way.name, work(way)])) };
}

function step(of: Step): Readonly<Record<string, unknown>> {
  return {
    title: of.title,
    ...work(of),
    ...waysOf(of),
    ...(of.uses.length === 0
      ? {}
      : { with: Object.fromEntries(of.uses.map((use) => [use.ingredient, formatAmount(use.amount)])) }),
    ...(of.until === null ? {} : { until: of.until }),
    latest: of.latest,
    after:
      of.after.length === 0 ? "nothing" : Object.fromEntries(of.after.map((link) => [link.step, lag(link)])),
    ...(of.ahead === null ? {} : { ahead: length(of.ahead) }),
    ...(of.endsBeforeServing === null ? {} : { "serve-within": length(of.endsBeforeServing) }),
    ...(of.hold === null ? {} : { hold: length(of.hold) }),
  };
}

function ingredient(of: Dish["ingredients"][number]): Readonly<Record<string, unknown>> {
  return {
    item: of.item,
    amount: formatAmount(of.amount),
    ...(of.preparation === null ? {} : { prep: of.preparation }),
    ...(of.food === null ? {} : { food: of.food }),
    ...(of.weighs === null ? {} : { weighs: formatAmount(of.weighs) }),
    optional: of.optional,
    swaps: of.swaps.map((swap) => ({
      use: swap.use,
      ...(swap.amount === null ? {} : { amount: formatAmount(swap.amount) }),
      ...(swap.effect === null ? {} : { effect: swap.effect }),
      changes: Object.fromEntries(
        swap.changes.map((change) => [change.ingredient, formatAmount(change.amount)]),
      ),
    })),
  };
}

/** A dish as the longest way of writing it in our format: nothing left to what the reader supplies. */
export function writeDish(dish: Dish): string {
  return stringify({
    dish: dish.name,
    says: dish.says,
    about: dish.about,
    yield: `${dish.yield.servings} ${dish.yield.of}`,
    cautions: dish.cautions,
    ingredients: Object.fromEntries(dish.ingredients.map((one) => [one.id, ingredient(one)])),
    steps: Object.fromEntries(dish.steps.map((one) => [one.id, step(one)])),
  });
}
