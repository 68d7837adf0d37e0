import { signal } from "@preact/signals";
import type { Signal } from "@preact/signals";
import type { Clock } from "../../../client/kitchen/clock.ts";
import type { LinkState } from "../../../client/kitchen/server-link.ts";
import type { MealStore } from "../../../client/kitchen/meal-store.ts";
import { emptyLog } from "../../../core/cook/fold.ts";
import type { Instant } from "../../../core/units/quantity.ts";

/** A clock that stands until a test turns it. */
export const clockAt = (now: Signal<Instant>): Clock => ({
  now,
  read: () => now.value,
  utcOffsetMinutes: () => 0,
  slept: signal(null),
  onDevice: (at) => at,
  follow: () => undefined,
  close: () => undefined,
});

/** A joined page's meal, as a test tells it; nothing can be done in it. */
export const storeOf = (told: Pick<MealStore, "session"> & Partial<MealStore>): MealStore => ({
  link: signal<LinkState>("joined"),
  isLoaded: signal(true),
  log: signal(emptyLog),
  sheet: signal(null),
  waiting: signal(0),
  give: () => undefined,
  begin: () => Promise.resolve(null),
  pantry: () => Promise.reject(new Error("no pantry here")),
  close: () => undefined,
  ...told,
});
