import type { Leftover } from "../../../core/house/leftover.ts";
import { servingsFigure } from "../../../core/house/servings-words.ts";
import { sources } from "../../../core/keeping/sources-table.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import type { Clock } from "../../kitchen/clock.ts";

/** How much of it there is, in figures: "1 1/2 bowls". */
export const amountFigure = ({ rest, servingsOf }: Leftover): string =>
  rest.kind === "words" ? rest.words : servingsFigure(rest.servings, servingsOf);

/** A day by the kitchen's calendar: "Fri, Jan 4". */
export function dayFigure(at: Instant, { utcOffsetMinutes }: Pick<Clock, "utcOffsetMinutes">): string {
  const local = new Date(at + utcOffsetMinutes(at) * 60_000);
  return local.toLocaleDateString("en-US", {
    weekday: "short",
    month: "short",
    day: "numeric",
    timeZone: "UTC",
  });
}

/** Where its days come from, and that not all of it is known where it is not. */
export function sourceWords({ source, isKnown, place }: Leftover): string {
  const { name } = sources[source];
  return isKnown || place === "freezer"
    ? name
    : `Not all that is in it is known, so by the strictest figure: ${name}`;
}
