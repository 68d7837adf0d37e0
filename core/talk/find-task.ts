import { callsNow } from "../cook/calls-now.ts";
import { isReady } from "../cook/ready.ts";
import type { Task } from "../plan/model.ts";
import type { Found } from "./find.ts";
import { found, isWithin, wordsIn } from "./find.ts";
import type { Mention } from "./intent.ts";
import type { Kitchen } from "./model.ts";
import { dishNames, doing, titleNames } from "./names.ts";
import type { Scene } from "./outcome.ts";
import { theDish } from "./speech.ts";
import { nameWords } from "./utterance.ts";

/** What the step is wanted for: the same words mean another step when something is done than when it begins. */
export type Purpose = "finish" | "start" | "choose" | "reopen" | "ask";

const stateOf = (task: Task, { session }: Scene) => session.progress.get(task.id)?.state ?? "waiting";

/** Whether a step is neither done nor skipped. */
export const isOpen = (task: Task, scene: Scene): boolean => {
  const state = stateOf(task, scene);
  return state === "waiting" || state === "running";
};

/** The tasks that the words may mean, the closest sort of match only. */
function hits(mention: Mention, scene: Scene): readonly Task[] {
  const { tasks } = scene.session;
  if (mention.by === "task") return tasks.filter((task) => task.id === mention.task);
  const said = wordsIn(mention);
  if (mention.by === "dish") return tasks.filter((task) => task.dish.id === mention.dish);
  if (said === "") return [];
  const { meal } = scene.session;
  const named = meal.dishes.filter((dish) => dishNames(dish, meal).includes(said));
  const ofDish = tasks.filter((task) => named.some(({ id }) => id === task.dish.id));
  const byTitle = tasks.filter(({ step }) =>
    [nameWords(step.title).join(" "), doing(step.title)].includes(said),
  );
  if (byTitle.length > 0) return byTitle;
  const about = tasks.filter(({ step }) => titleNames(step.title).includes(said));
  const both = tasks.filter((task) => about.includes(task) || ofDish.includes(task));
  if (both.length > 0) return both;
  const within = tasks.filter(({ step }) => isWithin(said, step.title));
  return within.length > 0 ? within : tasks.filter(({ dish }) => isWithin(said, dish.name));
}

/** The step that is meant; several where they belong to different dishes and nothing in the moment decides. */
export function findTask(mention: Mention, scene: Scene, kitchen: Kitchen, purpose: Purpose): Found<Task> {
  const all = hits(mention, scene);
  const past = purpose === "reopen" ? lastOver(all, scene) : [];
  if (past.length > 0) return found(onePerDish(past), wordsIn(mention));
  const open = all.filter((task) => isOpen(task, scene));
  const inOrder = bySheet(open.length > 0 ? open : all.slice(-1), scene);
  const best = preferred(inOrder, scene, kitchen, purpose);
  return found(onePerDish(best), wordsIn(mention));
}

const onePerDish = (tasks: readonly Task[]): readonly Task[] =>
  tasks.filter((task, at) => tasks.findIndex((other) => other.dish.id === task.dish.id) === at);

/** The tasks that are done or left out, the latest first. */
export function lastOver(tasks: readonly Task[], { session }: Scene): readonly Task[] {
  return tasks
    .flatMap((task) => {
      const progress = session.progress.get(task.id);
      return progress?.state === "done" || progress?.state === "skipped" ? [{ task, at: progress.at }] : [];
    })
    .toSorted((a, b) => b.at - a.at)
    .map(({ task }) => task);
}

/** The tasks that fit the purpose best; all of them where none fits better. */
function preferred(
  tasks: readonly Task[],
  scene: Scene,
  kitchen: Kitchen,
  purpose: Purpose,
): readonly Task[] {
  const { session } = scene;
  const isRunning = (task: Task): boolean => stateOf(task, scene) === "running";
  const isFocus = (task: Task): boolean => session.focus?.task === task.id;
  const mayStart = (task: Task): boolean => isReady(session, task, kitchen.now);
  const tests: Readonly<Record<Purpose, readonly ((task: Task) => boolean)[]>> = {
    finish: [isCalled, (task) => isRunning(task) || isFocus(task), mayStart],
    start: [
      isFocus,
      isCalled,
      (task) => task.step.hands === "off" && !isRunning(task) && mayStart(task),
      mayStart,
    ],
    reopen: [isFocus, isRunning, mayStart],
    choose: [isFocus, (task) => !isRunning(task) && mayStart(task), (task) => !isRunning(task)],
    ask: [isFocus, isCalled, isRunning, mayStart],
  };
  const called = callsNow(session, scene.sheet, kitchen.now).flatMap((call) =>
    call.kind === "ring" ? (call.timer.task ?? []) : "task" in call ? call.task.id : [],
  );
  function isCalled(task: Task): boolean {
    return called.includes(task.id);
  }
  const test = tests[purpose].find((one) => tasks.some(one));
  return test === undefined ? tasks : tasks.filter(test);
}

/** Tasks in the order of the run sheet; what it does not hold comes last. */
export function bySheet(tasks: readonly Task[], { sheet }: Scene): readonly Task[] {
  const order = new Map(sheet.entries.map(({ task }, at) => [task, at]));
  return tasks.toSorted((a, b) => (order.get(a.id) ?? Infinity) - (order.get(b.id) ?? Infinity) || 0);
}

/** A step's name among others: its title, with its dish where another dish has a step of the same name. */
export function taskName(task: Task, among: readonly Task[]): string {
  const isShared = among.some(
    (other) => other.dish.id !== task.dish.id && other.step.title === task.step.title,
  );
  return isShared ? `${task.step.title} for ${theDish(task.dish)}` : task.step.title;
}

/** The step before the cook: the one in focus, or what the most pressing call is about; null when there is none. */
export function currentTask(scene: Scene, kitchen: Kitchen): Task | null {
  const { session, sheet } = scene;
  const focus = session.tasks.find((task) => task.id === session.focus?.task);
  if (focus !== undefined) return focus;
  for (const call of callsNow(session, sheet, kitchen.now)) {
    if (call.kind === "ring") {
      const task = session.tasks.find((one) => one.id === call.timer.task);
      if (task !== undefined) return task;
    } else if ("task" in call) {
      return call.task;
    }
  }
  return null;
}
