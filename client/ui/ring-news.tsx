import type { Session } from "../../core/cook/session.ts";
import { ringOf } from "../../core/cook/timer.ts";
import type { Instant } from "../../core/units/quantity.ts";

/** Tells a screen reader at once what rings; the words change with the rings and not with the seconds. */
export function RingNews({ session, now }: { readonly session: Session; readonly now: Instant }) {
  const news = [...session.timers.values()].flatMap((timer) => {
    const ring = ringOf(timer, now);
    return ring === null
      ? []
      : [ring.ring === "look" ? `Time for a look: ${timer.name}.` : `Time is up: ${timer.name}.`];
  });
  return (
    <p class="unseen" role="alert">
      {news.join(" ")}
    </p>
  );
}
