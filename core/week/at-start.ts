import { daysAgo, type Wall } from "../house/day-words.ts";
import type { House } from "../house/house.ts";
import type { Leftover } from "../house/leftover.ts";
import { servingsFigure } from "../house/servings-words.ts";
import { firstToUse, isToEat, standingOf } from "../house/standing.ts";
import { sources } from "../keeping/sources-table.ts";
import { toNumber } from "../units/rational.ts";
import type { CookedDish, Left } from "./left.ts";

/** What is in the fridge as the week begins. */
export interface AtStart {
  readonly left: readonly Left[];
  /** What must not be eaten, and what counts for no meal, a sentence each. */
  readonly notes: readonly string[];
}

/** Nothing is known of the fridge. */
export const nothingAtStart: AtStart = { left: [], notes: [] };

/** What runs out earlier on its last day, in minutes from midnight, is not there for the dinner of that day. */
const dinnerFrom = 17 * 60;

/**
 * What counts as left of the days before: what is known, measured and good. What was heated never does.
 * @param cookedOf the dish as it was cooked; null: nobody knows what is in it
 */
export function fridgeAtStart(
  { leftovers }: House,
  cookedOf: (leftover: Leftover) => CookedDish | null,
  wall: Wall,
): AtStart {
  const [left, notes]: [Left[], string[]] = [[], []];
  for (const leftover of firstToUse(leftovers)) {
    const { rest, place, source } = leftover;
    const cooked = cookedOf(leftover);
    const lastDay = lastDayOf(leftover, wall);
    const note = noteOf(leftover, cooked !== null, lastDay, wall);
    if (note !== null) notes.push(note);
    const isSpent = standingOf(leftover, wall.now) === "spent";
    if (cooked === null || rest.kind === "words" || (note !== null && !isSpent)) continue;
    const servings = toNumber(rest.servings);
    left.push({ ...cooked, from: { kind: place }, servings, lastDay, source: sources[source].name });
  }
  return { left, notes };
}

/** Counted from today, which is 0. What is frozen has no last day: it stays safe. */
function lastDayOf(leftover: Leftover, wall: Wall): number {
  if (!isToEat(leftover, wall.now)) return -1;
  if (leftover.place === "freezer") return Infinity;
  const { useBy } = leftover;
  const minute = (useBy / 60_000 + wall.utcOffsetMinutes(useBy)) % (24 * 60);
  return -daysAgo(useBy, wall) - (minute < dinnerFrom ? 1 : 0);
}

/** Why it counts for no meal; null: it does. */
function noteOf(leftover: Leftover, isKnown: boolean, lastDay: number, wall: Wall): string | null {
  const { name, rest, servingsOf, place } = leftover;
  const amount = rest.kind === "words" ? rest.words : servingsFigure(rest.servings, servingsOf);
  const what = `${name}, ${amount}, in the ${place}`;
  switch (standingOf(leftover, wall.now)) {
    case "spent":
      return `${what}, is past its day: throw it away.`;
    case "heated-long":
      return `${name}, ${amount}, was heated more than two hours ago: throw it away.`;
    case "heated":
      return `${name}, ${amount}, was heated: eat it now; it counts for no meal.`;
    case "good":
    case "past-best":
      if (rest.kind === "words") return `${what}: nobody knows how many servings, so it counts for no meal.`;
      if (!isKnown) return `${what}: nobody knows what is in it, so it counts for no meal.`;
      return lastDay < 0 ? `${what}, runs out before this evening: it counts for no meal.` : null;
  }
}
