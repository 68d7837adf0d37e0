import type { Leftover } from "../../core/house/leftover.ts";
import { servingsFigure } from "../../core/house/servings-words.ts";
import { standingOf, type Standing } from "../../core/house/standing.ts";
import { sources } from "../../core/keeping/sources-table.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { dayFigure, momentFigure } from "../kitchen/wall.ts";

/** What goes before every figure. */
export const leftCaution =
  "Heat it to 165 °F all through, once, and only what is eaten now. In doubt throw it out: what smells or looks wrong goes, whatever its day. Your local food code, and your clinician, go first.";

/** How much of it there is: "1 1/2 bowls". */
export const amountOf = ({ rest, servingsOf }: Pick<Leftover, "rest" | "servingsOf">): string =>
  rest.kind === "words" ? rest.words : servingsFigure(rest.servings, servingsOf);

/** How it stands with it: "use by Fri, Jan 4", "heated at 6:04 pm on Fri, Jan 4". */
export function stateOf(leftover: Leftover, now: Instant): string {
  const { useBy, heatedAt } = leftover;
  if (heatedAt !== null) return `heated at ${momentFigure(heatedAt)}`;
  const standing = standingOf(leftover, now);
  if (standing === "spent") return `past its day, ${dayFigure(useBy)}`;
  return standing === "past-best" ? "past its best" : `use by ${dayFigure(useBy)}`;
}

const deeds: Readonly<Record<Standing, string>> = {
  good: "",
  "past-best": ": use it soon",
  spent: ": throw it away",
  heated: ": eat it now",
  "heated-long": ": throw away what is left of it",
};

/** The same, and what to do with it. */
export const toDo = (leftover: Leftover, now: Instant): string =>
  `${stateOf(leftover, now)}${deeds[standingOf(leftover, now)]}`;

/** Where its day comes from. */
export function becauseOf({ source, isKnown, place, heatedAt }: Leftover): string {
  const { name } = sources[source];
  if (heatedAt !== null) return `two hours at most: ${name}`;
  return isKnown || place === "freezer"
    ? name
    : `not all that is in it is known, so by the strictest figure: ${name}`;
}
