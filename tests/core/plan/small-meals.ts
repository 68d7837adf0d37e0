import type {
  Attention,
  CookingMeal,
  Dish,
  HeatRange,
  Kitchen,
  Link,
  Need,
  Span,
  Step,
} from "../../../core/recipe/model.ts";
import { dishId, mealId, stepId } from "../../../core/recipe/model.ts";
import type { PlanInput } from "../../../core/plan/model.ts";
import { expandTasks } from "../../../core/plan/tasks.ts";
import { instant, minutes, plus } from "../../../core/units/quantity.ts";
import type { Instant } from "../../../core/units/quantity.ts";

/** A made-up evening begins here: 2026-03-01 17:00 UTC. */
export const five = instant(1_772_384_400_000);
/** So many minutes after five. */
export const at = (minutesAfter: number): Instant => plus(five, minutes(minutesAfter));
/** A range of minutes; leave out the high end for one figure. */
export const mins = (low: number, high = low): Span => ({ low: minutes(low), high: minutes(high) });
/** A range of degrees Fahrenheit; leave out the high end for one figure. */
export const heat = (low: number, high = low): HeatRange => ({
  low: { degrees: low, scale: "F" },
  high: { degrees: high, scale: "F" },
});

export const burner: Need = { kind: "burner", count: 1 };
export const oven = (low: number, high = low, racks = 1): Need => ({
  kind: "oven",
  heat: heat(low, high),
  racks,
});
export const appliance = (name: string): Need => ({ kind: "appliance", name });
export const bowl = (name: string): Need => ({ kind: "bowl", name });
export const fridge: Need = { kind: "fridge" };

/** "After that step", with lags in minutes. */
export const after = (step: string, atLeast = 0, atMost: number | null = null): Link => ({
  step: stepId(step),
  atLeast: minutes(atLeast),
  atMost: atMost === null ? null : minutes(atMost),
});

export const stirEvery = (every: number, within: number): Attention => ({
  kind: "every",
  every: minutes(every),
  within: minutes(within),
  do: "Stir it.",
});

function step(id: string, hands: "on" | "off", time: Span, more: Partial<Step>): Step {
  return {
    id: stepId(id),
    title: id.replaceAll("-", " "),
    do: `Now ${id.replaceAll("-", " ")}.`,
    uses: [],
    hands,
    time,
    until: null,
    latest: "soft",
    extend: null,
    attend: [],
    needs: [],
    after: [],
    batch: null,
    ahead: null,
    endsBeforeServing: null,
    hold: null,
    ways: null,
    ...more,
  };
}

/** A step for the cook's hands. */
export const handsOn = (id: string, time: Span, more: Partial<Step> = {}): Step => step(id, "on", time, more);
/** A step that runs by itself. */
export const handsOff = (id: string, time: Span, more: Partial<Step> = {}): Step =>
  step(id, "off", time, more);

export function dish(id: string, steps: readonly Step[]): Dish {
  return {
    id: dishId(id),
    name: id.replaceAll("-", " "),
    says: [id.replaceAll("-", " ")],
    about: "",
    cautions: [],
    yield: { servings: 4, of: "plates" },
    ingredients: [],
    steps,
  };
}

/** Two burners more than a small flat has, one oven of two racks that heats 15 F a minute, a blender. */
export const kitchen: Kitchen = {
  burners: 4,
  ovens: [{ name: "oven", racks: 2, heats: 15, cools: 5, hottest: { degrees: 500, scale: "F" } }],
  appliances: ["blender"],
};

export const meal = (dishes: readonly Dish[], where: Kitchen = kitchen): CookingMeal => ({
  id: mealId("test-supper"),
  name: "Test supper",
  dishes,
  kitchen: where,
});

/** Nothing done yet, everything cold, at five o'clock. */
export function evening(
  dishes: readonly Dish[],
  more: Partial<PlanInput> = {},
  where: Kitchen = kitchen,
): PlanInput {
  const cooking = meal(dishes, where);
  return {
    meal: cooking,
    tasks: expandTasks(cooking),
    progress: new Map(),
    ovens: [],
    now: five,
    since: more.now ?? five,
    serveAt: null,
    lull: null,
    first: [],
    focus: null,
    helpers: [],
    handed: new Map(),
    ...more,
  };
}

/** Squash, patties in two batches of the oven rack, a simmered sauce, a slaw to dress late. */
export const harvestSupper: readonly Dish[] = [
  dish("squash", [
    handsOn("halve", mins(8)),
    handsOff("roast", mins(60), { after: [after("halve")], needs: [oven(365)], hold: minutes(20) }),
  ]),
  dish("patties", [
    handsOn("grate", mins(10, 14)),
    handsOn("shape", mins(6), { after: [after("grate", 0, 15)], needs: [bowl("big bowl")] }),
    handsOff("bake", mins(20, 30), { after: [after("shape")], needs: [oven(350, 385)], hold: minutes(10) }),
  ]),
  dish("sauce", [
    handsOn("chop", mins(7)),
    handsOff("simmer", mins(10, 15), {
      after: [after("chop")],
      needs: [burner],
      attend: [stirEvery(4, 1)],
      hold: minutes(25),
    }),
    handsOn("blend", mins(3), {
      after: [after("simmer", 0, 10)],
      needs: [appliance("blender")],
      hold: minutes(25),
    }),
  ]),
  dish("slaw", [
    handsOn("shred", mins(12)),
    handsOff("chill", mins(30), { after: [after("shred")], needs: [fridge] }),
    handsOn("dress", mins(3), { after: [after("chill")], endsBeforeServing: minutes(10) }),
  ]),
];
