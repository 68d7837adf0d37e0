import type { Instant } from "../units/quantity.ts";
import { instant } from "../units/quantity.ts";
import type { Moment } from "./model.ts";

/** A stretch of time for which one pair of hands is taken; instants. */
export interface Taken {
  readonly from: number;
  readonly to: number;
}

/** One task's moments and the time it runs. */
export interface Watched {
  readonly start: Instant;
  readonly end: Instant;
  readonly moments: readonly Moment[];
}

const MINUTE_MS = 60_000;

/** Whether so many of them overlap somewhere in the minute from `at` that no hand of all the cooks' is free. */
function isFull(taken: readonly Taken[], at: number, cooks: number): boolean {
  const there = taken.filter((busy) => at < busy.to && at + MINUTE_MS > busy.from);
  const turns = [at, ...there.map(({ from }) => from)].filter((turn) => turn >= at);
  return turns.some((turn) => there.filter((busy) => busy.from <= turn && turn < busy.to).length >= cooks);
}

function settle(
  moment: Moment,
  watched: Watched,
  taken: readonly Taken[],
  cooks: number,
  now: Instant,
): Moment {
  const slip = moment.within * 1000;
  const from = Math.max(now, watched.start, moment.at - slip);
  const to = Math.min(watched.end, moment.at + slip);
  const tries = [moment.at, ...taken.flatMap((busy) => [busy.to, busy.from - MINUTE_MS])]
    .filter((at) => at >= from && at <= to && !isFull(taken, at, cooks))
    .sort((a, b) => Math.abs(a - moment.at) - Math.abs(b - moment.at) || a - b);
  return tries[0] === undefined ? moment : { ...moment, at: instant(tries[0]) };
}

/**
 * Moves attention moments, within their tolerance, to minutes in which one of the cooks is free; where there is none
 * they stay and interrupt. What is past stays where it was.
 */
export function settleMoments(
  watched: readonly Watched[],
  busy: readonly Taken[],
  cooks: number,
  now: Instant,
): ReadonlyMap<string, Moment> {
  const taken = [...busy];
  const inTime = watched
    .flatMap((one) => one.moments.map((moment) => ({ moment, one })))
    .sort((a, b) => a.moment.at - b.moment.at);
  return new Map(
    inTime.map(({ moment, one }) => {
      const settled = settle(moment, one, taken, cooks, now);
      taken.push({ from: settled.at, to: settled.at + MINUTE_MS });
      return [moment.key, settled];
    }),
  );
}
