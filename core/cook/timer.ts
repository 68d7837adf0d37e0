import { addSeconds, between, earlier, instant, later, minus, plus, seconds } from "../units/quantity.ts";
import type { Instant, Seconds } from "../units/quantity.ts";
import type { Span } from "../recipe/model.ts";
import type { Timer, TimerRun } from "./session.ts";

/** The longest timer: two days covers every soak and chill. */
export const longestTimer = seconds(48 * 3600);
/** More than a cook can name. */
export const mostTimers = 40;
/** An unanswered ring comes again, a little louder, this often. */
export const ringEvery = seconds(20);

/** A ring that goes on now. `round` counts its repeats from 0. */
export interface Ring {
  readonly ring: "look" | "end";
  readonly since: Instant;
  readonly round: number;
}

type Running = Extract<TimerRun, { readonly state: "running" }>;

/** A timer that starts at `at` and rings after `span.low` for a look and after `span.high` for good. */
export function runFrom(at: Instant, span: Span): Running {
  return {
    state: "running",
    startedAt: at,
    lookAt: plus(at, span.low),
    endsAt: plus(at, span.high),
    answered: "none",
  };
}

/** What rings now, read off the clock: nothing needs to fire for it, so nothing can be missed. */
export function ringOf(timer: Timer, now: Instant): Ring | null {
  if (timer.run.state !== "running") return null;
  const { lookAt, endsAt, answered } = timer.run;
  if (now >= endsAt) return answered === "end" ? null : ringSince("end", endsAt, now);
  if (now >= lookAt && answered === "none") return ringSince("look", lookAt, now);
  return null;
}

function ringSince(ring: Ring["ring"], since: Instant, now: Instant): Ring {
  return { ring, since, round: Math.floor(between(since, now) / ringEvery) };
}

/** When this timer next starts to ring after `now`; null when nothing is to come. */
export function nextRingAt(timer: Timer, now: Instant): Instant | null {
  if (timer.run.state !== "running") return null;
  const { lookAt, endsAt, answered } = timer.run;
  if (lookAt > now && answered === "none") return lookAt;
  return endsAt > now ? endsAt : null;
}

/** What is left until the late end; negative once it has passed, null when stopped. */
export function timeLeft(timer: Timer, now: Instant): Seconds | null {
  switch (timer.run.state) {
    case "running":
      return between(now, timer.run.endsAt);
    case "paused":
      return timer.run.left;
    case "stopped":
      return null;
  }
}

/**
 * More time. Before the first ring both ends move; after it, the cook wants to look again
 * in `by`, and the late end moves only if it must. Never beyond `ceiling` for the late end
 * when the early one still fits: the extra look matters more than the spare minutes.
 */
export function lengthened(run: TimerRun, by: Seconds, ceiling: Seconds | null, at: Instant): TimerRun {
  if (run.state === "stopped") return run;
  if (run.state === "paused") {
    const left =
      ceiling === null ? addSeconds(run.left, by) : seconds(Math.min(run.left + by, ceiling - run.ran));
    return { ...run, lookLeft: seconds(Math.min(run.lookLeft + by, left)), left };
  }
  const limit = ceiling === null ? null : plus(run.startedAt, ceiling);
  const cap = (moment: Instant): Instant => (limit === null ? moment : earlier(moment, limit));
  if (at < run.lookAt) {
    const endsAt = cap(plus(run.endsAt, by));
    return { ...run, lookAt: earlier(plus(run.lookAt, by), endsAt), endsAt, answered: "none" };
  }
  const again = cap(plus(at, by));
  return { ...run, lookAt: again, endsAt: later(run.endsAt, again), answered: "none" };
}

/** How much more the recipe allows, counted from the next look; null: no limit. */
export function roomFor(run: TimerRun, ceiling: Seconds | null, at: Instant): Seconds | null {
  if (ceiling === null || run.state === "stopped") return null;
  if (run.state === "paused") return seconds(ceiling - run.ran - run.lookLeft);
  const limit = plus(run.startedAt, ceiling);
  return between(later(at, at < run.lookAt ? run.lookAt : at), limit);
}

/** Less time: both ends move, the early one no further than to now. */
export function shortened(run: TimerRun, by: Seconds, at: Instant): TimerRun {
  switch (run.state) {
    case "running":
      return {
        ...run,
        lookAt: later(minus(run.lookAt, by), earlier(at, run.lookAt)),
        endsAt: minus(run.endsAt, by),
      };
    case "paused":
      return { ...run, lookLeft: seconds(Math.max(0, run.lookLeft - by)), left: seconds(run.left - by) };
    case "stopped":
      return run;
  }
}

/** Stands still; a late end that has passed is kept as nothing left. */
export function paused(run: TimerRun, at: Instant): TimerRun {
  if (run.state !== "running") return run;
  return {
    state: "paused",
    ran: between(run.startedAt, at),
    lookLeft: between(at, run.lookAt),
    left: seconds(Math.max(0, between(at, run.endsAt))),
  };
}

/** Goes on with exactly what was left. */
export function resumed(run: TimerRun, at: Instant): TimerRun {
  if (run.state !== "paused") return run;
  const answered = run.lookLeft <= 0 ? "look" : "none";
  return {
    state: "running",
    startedAt: instant(at - run.ran * 1000),
    lookAt: plus(at, run.lookLeft),
    endsAt: plus(at, run.left),
    answered,
  };
}

/** What a running timer now allows its step: from the early to the late end. */
export function spanOf(run: Running): Span {
  return { low: between(run.startedAt, run.lookAt), high: between(run.startedAt, run.endsAt) };
}
