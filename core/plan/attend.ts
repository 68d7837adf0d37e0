import type { Instant } from "../units/quantity.ts";
import { instant } from "../units/quantity.ts";
import type { Moment } from "./model.ts";

/** A stretch of the cook's time that is taken; instants. */
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

function settle(moment: Moment, watched: Watched, taken: readonly Taken[], now: Instant): Moment {
  const slip = moment.within * 1000;
  const from = Math.max(now, watched.start, moment.at - slip);
  const to = Math.min(watched.end, moment.at + slip);
  const tries = [moment.at, ...taken.flatMap((busy) => [busy.to, busy.from - MINUTE_MS])]
    .filter((at) => at >= from && at <= to)
    .filter((at) => taken.every((busy) => at >= busy.to || at + MINUTE_MS <= busy.from))
    .sort((a, b) => Math.abs(a - moment.at) - Math.abs(b - moment.at) || a - b);
  return tries[0] === undefined ? moment : { ...moment, at: instant(tries[0]) };
}

/**
 * Moves attention moments, within their tolerance, to minutes in which the cook is free; where there is none
 * they stay and interrupt. What is past stays where it was.
 */
export function settleMoments(
  watched: readonly Watched[],
  busy: readonly Taken[],
  now: Instant,
): ReadonlyMap<string, Moment> {
  const taken = [...busy];
  const inTime = watched
    .flatMap((one) => one.moments.map((moment) => ({ moment, one })))
    .sort((a, b) => a.moment.at - b.moment.at);
  return new Map(
    inTime.map(({ moment, one }) => {
      const settled = settle(moment, one, taken, now);
      taken.push({ from: settled.at, to: settled.at + MINUTE_MS });
      return [moment.key, settled];
    }),
  );
}
