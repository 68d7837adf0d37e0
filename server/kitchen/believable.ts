import { instant, type Instant } from "../../core/units/quantity.ts";

/** A device's clock may be ahead of ours by this much before it is taken for wrong. */
const aheadMs = 2000;

/**
 * The moment at which an order counts as given. A device knows best when the cook spoke (an order that waited
 * for a cut link is minutes old), within bounds: never before what the log holds already, never in the future.
 * @param given epoch ms by the device's clock
 */
export function believable(given: number, now: Instant, lastAt: Instant | null): Instant {
  const notAhead = given > now + aheadMs ? now : given;
  return instant(Math.max(notAhead, lastAt ?? notAhead));
}
