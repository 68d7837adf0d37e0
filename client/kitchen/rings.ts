import { effect } from "@preact/signals";
import type { Session } from "../../core/cook/session.ts";
import { nextRingAt, ringOf } from "../../core/cook/timer.ts";
import { timerId } from "../../core/cook/orders.ts";
import { createRingClock } from "../sound/ring-clock.ts";
import type { Sound } from "../sound/player.ts";
import type { Clock } from "./clock.ts";
import type { MealStore } from "./meal-store.ts";

/**
 * Lets every timer ring on this device: a worker's clock announces each deadline, so that a hidden
 * page rings too; the state itself says what must ring now, so that a page that was away catches up.
 * @returns a function that ends it and silences what rings
 */
export function ringTimers(clock: Clock, store: MealStore, sound: Sound): () => void {
  const clockwork = createRingClock((id, at) => {
    const timer = store.session.value?.timers.get(timerId(id));
    if (timer !== undefined) sound.ring(id, timer.chime, 0, at);
  });
  let watched = new Set<string>();
  const stop = effect(() => {
    const session = store.session.value;
    const now = clock.now.value;
    const timers = session === null || session.phase.state === "ended" ? [] : [...session.timers.values()];
    for (const timer of timers) {
      const ring = ringOf(timer, now);
      // A ring that the worker has announced starts up to 300 ms before its second: leave that one alone.
      const next = nextRingAt(timer, now);
      if (ring !== null) sound.ring(timer.id, timer.chime, ring.round);
      else if (next === null || next - now > 1000) sound.stopRing(timer.id);
      if (next === null) clockwork.clear(timer.id);
      // The worker goes by the device's clock, and that may be an hour wrong.
      else clockwork.set(timer.id, clock.onDevice(next));
    }
    const current = new Set<string>(timers.map((timer) => timer.id));
    for (const gone of watched) if (!current.has(gone)) silence(gone);
    watched = current;
  });
  const silence = (id: string): void => {
    sound.stopRing(id);
    clockwork.clear(id);
  };
  return () => {
    stop();
    clockwork.close();
    sound.stopAllRings();
  };
}

/** How many timers ring at this moment. */
export const ringingCount = (session: Session | null, clock: Clock): number =>
  [...(session?.timers.values() ?? [])].filter((timer) => ringOf(timer, clock.now.value) !== null).length;
