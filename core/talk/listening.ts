import { isThere } from "../cook/hands.ts";
import { ringOf } from "../cook/timer.ts";
import type { Scale } from "../units/temperature.ts";
import type { Session } from "../cook/session.ts";
import type { Task, TaskId, TaskLink } from "../plan/model.ts";
import type { CookingMeal } from "../recipe/model.ts";
import { minuteOfDay } from "./minute-of-day.ts";
import type { Kitchen } from "./model.ts";
import type { NameBook } from "./name-book.ts";
import { namesIn } from "./name-book.ts";
import type { Occasion } from "./phrase-entry.ts";
import type { Moment } from "./value-slots.ts";

/** The scale that the meal's recipes and ovens are written in; Fahrenheit where nothing says. */
export function scaleOf(meal: CookingMeal | null): Scale {
  const needs = meal?.dishes.flatMap((dish) => dish.steps.flatMap((step) => step.needs)) ?? [];
  const oven = needs.find((need) => need.kind === "oven");
  return oven?.heat.low.scale ?? meal?.kitchen.ovens[0]?.hottest.scale ?? "F";
}

/** The names on offer in an open question. */
export function candidatesIn(kitchen: Kitchen): readonly string[] {
  const { question } = kitchen.dialogue;
  return question?.kind === "which" ? question.candidates.map(({ name }) => name) : [];
}

/** Everything nameable at this moment. */
export function namesOf(kitchen: Kitchen): NameBook {
  const { household, foods, log } = kitchen;
  return namesIn(log.session, {
    pick: candidatesIn(kitchen),
    left: household?.talk.names(household.log.house) ?? [],
    listed: household?.talk.listed(household) ?? [],
    goods: household?.talk.goods(household) ?? [],
    edible: foods?.talk.names(foods.book, log.session?.meal ?? null) ?? [],
  });
}

/** What a figure may mean at this moment. */
export const momentOf = (kitchen: Kitchen): Moment => ({
  minuteNow: minuteOfDay(kitchen),
  scale: scaleOf(kitchen.log.session?.meal ?? null),
});

/** Whether a step is in hand, or one that runs by itself waits only to be started. */
function isSomethingToStart({ focus, tasks, progress }: Session): boolean {
  const stateOf = (id: TaskId): string => progress.get(id)?.state ?? "waiting";
  const isOver = ({ task }: TaskLink): boolean => ["done", "skipped"].includes(stateOf(task));
  const waits = ({ id, step, after }: Task): boolean =>
    step.hands === "off" && stateOf(id) === "waiting" && after.every(isOver);
  return focus !== null || tasks.some(waits);
}

/** Which occasions of the phrasebook are given at this moment. */
export function occasionsIn(kitchen: Kitchen): ReadonlySet<Occasion> {
  const { session } = kitchen.log;
  const { household } = kitchen;
  const { question, correctable } = kitchen.dialogue;
  const timers = session === null ? [] : [...session.timers.values()];
  const isMeal = session !== null && session.phase.state !== "ended";
  const given: readonly (readonly [Occasion, boolean])[] = [
    ["always", true],
    ["meal", isMeal],
    ["ways", isMeal && session.tasks.some(({ step }) => step.ways !== null)],
    ["to-start", session !== null && isSomethingToStart(session)],
    ["helper", isMeal && isThere(session, "helper")],
    ["second helper", isMeal && isThere(session, "second helper")],
    ["timers", timers.length > 0],
    ["ringing", timers.some((timer) => ringOf(timer, kitchen.now) !== null)],
    ["left", household?.talk.isSomethingLeft(kitchen, household.log.house) === true],
    ["foods", kitchen.foods !== null],
    ["adding", isMeal || household?.list.isOpen === true],
    ["listed", household?.talk.isListed(household) === true],
    ["shopping", household?.list.isOpen === true],
    ["question", question !== null],
    ["corrected", correctable !== null],
  ];
  return new Set(given.flatMap(([occasion, isGiven]) => (isGiven ? [occasion] : [])));
}
