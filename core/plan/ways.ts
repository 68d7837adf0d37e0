import type { CookingMeal, Dish, Step, Way } from "../recipe/model.ts";
import { inWays } from "../recipe/in-ways.ts";
import type { WayTaken } from "../recipe/in-ways.ts";
import type { Instant } from "../units/quantity.ts";
import { inHands } from "./hands.ts";
import type { PlanInput, Planner, Progress, Task, TaskId } from "./model.ts";
import { plan } from "./plan.ts";
import { compareCosts, sheetCost } from "./sheet-cost.ts";
import type { SheetCost } from "./sheet-cost.ts";
import { expandTasks } from "./tasks.ts";
import type { Helper } from "./worker.ts";
import { betterWords, lackWords } from "./way-words.ts";

/** So many combinations are all tried; of more, the best change is taken each time, until none helps. */
const MOST_COMBINATIONS = 64;

/** What the choice depends on: a planner's input without the tasks, which differ from way to way. */
export type WaysInput = Omit<PlanInput, "tasks">;

/** A step's way, and over each other way what speaks for it as the rest of a sentence; the next best way first. */
export interface WayChoice extends WayTaken {
  readonly over: readonly { readonly way: string; readonly because: string }[];
}

/** One step that may still be done one way or another, with the ways that this kitchen can do. */
interface Fork {
  readonly dish: Dish;
  readonly step: Step;
  readonly can: readonly Way[];
  readonly cannot: readonly { readonly way: string; readonly because: string }[];
}

/** For each fork the index of a way among those that can be done. */
type Combination = readonly number[];

/** The tasks of a meal in some ways, with how long this cook takes for each. */
export type TasksOf = (meal: CookingMeal) => readonly Task[];

const waiting: Progress = { state: "waiting" };

/** Whether nothing of a step has been called, started or left out, and the cook has not said how it is done. */
function mayChange(dish: Dish, step: Step, input: WaysInput): boolean {
  if (step.ways === null || step.ways.chosen.by === "cook") return false;
  const own = expandTasks({ ...input.meal, dishes: [dish] }).filter((task) => task.step.id === step.id);
  const taken = inHands(input);
  return own.every(
    ({ id }) => (input.progress.get(id) ?? waiting).state === "waiting" && !taken.includes(id),
  );
}

function forksOf(input: WaysInput): readonly Fork[] {
  return input.meal.dishes.flatMap((dish) =>
    dish.steps.flatMap((step): readonly Fork[] => {
      if (!mayChange(dish, step, input)) return [];
      const all = (step.ways?.all ?? []).map((way) => ({ way, lack: lackWords(way, input.meal.kitchen) }));
      const can = all.flatMap(({ way, lack }) => (lack === null ? [way] : []));
      const cannot = all.flatMap(({ way, lack }) =>
        lack === null ? [] : [{ way: way.name, because: lack }],
      );
      // Where the kitchen can do none of them the recipe's own way stands, and the plan says what is missing.
      return can.length === 0 ? [] : [{ dish, step, can, cannot }];
    }),
  );
}

/** The evening's cost with each combination, each planned once. */
class Prices {
  readonly #forks: readonly Fork[];
  readonly #input: WaysInput;
  readonly #planner: Planner;
  readonly #tasksOf: TasksOf;
  readonly #known = new Map<string, SheetCost>();

  constructor(forks: readonly Fork[], input: WaysInput, planner: Planner, tasksOf: TasksOf) {
    this.#forks = forks;
    this.#input = input;
    this.#planner = planner;
    this.#tasksOf = tasksOf;
  }

  of(combination: Combination): SheetCost {
    const key = combination.join();
    const cost = this.#known.get(key) ?? this.#planned(combination);
    this.#known.set(key, cost);
    return cost;
  }

  #planned(combination: Combination): SheetCost {
    const meal = inWays(this.#input.meal, takenBy(this.#forks, combination));
    const tasks = this.#tasksOf(meal);
    const progress = new Map<TaskId, Progress>(
      tasks.map(({ id }) => [id, this.#input.progress.get(id) ?? waiting]),
    );
    const first = this.#input.first.filter((id) => progress.has(id));
    const input = { ...this.#input, meal, tasks, progress, first };
    return sheetCost(input, this.#planner(input));
  }
}

function takenBy(forks: readonly Fork[], combination: Combination): readonly WayTaken[] {
  return forks.flatMap(({ dish, step, can }, index) => {
    const way = can[combination[index] ?? 0];
    return way === undefined ? [] : [{ dish: dish.id, step: step.id, way: way.name }];
  });
}

/** All combinations, the recipe's own ways first; the last fork's ways change fastest. */
function combinations(forks: readonly Fork[]): readonly Combination[] {
  return forks.reduce<readonly Combination[]>(
    (all, { can }) => all.flatMap((start) => can.map((_, index) => [...start, index])),
    [[]],
  );
}

/** The combinations that differ in one step. */
function neighbours(forks: readonly Fork[], from: Combination): readonly Combination[] {
  return forks.flatMap(({ can }, fork) =>
    can.flatMap((_, index) => (index === from[fork] ? [] : [from.with(fork, index)])),
  );
}

/** The best of some; of equals the first, so that the recipe's own order decides. */
const bestOf = (some: readonly Combination[], from: Combination, prices: Prices): Combination =>
  some.reduce((best, one) => (compareCosts(prices.of(one), prices.of(best)) < 0 ? one : best), from);

function bestCombination(forks: readonly Fork[], prices: Prices): Combination {
  const own = forks.map(() => 0);
  const count = forks.reduce((product, { can }) => product * can.length, 1);
  if (count <= MOST_COMBINATIONS) return bestOf(combinations(forks), own, prices);
  let best: Combination = own;
  for (;;) {
    const better = bestOf(neighbours(forks, best), best, prices);
    if (better === best) return best;
    best = better;
  }
}

function reasons(
  fork: Fork,
  at: number,
  best: Combination,
  prices: Prices,
  input: WaysInput,
): WayChoice["over"] {
  const priced = fork.can.map((way, index) => ({ way, cost: prices.of(best.with(at, index)) }));
  const mine = priced[best[at] ?? 0];
  if (mine === undefined) return fork.cannot;
  const others = priced
    .filter((one) => one !== mine)
    .toSorted((a, b) => compareCosts(a.cost, b.cost))
    .map((other) => ({
      way: other.way.name,
      because: betterWords(fork.step.title, mine, other, input.serveAt !== null),
    }));
  return [...others, ...fork.cannot];
}

/**
 * Chooses how each step is done that can be done in several ways and has not begun. A combination of ways is judged by
 * the plan that the planner makes of it: hard limits missed, then lateness, then hot food waiting, then the cook's time
 * by hand, then the order in the recipe. A way that the kitchen has not the things for is out; what the cook has chosen
 * stays. Pure: the same input gives the same choices.
 * @param tasksOf the recipes' times, unless the cook's own are known
 */
export function chooseWays(
  input: WaysInput,
  planner: Planner = plan,
  tasksOf: TasksOf = expandTasks,
): readonly WayChoice[] {
  const forks = forksOf(input);
  if (forks.length === 0) return [];
  const prices = new Prices(forks, input, planner, tasksOf);
  const best = bestCombination(forks, prices);
  return takenBy(forks, best).map((taken, at) => {
    const fork = forks[at];
    return { ...taken, over: fork === undefined ? [] : reasons(fork, at, best, prices, input) };
  });
}

/** A meal that nobody has begun, in a kitchen whose ovens are cold. */
export function coldStart(
  meal: CookingMeal,
  serveAt: Instant | null,
  now: Instant,
  helping: readonly Helper[] = [],
): WaysInput {
  return {
    meal,
    progress: new Map(),
    ovens: meal.kitchen.ovens.map((oven) => ({ oven: oven.name, heat: null, setAt: null })),
    now,
    since: now,
    serveAt,
    lull: null,
    first: [],
    focus: null,
    helpers: helping.map((helper) => ({ helper, inHand: null })),
    handed: new Map(),
  };
}

/** The meal with each of its steps done in the way that suits the evening best, and the reasons with it. */
export function inBestWays(
  meal: CookingMeal,
  serveAt: Instant | null,
  now: Instant,
  tasksOf: TasksOf = expandTasks,
  helping: readonly Helper[] = [],
): CookingMeal {
  const choices = chooseWays(coldStart(meal, serveAt, now, helping), plan, tasksOf);
  return inWays(
    meal,
    choices.map(({ over, ...taken }) => ({ ...taken, chosen: { by: "plan", over } })),
  );
}
