import { instant, minus, plus, seconds } from "../units/quantity.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import { inWays } from "../recipe/in-ways.ts";
import type { WayTaken } from "../recipe/in-ways.ts";
import type { Attention, CookingMeal, Dish, Link, Span, Step } from "../recipe/model.ts";
import type { Moment, Progress, Task, TaskId, TaskLink } from "./model.ts";
import { taskId } from "./model.ts";

/** A step that never ends would fill the memory with stirs; nobody stirs more often than this. */
const MOST_MOMENTS = 500;

function batchSizes(step: Step): readonly number[] {
  if (step.batch === null || step.batch.holds <= 0 || step.batch.of <= step.batch.holds) return [];
  const { of, holds } = step.batch;
  const count = Math.ceil(of / holds);
  return Array.from({ length: count }, (_, index) => Math.min(holds, of - index * holds));
}

const batchCount = (step: Step): number => Math.max(1, batchSizes(step).length);

function idOf(dish: Dish, step: Step, number: number): TaskId {
  return taskId(batchSizes(step).length === 0 ? `${dish.id}/${step.id}` : `${dish.id}/${step.id}#${number}`);
}

function needs(dish: Dish, from: Step, wanted: Step, seen: Set<Step>): boolean {
  if (seen.has(from)) return false;
  seen.add(from);
  return from.after.some((link) => {
    const before = dish.steps.find((step) => step.id === link.step);
    return before !== undefined && (before === wanted || needs(dish, before, wanted, seen));
  });
}

/**
 * Side one and side two of a pan go batch by batch: where a step must follow its predecessor within a time
 * and both have the same batches, batch 2 of the one follows batch 2 of the other. Not where the follower
 * also waits, by another way, for the whole of the predecessor: that would be a cycle.
 */
function goesInStep(dish: Dish, before: Step, step: Step, link: Link): boolean {
  const [mine, theirs] = [batchSizes(step), batchSizes(before)];
  if (link.atMost === null || mine.length === 0 || mine.length !== theirs.length) return false;
  if (mine.some((pieces, index) => pieces !== theirs[index])) return false;
  return step.after.every((other) => {
    const via = dish.steps.find((one) => one.id === other.step);
    return via === undefined || via === before || !needs(dish, via, before, new Set());
  });
}

/** The last step that follows this one batch by batch (itself, if none): the next batch waits for that one. */
function lastInStep(dish: Dish, step: Step, seen: readonly Step[] = []): Step {
  const follower = dish.steps.find((one) =>
    one.after.some((link) => link.step === step.id && goesInStep(dish, step, one, link)),
  );
  return follower === undefined || seen.includes(step) ? step : lastInStep(dish, follower, [...seen, step]);
}

function linksTo(dish: Dish, step: Step, number: number): readonly TaskLink[] {
  return step.after.flatMap((link) => {
    const before = dish.steps.find((one) => one.id === link.step);
    if (before === undefined) return [];
    const paired = goesInStep(dish, before, step, link);
    return [
      {
        task: idOf(dish, before, paired ? number : batchCount(before)),
        atLeast: link.atLeast,
        // The later batches wait for the pan, so only the first can be held to "at most".
        atMost: paired || number === 1 ? link.atMost : null,
      },
    ];
  });
}

function tasksOf(dish: Dish, step: Step): readonly Task[] {
  const sizes = batchSizes(step);
  if (sizes.length === 0) {
    return [{ id: idOf(dish, step, 1), dish, step, batch: null, after: linksTo(dish, step, 1), pace: 1 }];
  }
  const last = lastInStep(dish, step);
  return sizes.map((pieces, index) => {
    const inTurn: TaskLink[] =
      index === 0 ? [] : [{ task: idOf(dish, last, index), atLeast: seconds(0), atMost: null }];
    return {
      id: idOf(dish, step, index + 1),
      dish,
      step,
      batch: { number: index + 1, count: sizes.length, pieces },
      after: [...linksTo(dish, step, index + 1), ...inTurn],
      pace: 1,
    };
  });
}

/**
 * The meal's tasks, in the order of its dishes and their steps: one per step, or one per batch of a step that
 * takes only part at a time. Batches follow one another, the last holds the remainder; whatever the step
 * waits for, each batch waits for; whatever waits for the step waits for its last batch. A maximum lag binds
 * the first batch, or, where both steps have the same batches, each batch to its own.
 * @param ways steps that are done in another way than the meal says: their batches differ, and no other task's id
 */
export function expandTasks(meal: CookingMeal, ways: readonly WayTaken[] = []): readonly Task[] {
  return inWays(meal, ways).dishes.flatMap((dish) => dish.steps.flatMap((step) => tasksOf(dish, step)));
}

function timesOf(attention: Attention, start: Instant, end: Instant): readonly Instant[] {
  switch (attention.kind) {
    case "every": {
      if (attention.every <= 0) return [];
      const count = Math.ceil((end - start) / (attention.every * 1000)) - 1;
      const most = Math.min(Math.max(0, count), MOST_MOMENTS);
      return Array.from({ length: most }, (_, index) => plus(start, seconds(attention.every * (index + 1))));
    }
    case "at":
      return plus(start, attention.after) <= end ? [plus(start, attention.after)] : [];
    case "before-end":
      return [instant(Math.max(start, minus(end, attention.before)))];
  }
}

const firstWord = (text: string): string => /[a-z]+/.exec(text.toLowerCase())?.[0] ?? "look";

/**
 * When an unattended task wants the cook, if it runs from `start` to `end`; in order of time.
 * A key names the task, what is done and the how-manieth it is ("soup/simmer@stir#3"), never a clock time,
 * so an attention once given stays given however often the evening is planned anew.
 */
export function momentsOf(task: Task, start: Instant, end: Instant): readonly Moment[] {
  const used = new Map<string, number>();
  const moments = task.step.attend.flatMap((attention) => {
    const word = firstWord(attention.do);
    const times = (used.get(word) ?? 0) + 1;
    used.set(word, times);
    const name = times === 1 ? word : `${word}-${times}`;
    return timesOf(attention, start, end).map((at, index): Moment => ({
      key: `${task.id}@${name}#${index + 1}`,
      task: task.id,
      do: attention.do,
      at,
      within: attention.within,
      kind: attention.kind,
    }));
  });
  return moments.sort((a, b) => a.at - b.at);
}

const isSameStep = (one: Task, other: Task): boolean =>
  one.dish.id === other.dish.id && one.step.id === other.step.id;

/**
 * Who takes up what a task makes. A next batch takes up the pan, not the food, so the early batches wait for those that
 * take up the last.
 */
export function takersOf(task: Task, tasks: readonly Task[]): readonly Task[] {
  const follow = (of: Task): readonly Task[] =>
    tasks.filter((other) => !isSameStep(other, of) && other.after.some((link) => link.task === of.id));
  const own = follow(task);
  if (own.length > 0 || task.batch === null) return own;
  return tasks.filter((other) => isSameStep(other, task)).flatMap(follow);
}

/**
 * How long a task is planned to take: the middle of its range. Planning with the middle and a little slack
 * before serving is on time more often than padding each step.
 */
export function plannedLength(span: { readonly low: Seconds; readonly high: Seconds }): Seconds {
  return seconds(Math.round((span.low + span.high) / 2));
}

/** From the earliest to the latest end as this cook works: the span that it runs with, or else its recipe's, at its pace. */
export function spanOf({ step, pace }: Task, progress: Progress | undefined): Span {
  const { low, high } = progress?.state === "running" ? progress.span : step.time;
  return { low: seconds(low * pace), high: seconds(high * pace) };
}
