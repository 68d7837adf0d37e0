import { batch, signal } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import { instant } from "../../core/units/quantity.ts";
import type { Instant } from "../../core/units/quantity.ts";

/** Time in which this page did not run: the device slept, or its clock was set ahead, which looks the same. */
export interface Sleep {
  readonly from: Instant;
  readonly to: Instant;
}

/** The kitchen's one clock: the server's time, read off this device's. */
export interface Clock {
  /** Moves once a second, on the second. */
  readonly now: ReadonlySignal<Instant>;
  /** The moment itself, not the last full second. */
  readonly read: () => Instant;
  /** The last time that it slept; null: never, or the server's time says that it did not. */
  readonly slept: ReadonlySignal<Sleep | null>;
  /** The same moment by this device's own clock, which its workers and its sound go by: epoch ms. */
  readonly onDevice: (at: Instant) => number;
  /** Minutes that local time is ahead of UTC at a moment: dinner may be on the other side of a time change. */
  readonly utcOffsetMinutes: (at: Instant) => number;
  /** Keeps this device in step with the server, so that every device rings together. */
  readonly follow: (serverNow: Instant) => void;
  readonly close: () => void;
}

/** A device whose clock is off by less than this keeps its own: a network's delay is no reason to jump. */
const toleranceMs = 750;

/** Nobody looked for so long: asleep. A hidden page still looks once a minute. */
const asleepMs = 150_000;

/** So long after a sleep the caller waits for what the server has to tell, and says it all at once. */
const wakingMs = 4000;

/** Whether this device has only just woken up. */
export const isWaking = ({ slept }: Clock, now: Instant): boolean =>
  slept.value !== null && Math.abs(now - slept.value.to) < wakingMs;

/** By how much this device's clock was set back so far: the page's time goes on at its own pace. */
function setBackMs(): () => number {
  let [begun, backMs] = [Date.now() - performance.now(), 0];
  return () => {
    const now = Date.now() - performance.now();
    if (now < begun - toleranceMs) backMs += begun - now;
    begun = now;
    return backMs;
  };
}

/** Starts the clock. */
export function createClock(): Clock {
  const backMs = setBackMs();
  let offsetMs = 0;
  let timer = 0;
  const read = (): Instant => instant(Date.now() + backMs() + offsetMs);
  const now = signal(read());
  const slept = signal<Sleep | null>(null);
  const look = (): void => {
    const [from, to] = [now.peek(), read()];
    batch(() => {
      now.value = to;
      if (to - from >= asleepMs) slept.value = { from, to };
    });
  };
  const tick = (): void => {
    look();
    timer = window.setTimeout(tick, 1000 - (read() % 1000));
  };
  // A hidden page's timers drift by up to a minute: be right again the moment it is seen.
  document.addEventListener("visibilitychange", look);
  tick();
  return {
    now,
    read,
    slept,
    onDevice: (at) => at - backMs() - offsetMs,
    utcOffsetMinutes: (at) => -new Date(at).getTimezoneOffset(),
    follow: (serverNow) => {
      const off = serverNow - Date.now() - backMs();
      batch(() => {
        offsetMs = Math.abs(off) < toleranceMs ? 0 : off;
        now.value = read();
        // By the server it is not yet so late: the device's clock was set ahead, and nobody slept.
        if (slept.value !== null && now.value < slept.value.to - toleranceMs) slept.value = null;
      });
    },
    close: () => {
      window.clearTimeout(timer);
      document.removeEventListener("visibilitychange", look);
    },
  };
}
