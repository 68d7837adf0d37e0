import { between } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import { spokenRoughly } from "../units/duration.ts";
import { spokenHeat } from "../units/temperature.ts";
import { numberWords } from "../units/number-words.ts";
import { spokenIngredient } from "../food/ingredient-words.ts";
import type { Dish, Use } from "../recipe/model.ts";
import type { Helper, Worker } from "../plan/worker.ts";
import type { Task } from "../plan/model.ts";
import type { Call } from "./calls.ts";
import type { Session } from "./session.ts";
import { capital } from "../units/capital.ts";

/** More amounts than this are offered, not read out: nobody keeps five figures in mind. */
const mostAmounts = 3;

/** A call as the caller says it, in one breath. */
export function sayCall(call: Call, session: Session, now: Instant): string {
  switch (call.kind) {
    case "ring":
      return sayRing(call, session);
    case "attend":
      return `${shortName(call.task.dish)}: ${full(call.moment.do)}`;
    case "heat":
      return `Set the ${call.oven} to ${spokenHeat(call.heat)}${forDishes(call.for)}.`;
    case "take-off":
      return `It has had its time: ${call.task.step.title}.${cueOf(call.task)}`;
    case "put-on":
    case "do":
      return call.by === "cook" ? sayStep(call.task) : sayHanded(call.task, call.by);
    case "wait":
      return sayWait(call, now);
    case "serve":
      return "Everything is ready. Serve it while it is at its best.";
    case "held":
      return `Everything is on hold. Say "go on" when you are back.`;
    case "ended":
      return "The meal is over. Well cooked.";
  }
}

/** The name of a dish that the cook uses: the first of its other names, where it has one. */
export const shortName = (dish: Dish): string =>
  capital(dish.says.find((said) => said !== dish.name) ?? dish.name);

/** A step with its dish, its batch and the amounts that go in. */
export function sayStep(task: Task): string {
  const { dish, step, batch } = task;
  const which = batch === null ? "" : ` Batch ${numberWords(batch.number)} of ${numberWords(batch.count)}.`;
  return `${shortName(dish)}: ${full(step.do)}${which}${sayUses(dish, step.uses)}`;
}

/** A step for a helper: whom it is for comes first, so that the right one listens. */
export const sayHanded = (task: Task, helper: Helper): string =>
  `${capital(helper)}, please. ${sayStep(task)}`;

function sayUses(dish: Dish, uses: readonly Use[]): string {
  if (uses.length === 0) return "";
  if (uses.length > mostAmounts)
    return ` ${capital(numberWords(uses.length))} things go in: ask "what goes in".`;
  const items = uses.map((use) => {
    const ingredient = dish.ingredients.find((one) => one.id === use.ingredient);
    return spokenIngredient(use.amount, ingredient?.item ?? use.ingredient);
  });
  return ` ${capital(listed(items))}.`;
}

function sayRing(call: Extract<Call, { readonly kind: "ring" }>, session: Session): string {
  const task = session.tasks.find((one) => one.id === call.timer.task);
  const cue = task === undefined ? "" : cueOf(task);
  return call.ring === "look"
    ? `Time for a look: ${call.timer.name}.${cue}`
    : `Time is up: ${call.timer.name}.${cue}`;
}

function cueOf(task: Task): string {
  return task.step.until === null ? "" : ` Done when ${task.step.until}.`;
}

function sayWait(call: Extract<Call, { readonly kind: "wait" }>, now: Instant): string {
  const left = between(now, call.until);
  const soon = left < 60 ? "in a moment" : `in ${spokenRoughly(left)}`;
  return call.next === null
    ? `Nothing for your hands now. The next thing is done ${soon}.`
    : `Nothing for your hands now. Next, ${soon}: ${call.next.step.title}.`;
}

/** A rest or a hold that is about to be too long. */
export function sayLatest(task: Task, latest: Instant, now: Instant): string {
  return latest <= now
    ? `${capital(task.step.title)} now: it cannot wait any longer.`
    : `${capital(task.step.title)} within ${spokenRoughly(between(now, latest))}: it cannot wait longer.`;
}

/** A step in hand that takes longer than the recipe says. */
export function sayStillAt(task: Task, by: Worker): string {
  return by === "cook"
    ? `Still at this: ${task.step.title}? Say "done" when it is.`
    : `${capital(by)}, still at this: ${task.step.title}? Say "${by} done" when it is.`;
}

function forDishes(tasks: readonly Task[]): string {
  const names = [...new Set(tasks.map((task) => shortName(task.dish).toLowerCase()))];
  return names.length === 0 ? "" : `, for the ${listed(names)}`;
}

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`;
}

const full = (text: string): string => (/[.!?]$/.test(text) ? capital(text) : `${capital(text)}.`);
