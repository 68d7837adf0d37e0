import type { Leftover } from "../../../core/house/leftover.ts";
import { servingsFigure } from "../../../core/house/servings-words.ts";
import { standingOf } from "../../../core/house/standing.ts";
import { sources } from "../../../core/keeping/sources-table.ts";
import type { Instant } from "../../../core/units/quantity.ts";
import { formatClock } from "../../../core/units/clock-words.ts";
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

/** The time of day by the kitchen's clock: "6:34 pm"; with its day where that is another. */
function momentFigure(at: Instant, clock: Clock): string {
  const day = dayFigure(at, clock);
  const time = formatClock(Math.floor(at / 60_000 + clock.utcOffsetMinutes(at)));
  return day === dayFigure(clock.now.value, clock) ? time : `${time} on ${day}`;
}

/** What to do with it now: "Use by Fri, Jan 4", "Heated at 6:34 pm: eat it now". */
export function standingFigure(leftover: Leftover, clock: Clock): string {
  const { useBy, heatedAt } = leftover;
  const heated = heatedAt === null ? "" : `Heated at ${momentFigure(heatedAt, clock)}`;
  switch (standingOf(leftover, clock.now.value)) {
    case "good":
      return `Use by ${dayFigure(useBy, clock)}`;
    case "past-best":
      return "Past its best: use it soon";
    case "spent":
      return "Past its day: throw it away";
    case "heated":
      return `${heated}: eat it now`;
    case "heated-long":
      return `${heated}: throw away what is left of it`;
  }
}

/** Where that comes from. */
export const standingSource = (leftover: Leftover): string =>
  leftover.heatedAt === null ? sourceWords(leftover) : `Two hours at most: ${sources[leftover.source].name}`;

/** The same in few words, behind its name. */
export function firstFigure({ useBy, heatedAt }: Leftover, clock: Clock): string {
  if (heatedAt !== null) return `heated at ${momentFigure(heatedAt, clock)}`;
  return useBy < clock.now.value ? "past its day" : `by ${dayFigure(useBy, clock)}`;
}
