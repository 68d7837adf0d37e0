import type { Kitchen, Need, Step, Way } from "../recipe/model.ts";
import { numberWords } from "../units/number-words.ts";
import { compareHeat } from "../units/temperature.ts";
import { spokenMinutes } from "./say.ts";
import type { SheetCost } from "./sheet-cost.ts";
import { decidingGoal } from "./sheet-cost.ts";

/** A reason with its step's title should be said in one breath: at most so many words. */
const BREATH_WORDS = 23;

const wordCount = (text: string): number => text.split(/\s+/).length;

function lackOf(need: Need, { burners, ovens, appliances }: Kitchen): string | null {
  switch (need.kind) {
    case "burner":
      if (need.count <= burners) return null;
      if (burners === 0) return "there is no burner";
      return burners === 1 ? "there is only one burner" : `there are only ${numberWords(burners)} burners`;
    case "appliance":
      return appliances.includes(need.name) ? null : `there is no ${need.name}`;
    case "oven": {
      if (ovens.length === 0) return "there is no oven";
      const hot = ovens.filter(({ hottest }) => compareHeat(hottest, need.heat.low) >= 0);
      if (hot.length === 0) return "no oven here gets so hot";
      return hot.some(({ racks }) => racks >= need.racks) ? null : "the oven has too few racks";
    }
    case "bowl":
    case "fridge":
      return null;
  }
}

/** What a way needs and the kitchen has not got, as the rest of a sentence: "there is no grill"; null: nothing. */
export function lackWords({ needs }: Way, kitchen: Kitchen): string | null {
  return needs.map((need) => lackOf(need, kitchen)).find((lack) => lack !== null) ?? null;
}

const timesOf = ({ batch }: Way): number => (batch === null ? 1 : Math.ceil(batch.of / batch.holds));

/** "All six patties go in at once": what the eye sees first, where one way takes more at a time. */
function batchWords(way: Way, other: Way): string | null {
  if (timesOf(way) >= timesOf(other) || other.batch === null) return null;
  const { of, pieces, holds } = way.batch ?? { ...other.batch, holds: other.batch.of };
  if (holds >= of) return `all ${numberWords(of)} ${pieces} go in at once`;
  return `${numberWords(holds)} ${pieces} go in at a time instead of ${numberWords(other.batch.holds)}`;
}

function goalWords(mine: SheetCost, theirs: SheetCost, other: string, isTimed: boolean): string {
  const goal = decidingGoal(mine, theirs);
  if (goal === null) return `it does as well as ${other}, and the recipe names it first`;
  const minutes = spokenMinutes((theirs[goal] - mine[goal]) * 60_000);
  switch (goal) {
    case "missed":
      return `${other} a limit of the recipe would be missed by ${minutes}${mine.missed > 0 ? " more" : ""}`;
    case "late":
      return isTimed && mine.late === 0
        ? `${other} dinner would be ${minutes} late`
        : `dinner is ready ${minutes} sooner than ${other}`;
    case "waits":
      return `hot food waits ${minutes} less than ${other}`;
    case "hands":
      return `it takes ${minutes} less of your time than ${other}`;
  }
}

/** A way, and what the evening costs with it. */
export interface PricedWay {
  readonly way: Way;
  readonly cost: SheetCost;
}

/**
 * What speaks for one way over another, as the rest of a sentence: "all six patties go in at once, and dinner is
 * ready 31 minutes sooner than in a pan".
 * @param isTimed whether the cook has asked for a time
 */
export function betterWords(title: string, mine: PricedWay, other: PricedWay, isTimed: boolean): string {
  const why = goalWords(mine.cost, other.cost, other.way.name, isTimed);
  const batch = batchWords(mine.way, other.way);
  if (batch === null) return why;
  const full = `${batch}, and ${why}`;
  return wordCount(`${title} ${mine.way.name} ${full}`) > BREATH_WORDS ? why : full;
}

/** What speaks for a step's way over the next best; null where the planner had nothing to choose. */
const becauseOf = ({ ways }: Step): string | null =>
  ways?.chosen.by === "plan" ? (ways.chosen.over[0]?.because ?? null) : null;

/** The choice and its reason in one spoken sentence; null where the planner had nothing to choose. */
export function wayReason(step: Step): string | null {
  const because = becauseOf(step);
  return because === null ? null : wayBecause(step, because);
}

/** The same before the work begins, when it must not sound like a call. */
export function wayPlanned(step: Step): string | null {
  const because = becauseOf(step);
  return because === null ? null : `Planned: ${step.title} ${step.ways?.taken ?? ""}, for ${because}.`;
}

/** "Cook the patties in the oven: there is no grill." */
export const wayBecause = ({ title, ways }: Step, because: string): string =>
  `${title.charAt(0).toUpperCase()}${title.slice(1)} ${ways?.taken ?? ""}: ${because}.`;
