import { compareHeat, spokenHeat } from "../units/temperature.ts";
import type { CookingMeal, Need } from "../recipe/model.ts";
import type { Task } from "./model.ts";
import type { Arc } from "./act.ts";
import type { Problem } from "./problem.ts";
import { withArcs } from "./problem.ts";
import { inDish, spokenLimit, spokenMinutes, titleOf } from "./say.ts";

/** A problem whose limits no longer contradict each other, and a sentence for each that was let go. */
export interface Settled {
  readonly problem: Problem;
  readonly broken: readonly string[];
}

/** Arcs that close a circle of "first this, then that", found depth first in the tasks' own order. */
function circular(problem: Problem): ReadonlySet<Arc> {
  const state = problem.acts.map((): "new" | "open" | "closed" => "new");
  const closing = new Set<Arc>();
  const visit = (index: number): void => {
    state[index] = "open";
    for (const arc of problem.after[index] ?? []) {
      if (state[arc.to] === "open") closing.add(arc);
      if (state[arc.to] === "new") visit(arc.to);
    }
    state[index] = "closed";
  };
  problem.acts.forEach((_, index) => {
    if (state[index] === "new") visit(index);
  });
  return closing;
}

/** Each act after all that it waits for; the arcs hold no circle. */
export function topological(problem: Problem): readonly number[] {
  const seen = new Set<number>();
  const ordered: number[] = [];
  const visit = (index: number): void => {
    if (seen.has(index)) return;
    seen.add(index);
    (problem.before[index] ?? []).forEach((arc) => visit(arc.from));
    ordered.push(index);
  };
  problem.acts.forEach((_, index) => visit(index));
  return ordered;
}

/** The least time from the end of `from` to the start of each act that waits for it, however indirectly. */
function leastLags(problem: Problem, order: readonly number[], from: number): readonly number[] {
  const lag = problem.acts.map(() => -Infinity);
  for (const index of order) {
    for (const arc of problem.before[index] ?? []) {
      const past =
        arc.from === from ? 0 : (lag[arc.from] ?? -Infinity) + (problem.acts[arc.from]?.length ?? 0);
      lag[index] = Math.max(lag[index] ?? -Infinity, past + arc.atLeast);
    }
  }
  return lag;
}

function circleSentence(problem: Problem, arc: Arc): string {
  const [from, to] = [problem.acts[arc.from]?.task, problem.acts[arc.to]?.task];
  if (from === undefined || to === undefined) return "";
  return `${inDish(from)} and ${titleOf(to)} each wait for the other, so I let ${titleOf(to)} go first.`;
}

function lagSentence(problem: Problem, arc: Arc, least: number): string {
  const [from, to] = [problem.acts[arc.from]?.task, problem.acts[arc.to]?.task];
  if (from === undefined || to === undefined) return "";
  const limit = spokenLimit(arc.atMost ?? 0);
  return `${inDish(to)} should follow ${titleOf(from)} ${limit}, but what comes between takes ${spokenMinutes(least)}.`;
}

/**
 * Lets go of limits that no order of work can keep: circles of predecessors, and maximum lags shorter than
 * what must happen in between. One spoken sentence for each.
 */
export function settled(problem: Problem): Settled {
  const circles = circular(problem);
  const open = withArcs(
    problem,
    problem.before.flat().filter((arc) => !circles.has(arc)),
  );
  const order = topological(open);
  const broken = [...circles].map((arc) => circleSentence(problem, arc));
  const lags = new Map<number, readonly number[]>();
  const arcs = open.before.flat().map((arc): Arc => {
    if (arc.atMost === null || problem.acts[arc.to]?.running !== null) return arc;
    const known = lags.get(arc.from) ?? leastLags(open, order, arc.from);
    lags.set(arc.from, known);
    const least = known[arc.to] ?? 0;
    if (least <= arc.atMost) return arc;
    broken.push(lagSentence(problem, arc, least));
    return { ...arc, atMost: null };
  });
  return { problem: withArcs(open, arcs), broken };
}

/**
 * Lets go of the maximum lag that a circle of limits can best do without: the longest one on it. What only contradicts
 * others together is found by the engine, as a circle of acts that each must start later than the one before.
 */
export function letGo(problem: Problem, circle: readonly number[]): { problem: Problem; sentence: string } {
  const inTurn = circle.map((from, at) => [from, circle[(at + 1) % circle.length] ?? from] as const);
  const bound = inTurn.flatMap(([from, to]) => (problem.before[from] ?? []).filter((arc) => arc.from === to));
  const limits = bound.filter((arc) => arc.atMost !== null);
  const [first, ...others] = limits;
  if (first === undefined) throw new Error(`no limit to let go of among ${circle.join(", ")}`);
  const gone = others.reduce((most, arc) => ((arc.atMost ?? 0) > (most.atMost ?? 0) ? arc : most), first);
  const arcs = problem.before.flat().map((arc) => (arc === gone ? { ...arc, atMost: null } : arc));
  return { problem: withArcs(problem, arcs), sentence: contradiction(problem, gone, limits) };
}

function contradiction(problem: Problem, gone: Arc, limits: readonly Arc[]): string {
  const [from, to] = [problem.acts[gone.from]?.task, problem.acts[gone.to]?.task];
  if (from === undefined || to === undefined) return "";
  const limit = spokenLimit(gone.atMost ?? 0);
  const others = limits.flatMap((arc) => {
    const [before, after] = [problem.acts[arc.from]?.task, problem.acts[arc.to]?.task];
    return arc === gone || before === undefined || after === undefined
      ? []
      : [`${titleOf(after)} soon after ${titleOf(before)}`];
  });
  const because =
    others.length === 0 ? "what comes between takes longer" : `not with ${others.join(" and ")}`;
  return `${inDish(to)} should follow ${titleOf(from)} ${limit}, but that cannot be: ${because}.`;
}

function lack(meal: CookingMeal, need: Need, task: Task): string | null {
  const { burners, ovens, appliances } = meal.kitchen;
  switch (need.kind) {
    case "burner":
      if (need.count <= burners) return null;
      return `${inDish(task)} needs ${need.count} burners, and this kitchen has ${burners}.`;
    case "appliance":
      return appliances.includes(need.name)
        ? null
        : `${inDish(task)} needs a ${need.name}, and this kitchen has none.`;
    case "oven": {
      if (ovens.length === 0) return `${inDish(task)} needs an oven, and this kitchen has none.`;
      const hot = ovens.filter((oven) => compareHeat(oven.hottest, need.heat.low) >= 0);
      if (hot.length === 0)
        return `${inDish(task)} needs ${spokenHeat(need.heat.low)}, hotter than this oven goes.`;
      const most = Math.max(...hot.map((oven) => oven.racks));
      return need.racks <= most
        ? null
        : `${inDish(task)} needs ${need.racks} oven racks, and there are ${most}.`;
    }
    case "bowl":
    case "fridge":
      return null;
  }
}

/** What the meal needs and the kitchen has not got, one sentence for each step. */
export function lacks(meal: CookingMeal, tasks: readonly Task[]): readonly string[] {
  const sentences = tasks.flatMap((task) => task.step.needs.flatMap((need) => lack(meal, need, task) ?? []));
  return [...new Set(sentences)];
}
