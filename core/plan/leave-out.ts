import type { Dish } from "../recipe/model.ts";
import { between, minutes } from "../units/quantity.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import type { PlanInput, Planner, RunSheet } from "./model.ts";
import { plan } from "./plan.ts";

/** A dinner that is late by less is in time. */
const LEAST_LATE = minutes(1);
/** For less nobody would do without a dish, where dinner is late all the same. */
const LEAST_GAIN = minutes(2);
/** Two are left out only among so many dishes, those that bring the most alone: at most 28 plans. */
const MOST_IN_PAIRS = 8;

/** What it would bring to leave dishes out. Whether one may be spared is the cook's to say. */
export interface LeftOut {
  /** One, or two where no one is enough; in the meal's order. */
  readonly dishes: readonly Dish[];
  /** When everything else can be on the table. */
  readonly readyAt: Instant;
  /** How much later than asked that is. */
  readonly late: Seconds;
}

/** Whether dinner is so much later than asked that it is worth a word. */
export const isLate = ({ late }: Pick<RunSheet, "late">): boolean => late >= LEAST_LATE;

/** Whether something of a dish is still to do and nothing of it has begun. What was only called has not. */
function isUntouched(dish: Dish, { tasks, progress }: PlanInput): boolean {
  const own = tasks.filter((task) => task.dish.id === dish.id);
  const states = own.map(({ id }) => progress.get(id)?.state ?? "waiting");
  return states.includes("waiting") && !states.includes("running") && !states.includes("done");
}

/** The same evening without some of its dishes. The tasks of one dish never wait for those of another. */
function without(dishes: readonly Dish[], input: PlanInput): PlanInput {
  const isKept = (dish: Dish): boolean => dishes.every(({ id }) => id !== dish.id);
  const tasks = input.tasks.filter(({ dish }) => isKept(dish));
  const left = new Set(tasks.map(({ id }) => id));
  return {
    ...input,
    meal: { ...input.meal, dishes: input.meal.dishes.filter(isKept) },
    tasks,
    progress: new Map([...input.progress].filter(([id]) => left.has(id))),
    first: input.first.filter((id) => left.has(id)),
    focus: input.focus !== null && left.has(input.focus) ? input.focus : null,
    helpers: input.helpers.map(({ helper, inHand }) => ({
      helper,
      inHand: inHand !== null && left.has(inHand.task) ? inHand : null,
    })),
  };
}

function tried(dishes: readonly Dish[], input: PlanInput, planner: Planner): LeftOut {
  const { readyAt, late } = planner(without(dishes, input));
  return { dishes, readyAt, late };
}

/** The soonest dinner first; of equals the dish that the meal names first. */
const soonestFirst = (some: readonly LeftOut[]): readonly LeftOut[] =>
  some.toSorted((a, b) => a.readyAt - b.readyAt);

/** Every dish that may be left out, also where that brings nothing. Something must be left to eat. */
function eachOut(input: PlanInput, planner: Planner): readonly LeftOut[] {
  const { dishes } = input.meal;
  if (dishes.length < 2) return [];
  return soonestFirst(
    dishes.filter((dish) => isUntouched(dish, input)).map((dish) => tried([dish], input, planner)),
  );
}

const worthAWord = (some: readonly LeftOut[], than: Instant): readonly LeftOut[] =>
  some.filter((out) => !isLate(out) || between(out.readyAt, than) >= LEAST_GAIN);

function pairsOf(ones: readonly LeftOut[], { meal }: PlanInput): readonly (readonly Dish[])[] {
  if (meal.dishes.length < 3) return [];
  const some = ones.slice(0, MOST_IN_PAIRS).flatMap(({ dishes }) => dishes);
  const inOrder = meal.dishes.filter((dish) => some.some(({ id }) => id === dish.id));
  return inOrder.flatMap((one, at) => inOrder.slice(at + 1).map((other) => [one, other]));
}

/**
 * Where dinner is late: each dish that makes it sooner, left out alone, the soonest first; one plan for each dish of
 * which nothing has begun. Empty where dinner is in time, or where no one dish brings two minutes.
 * @param sheet what the planner made of `input`
 */
export function withoutOne(input: PlanInput, sheet: RunSheet, planner: Planner = plan): readonly LeftOut[] {
  return isLate(sheet) ? worthAWord(eachOut(input, planner), sheet.readyAt) : [];
}

/**
 * The same, and where no one dish is enough the best two of them as well, where two bring more than one. At most one
 * plan for each dish and 28 for pairs. Pure: the same input gives the same answer.
 */
export function whatToLeaveOut(
  input: PlanInput,
  sheet: RunSheet,
  planner: Planner = plan,
): readonly LeftOut[] {
  if (!isLate(sheet)) return [];
  const ones = eachOut(input, planner);
  const [best] = ones;
  if (best === undefined || !isLate(best)) return worthAWord(ones, sheet.readyAt);
  const pairs = soonestFirst(pairsOf(ones, input).map((dishes) => tried(dishes, input, planner)));
  const than = best.readyAt < sheet.readyAt ? best.readyAt : sheet.readyAt;
  return [...worthAWord(pairs, than).slice(0, 1), ...worthAWord(ones, sheet.readyAt)];
}
