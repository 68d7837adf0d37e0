import type { Clock } from "./clock.ts";

/** Milliseconds by which a ring is announced before it is due, so that it can be put on the audio clock. */
export const earlyMs = 300;

/** At most this long between two looks at the clock: after a sleep of the machine a longer wait would run late. */
const longestNapMs = 15_000;

/** A set of absolute deadlines, each announced once. */
export interface RingWatch {
  /** Sets or moves a deadline; one already past is announced at once. Anything but a finite time is ignored. */
  readonly set: (id: string, atEpochMs: number) => void;
  readonly clear: (id: string) => void;
  readonly stop: () => void;
}

/** @param onDue called about 300 ms before the deadline, or late by as much as the machine slept */
export function ringWatch(clock: Clock, onDue: (id: string, atEpochMs: number) => void): RingWatch {
  const deadlines = new Map<string, number>();
  let cancel = (): void => undefined;

  const look = (): void => {
    cancel();
    const now = clock.now();
    const due = [...deadlines].filter(([, at]) => at - earlyMs <= now).sort(([, a], [, b]) => a - b);
    for (const [id] of due) deadlines.delete(id);
    if (deadlines.size > 0) {
      const soonest = Math.min(...deadlines.values());
      cancel = clock.after(Math.min(longestNapMs, Math.max(1, soonest - earlyMs - now)), look);
    }
    for (const [id, at] of due) onDue(id, at);
  };

  return {
    set: (id, atEpochMs) => {
      if (!Number.isFinite(atEpochMs)) return;
      deadlines.set(id, atEpochMs);
      look();
    },
    clear: (id) => {
      deadlines.delete(id);
      look();
    },
    stop: () => {
      deadlines.clear();
      cancel();
    },
  };
}
