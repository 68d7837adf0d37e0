import type { CookingMeal, Dish } from "../recipe/model.ts";
import { earlier, hours, instant, later, minutes, plus, seconds } from "../units/quantity.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import { formatHeat } from "../units/temperature.ts";
import type { Entry, OvenMove, RunSheet, Task, TaskId } from "./model.ts";

/** A run sheet with the meal that it is for. */
export interface PlannedEvening {
  readonly meal: CookingMeal;
  /** The meal's tasks, as the sheet was made from them. */
  readonly tasks: readonly Task[];
  readonly sheet: RunSheet;
  /** When the cook wants to eat; null: as soon as it is ready. */
  readonly serveAt: Instant | null;
}

/** One moment of the evening that is worth a place in a calendar. */
export interface BigMoment {
  /** What it is, the same whenever the evening is planned anew: "serve", "step.soup/simmer". */
  readonly key: string;
  readonly from: Instant;
  /** Later than `from`. */
  readonly to: Instant;
  readonly title: string;
  /** What more there is to say, a line each. */
  readonly about: readonly string[];
  /** How long before `from` the cook is reminded. */
  readonly remind: Seconds;
  /** Whether the cook can do nothing else meanwhile. */
  readonly isBusy: boolean;
}

/** What runs by itself for so long lets the cook leave the stove, or forget it. */
const longUnattended = minutes(20);
const meal = minutes(30);
/** Food that spoils is in the fridge by then: common practice, as in recipes/README.md. */
const leftoversWithin = hours(2);
const shortest = seconds(60);

const atOnce = seconds(0);

/** The first act of the evening: a step, or the turn of an oven. */
export function beginningOf({ entries, ovenMoves, readyAt }: RunSheet): Instant {
  const starts = [...entries.map(({ start }) => start), ...ovenMoves.map(({ at }) => at)];
  return starts.reduce((first, at) => earlier(first, at), starts[0] ?? readyAt);
}

/** When the meal is eaten: as asked, or when it is ready if that is later. */
const servedAt = ({ sheet, serveAt }: PlannedEvening): Instant =>
  later(sheet.readyAt, serveAt ?? sheet.readyAt);

function cooking(evening: PlannedEvening): BigMoment {
  const from = beginningOf(evening.sheet);
  return {
    key: "cook",
    from,
    to: later(evening.sheet.readyAt, plus(from, shortest)),
    title: `Cook: ${evening.meal.name}`,
    about: [...evening.meal.dishes.map(({ name }) => name), ...evening.sheet.broken],
    remind: minutes(15),
    isBusy: true,
  };
}

function turn(
  { oven, heat, at, readyAt, for: tasks }: OvenMove,
  known: ReadonlyMap<TaskId, Task>,
): BigMoment {
  const bakes = tasks
    .flatMap((id) => known.get(id) ?? [])
    .map(({ dish, step }) => `${dish.name}: ${step.title}`);
  return {
    key: `oven.${oven}.${tasks[0] ?? formatHeat(heat)}`,
    from: at,
    to: later(readyAt, plus(at, shortest)),
    title: `Turn the ${oven} to ${formatHeat(heat)}`,
    about: [...new Set(bakes)],
    remind: atOnce,
    isBusy: false,
  };
}

function stepMoment(entry: Entry, task: Task, remind: Seconds): BigMoment {
  return {
    key: `step.${task.id}`,
    from: entry.start,
    to: later(entry.end, plus(entry.start, shortest)),
    title: `${task.dish.name}: ${task.step.title}`,
    about: [task.step.do, ...(task.step.until === null ? [] : [`Done when ${task.step.until}.`])],
    remind,
    isBusy: false,
  };
}

/** The first hands-on step of each dish, and every unattended step that is long. */
function steps({ sheet }: PlannedEvening, known: ReadonlyMap<TaskId, Task>): readonly BigMoment[] {
  const begun = new Set<Dish>();
  return sheet.entries.flatMap((entry): readonly BigMoment[] => {
    const task = known.get(entry.task);
    if (task === undefined) return [];
    const { dish, step } = task;
    if (step.hands === "off") {
      const isLong = entry.end - entry.start >= longUnattended * 1000;
      return isLong ? [stepMoment(entry, task, atOnce)] : [];
    }
    if (begun.has(dish)) return [];
    begun.add(dish);
    const moment = stepMoment(entry, task, atOnce);
    return [{ ...moment, about: [...moment.about, ...dish.cautions] }];
  });
}

function table(evening: PlannedEvening): readonly BigMoment[] {
  const from = servedAt(evening);
  const stored = plus(from, leftoversWithin);
  const { name } = evening.meal;
  const serve: BigMoment = {
    key: "serve",
    from,
    to: plus(from, meal),
    title: `Serve: ${name}`,
    about: ["Everything is ready. Serve it while it is at its best."],
    remind: minutes(10),
    isBusy: true,
  };
  const store: BigMoment = {
    key: "store",
    from: instant(stored - meal * 1000),
    to: stored,
    title: `Store what is left of ${name}`,
    about: ["Into the fridge within two hours of serving. Follow the food safety rules of where you live."],
    remind: atOnce,
    isBusy: false,
  };
  return [serve, store];
}

/** The moments of an evening that belong in a calendar, in order of time; what began together, the longest first. */
export function bigMoments(evening: PlannedEvening): readonly BigMoment[] {
  const known = new Map(evening.tasks.map((task) => [task.id, task]));
  const moments = [
    cooking(evening),
    ...evening.sheet.ovenMoves.map((move) => turn(move, known)),
    ...steps(evening, known),
    ...table(evening),
  ];
  return moments.sort((a, b) => a.from - b.from || b.to - a.to);
}
