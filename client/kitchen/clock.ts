import { signal } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import { instant } from "../../core/units/quantity.ts";
import type { Instant } from "../../core/units/quantity.ts";

/** The kitchen's one clock: the server's time, read off this device's. */
export interface Clock {
  /** Moves once a second, on the second. */
  readonly now: ReadonlySignal<Instant>;
  /** The moment itself, not the last full second. */
  readonly read: () => Instant;
  /** Minutes that local time is ahead of UTC. */
  readonly utcOffsetMinutes: () => number;
  /** Keeps this device in step with the server, so that every device rings together. */
  readonly follow: (serverNow: Instant) => void;
  readonly close: () => void;
}

/** A device whose clock is off by less than this keeps its own: a network's delay is no reason to jump. */
const toleranceMs = 750;

/** Starts the clock. */
export function createClock(): Clock {
  let offsetMs = 0;
  let timer = 0;
  const read = (): Instant => instant(Date.now() + offsetMs);
  const now = signal(read());
  const tick = (): void => {
    now.value = read();
    timer = window.setTimeout(tick, 1000 - (read() % 1000));
  };
  const wake = (): void => {
    now.value = read();
  };
  // A hidden page's timers drift by up to a minute: be right again the moment it is seen.
  document.addEventListener("visibilitychange", wake);
  tick();
  return {
    now,
    read,
    utcOffsetMinutes: () => -new Date().getTimezoneOffset(),
    follow: (serverNow) => {
      const off = serverNow - Date.now();
      offsetMs = Math.abs(off) < toleranceMs ? 0 : off;
      now.value = read();
    },
    close: () => {
      window.clearTimeout(timer);
      document.removeEventListener("visibilitychange", wake);
    },
  };
}
