import { effect, untracked } from "@preact/signals";
import type { ReadonlySignal } from "@preact/signals";
import { beginWatch, lookAgain, saySlip } from "../../core/talk/slip.ts";
import type { DinnerWatch } from "../../core/talk/slip.ts";
import { clockAt } from "../../core/talk/speech.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { between, minutes } from "../../core/units/quantity.ts";
import { isWaking } from "./clock.ts";
import type { Clock } from "./clock.ts";
import type { MealStore } from "./meal-store.ts";

/** What was said, as far as it matters here. */
interface Said {
  readonly who: "cook" | "caller";
  readonly at: Instant;
  readonly text: string;
}

/** What was answered this recently is not said once more. */
const fresh = minutes(2);

/**
 * Says unasked when dinner slips, once for each real change. A page that is loaded later knows what is planned then.
 * @param lines what was said so far: an answer may have told it already
 * @returns stops it
 */
export function watchDinner(
  clock: Clock,
  store: MealStore,
  lines: ReadonlySignal<readonly Said[]>,
  onSlip: (sentence: string) => void,
): () => void {
  let watch: DinnerWatch | null = null;
  let meal: Instant | null = null;
  return effect(() => {
    const now = clock.now.value;
    const [session, sheet] = [store.session.value, store.sheet.value];
    // After a sleep the caller tells of dinner with all the rest.
    if (session === null || sheet === null || isWaking(clock, now)) return;
    if (watch === null || meal !== session.begunAt) watch = beginWatch(session, sheet, now);
    meal = session.begunAt;
    const looked = lookAgain(watch, session, sheet, now);
    watch = looked.watch;
    const { slip } = looked;
    if (slip === null) return;
    untracked(() => {
      const kitchen = { now, utcOffsetMinutes: clock.utcOffsetMinutes };
      const table = clockAt(watch?.told ?? now, kitchen);
      const isTold = lines.value.some(
        ({ who, at, text }) => who === "caller" && between(at, now) < fresh && text.includes(table),
      );
      if (!isTold) onSlip(saySlip(slip, session, sheet, kitchen));
    });
  });
}
