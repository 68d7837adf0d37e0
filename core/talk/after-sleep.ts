import { callsNow } from "../cook/calls-now.ts";
import type { Call } from "../cook/calls.ts";
import { listed } from "../cook/say-call.ts";
import type { Session } from "../cook/session.ts";
import type { RunSheet, Task } from "../plan/model.ts";
import { spokenRoughly } from "../units/duration.ts";
import { numberWords } from "../units/number-words.ts";
import { between, hours, later, minutes, plus } from "../units/quantity.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import { capital } from "../units/capital.ts";
import { clockAt, theDish } from "./speech.ts";
import type { Kitchen } from "./model.ts";

/** More than this is counted, not named. */
const mostNamed = 3;
/** A shorter sleep in which nothing was missed is not worth a word. */
const worthTelling = minutes(10);
/**
 * Nothing that spoils is to stand warm for longer. Source: the two-hour rule of the USDA's Food Safety and Inspection
 * Service (40 F to 140 F), from memory.
 */
const mayStand = hours(2);

/**
 * What the cook is told when the device has slept in mid-meal: what came up meanwhile and is still open, what may have
 * stood too long, what runs on, and when dinner is now. null where there is nothing to tell.
 */
export function sayAfterSleep(
  asleep: Seconds,
  session: Session,
  sheet: RunSheet,
  kitchen: Pick<Kitchen, "now" | "utcOffsetMinutes">,
): string | null {
  if (session.phase.state === "ended") return null;
  const { now } = kitchen;
  const missed = missedCalls(callsNow(session, sheet, now)).flatMap((call) => missedWords(call, now));
  const stood = [...new Set(standing(session, now).map(({ dish }) => theDish(dish)))];
  if (missed.length + stood.length === 0 && asleep < worthTelling) return null;
  const table = session.serveAt === null ? sheet.readyAt : later(session.serveAt, sheet.readyAt);
  return [
    `I was asleep for ${spokenRoughly(asleep)}.`,
    ...(missed.length === 0 ? [] : [`${capital(listed(named(missed)))}.`]),
    ...(stood.length === 0 ? [] : [caution(stood)]),
    ...goingOn(session, now),
    `Dinner is at ${clockAt(table, kitchen)}.`,
  ].join(" ");
}

/** Without what a step that has had its time wanted before. */
function missedCalls(calls: readonly Call[]): readonly Call[] {
  const rung = new Set(calls.flatMap((call) => (call.kind === "ring" ? [call.timer.task] : [])));
  return calls.filter((call) => call.kind !== "attend" || !rung.has(call.task.id));
}

const ago = (since: Instant, now: Instant): string => `${spokenRoughly(between(since, now))} ago`;

function missedWords(call: Call, now: Instant): readonly string[] {
  switch (call.kind) {
    case "ring":
      return [`${call.timer.name} rang ${ago(call.since, now)}`];
    case "attend":
      return [`${call.moment.do} was due ${ago(call.moment.at, now)}`];
    case "take-off":
      return [`${call.task.step.title} was over ${ago(call.since, now)}`];
    case "heat":
    case "put-on":
    case "do":
    case "wait":
    case "serve":
    case "held":
    case "ended":
      return [];
  }
}

const named = (items: readonly string[]): readonly string[] =>
  items.length <= mostNamed
    ? items
    : [...items.slice(0, mostNamed), `${numberWords(items.length - mostNamed)} more came up`];

/** We do not know what was in the fridge, so it is the cook who judges: common practice, no source. */
function caution(dishes: readonly string[]): string {
  const what = dishes.length <= mostNamed ? listed(dishes) : "some of the food";
  return `${capital(what)} may have stood warm for over two hours: you judge, and when in doubt, throw it out.`;
}

function goingOn(session: Session, now: Instant): readonly string[] {
  const titles = session.tasks.flatMap(({ id, step }) => {
    const progress = session.progress.get(id);
    const runs = progress?.state === "running" && step.hands === "off";
    return runs && plus(progress.startedAt, progress.span.low) > now ? [step.title] : [];
  });
  const ovens = session.ovens.filter(({ heat }) => heat !== null).map(({ oven }) => `the ${oven}`);
  const running = named(titles);
  return [
    ...(running.length === 0 ? [] : [`Still going: ${listed(running)}.`]),
    ...(ovens.length === 0 ? [] : [`${capital(listed(ovens))} ${ovens.length === 1 ? "is" : "are"} on.`]),
  ];
}

/** What came of these steps may have stood out for too long: nobody has told that it went on, or into the fridge. */
const standing = (session: Session, now: Instant): readonly Task[] =>
  session.tasks.filter((task) => {
    const since = standsSince(task, session);
    return since !== null && between(since, now) > mayStand;
  });

function standsSince(task: Task, session: Session): Instant | null {
  const progress = session.progress.get(task.id);
  if (progress?.state === "done") return isTakenUp(task, session) ? null : progress.at;
  if (progress?.state !== "running" || task.step.needs.some(({ kind }) => kind === "fridge")) return null;
  const { startedAt, span } = progress;
  return task.step.hands === "on" ? startedAt : plus(startedAt, span.high);
}

/** Whether each step that it was for is done or goes on by itself; what is for no other step waits for the table. */
function isTakenUp({ id }: Task, { tasks, progress }: Session): boolean {
  const followers = tasks.filter(({ after }) => after.some((link) => link.task === id));
  const hasIt = ({ id: next, step }: Task): boolean => {
    const state = progress.get(next)?.state;
    return state === "done" || (state === "running" && step.hands === "off");
  };
  return followers.length > 0 && followers.every(hasIt);
}
