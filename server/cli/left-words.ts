import type { Leftover } from "../../core/house/leftover.ts";
import { servingsFigure } from "../../core/house/servings-words.ts";
import { standingOf } from "../../core/house/standing.ts";
import { sources } from "../../core/keeping/sources-table.ts";
import type { Instant } from "../../core/units/quantity.ts";
import { dayFigure, momentFigure } from "../kitchen/wall.ts";

/** What goes before every figure. */
export const leftCaution =
  "Heat it to 165 °F all through, once, and only what is eaten now. In doubt throw it out: what smells or looks wrong goes, whatever its day. Your local food code, and your clinician, go first.";

/** How much of it there is: "1 1/2 bowls". */
export const amountOf = ({ rest, servingsOf }: Pick<Leftover, "rest" | "servingsOf">): string =>
  rest.kind === "words" ? rest.words : servingsFigure(rest.servings, servingsOf);

/** What to do with it: "use by Fri, Jan 4". */
export function toDo(leftover: Leftover, now: Instant): string {
  const { useBy, heatedAt } = leftover;
  const heated = heatedAt === null ? "" : `heated at ${momentFigure(heatedAt)}`;
  switch (standingOf(leftover, now)) {
    case "good":
      return `use by ${dayFigure(useBy)}`;
    case "past-best":
      return "past its best: use it soon";
    case "spent":
      return `past its day, ${dayFigure(useBy)}: throw it away`;
    case "heated":
      return `${heated}: eat it now`;
    case "heated-long":
      return `${heated}: throw away what is left of it`;
  }
}

/** Where its day comes from. */
export function becauseOf({ source, isKnown, place, heatedAt }: Leftover): string {
  const { name } = sources[source];
  if (heatedAt !== null) return `two hours at most: ${name}`;
  return isKnown || place === "freezer"
    ? name
    : `not all that is in it is known, so by the strictest figure: ${name}`;
}
