import { callsNow } from "../cook/calls-now.ts";
import type { Call } from "../cook/calls.ts";
import { listed, sayCall, shortName } from "../cook/say-call.ts";
import type { Timer } from "../cook/session.ts";
import { timeLeft } from "../cook/timer.ts";
import type { Dish } from "../recipe/model.ts";
import { spokenClock } from "../units/clock-words.ts";
import { spokenRoughly } from "../units/duration.ts";
import { between, seconds } from "../units/quantity.ts";
import type { Instant } from "../units/quantity.ts";
import { minuteOfDay } from "./minute-of-day.ts";
import type { Kitchen, Question } from "./model.ts";
import type { Outcome, Scene } from "./outcome.ts";
import { told } from "./outcome.ts";
import { capital } from "../units/capital.ts";

/** One breath: more words than this are offered in parts. */
export const breathWords = 25;

/** How many words a text has when spoken; a hyphen does not part a number. */
export const countWords = (text: string): number => text.split(/\s+/).filter((word) => word !== "").length;

/** The first sentence, and as many of the others in turn as one breath holds. */
export function inBreath(sentences: readonly string[]): string {
  return sentences.reduce((said, sentence) => {
    const both = `${said} ${sentence}`.trim();
    return said === "" || countWords(both) <= breathWords ? both : said;
  }, "");
}

/**
 * That dinner is late in a scene, and without which dish it would not be, where there is breath for that and the page
 * has fetched the reasons of the plan.
 * @param late how late, in a sentence
 */
export function lateWords(late: string, { session, sheet }: Scene, kitchen: Kitchen): string {
  const then = { ...kitchen, log: { ...kitchen.log, session }, sheet };
  const words = breathWords - countWords(late);
  return `${late} ${kitchen.explain?.({ type: "WhatToLeaveOut", words }, then, "wanted").say ?? ""}`.trim();
}

/** A dish among others to choose from: "stew". */
export const oneDish = (dish: Dish): string => shortName(dish).toLowerCase();

/** A dish's name in mid-sentence: "the stew". */
export const theDish = (dish: Dish): string => `the ${oneDish(dish)}`;

/** A moment by the kitchen's clock: "six thirty-four". */
export const clockAt = (at: Instant, kitchen: Pick<Kitchen, "utcOffsetMinutes">): string =>
  spokenClock(minuteOfDay({ now: at, utcOffsetMinutes: kitchen.utcOffsetMinutes }));

/** How far off a moment is: "now", "in twelve minutes". */
export function inTime(at: Instant, kitchen: Kitchen): string {
  const away = between(kitchen.now, at);
  return away < 15 ? "now" : `in ${spokenRoughly(away)}`;
}

/** The most pressing call. */
export const firstCall = (scene: Scene, kitchen: Kitchen): Call | null =>
  callsNow(scene.session, scene.sheet, kitchen.now)[0] ?? null;

/** The most pressing call as it is said. */
export function sayNow(scene: Scene, kitchen: Kitchen): string {
  const call = firstCall(scene, kitchen);
  return call === null ? "" : sayCall(call, scene.session, kitchen.now);
}

/** How long a timer has: "about four minutes left", "paused with four minutes left", "rang forty seconds ago". */
export function sayTimeLeft(timer: Timer, kitchen: Kitchen): string {
  const left = timeLeft(timer, kitchen.now);
  if (timer.run.state === "stopped" || left === null) return "stopped";
  if (timer.run.state === "paused") return `paused with ${spokenRoughly(left)} left`;
  if (left <= 0) return left > -5 ? "up now" : `rang ${spokenRoughly(seconds(Math.abs(left)))} ago`;
  const look = between(kitchen.now, timer.run.lookAt);
  const isRange = timer.run.endsAt - timer.run.lookAt >= 1000;
  if (!isRange || timer.run.answered !== "none") return `${spokenRoughly(left)} left`;
  return look > 0
    ? `a look in ${spokenRoughly(look)}, ${spokenRoughly(left)} at most`
    : `ready for a look, ${spokenRoughly(left)} at most`;
}

/**
 * A list in parts of one breath each: the first is said, the others are offered ("More?").
 * @param lead what comes before the first item ("Three timers:"), or ""
 */
export function inParts(lead: string, items: readonly string[]): Outcome {
  const parts: string[] = [];
  let current: string[] = [];
  // Items with commas of their own are kept apart by more than another comma.
  const join = (part: readonly string[]): string =>
    items.some((item) => item.includes(",")) ? part.join("; ") : listed(part);
  const text = (part: readonly string[]): string =>
    parts.length === 0 && lead !== "" ? `${lead} ${join(part)}.` : `${capital(join(part))}.`;
  for (const item of items) {
    // Two words are kept free for "More?" and for the "and" before the last.
    if (current.length > 0 && countWords(text([...current, item])) > breathWords - 2) {
      parts.push(text(current));
      current = [];
    }
    current.push(item);
  }
  if (current.length > 0) parts.push(text(current));
  return sayParts(parts);
}

/** The sentences of a text, each by itself. */
export const sentencesOf = (text: string): readonly string[] => text.split(/(?<=[.?!]) (?=[A-Z])/);

/** Sentences in parts of one breath each: the first is said, the others are offered. */
export function inBreaths(sentences: readonly string[]): Outcome {
  const parts: string[] = [];
  for (const sentence of sentences) {
    const last = parts.at(-1);
    const both = `${last ?? ""} ${sentence}`;
    if (last !== undefined && countWords(both) <= breathWords - 1) parts[parts.length - 1] = both;
    else parts.push(sentence);
  }
  return sayParts(parts);
}

const MORE = "More?";

/** Says the first part and keeps the others for "more". */
export function sayParts(parts: readonly string[]): Outcome {
  const [first, ...rest] = parts;
  if (first === undefined) return told("Nothing.");
  if (rest.length === 0) return told(first);
  const question: Question = { kind: "more", rest, prompt: MORE };
  return { ...told(`${first} ${MORE}`), question };
}
