import { findFood } from "../food/find-food.ts";
import type { FoodTable } from "../food/food.ts";
import { matchName } from "../food/name-match.ts";
import { guidance } from "./guidance-table.ts";
import { hazardsIn } from "./hazards.ts";
import type { Content } from "./hazards.ts";
import type { HazardKind } from "./hazards-table.ts";
import type { SourceId } from "./sources-table.ts";

/** How a dish keeps, by what is in it. */
export interface Keeping {
  /** At most so many days of 24 hours in the fridge. */
  readonly fridgeDays: number;
  readonly freezerDays: number;
  readonly source: SourceId;
  readonly hazards: readonly HazardKind[];
  /** `all`: everything in it is a food that is known. `some`: these are not. `none`: nobody knows what is in it. */
  readonly known: "all" | "none" | { readonly but: readonly string[] };
}

const strictest = {
  fridgeDays: guidance.riceFridgeDays.value,
  freezerDays: guidance.freezerDays.value,
  source: guidance.riceFridgeDays.source,
} as const;

/** How something keeps of which nobody knows what is in it: by the strictest figure there is. */
export const unknownKeeping: Keeping = { ...strictest, hazards: [], known: "none" };

/** For its keeping it is enough to know what kind of food it is: crushed tomatoes are tomatoes. */
function isKnown({ item, preparation, food }: Content, table: FoodTable): boolean {
  if (food !== undefined && food !== null) return true;
  if (findFood(table, item, preparation).ok || findFood(table, item, null).ok) return true;
  return matchName(item.replace(/\s+for\s.*$/i, ""), [...table.keys()]).kind !== "none";
}

/**
 * How a dish keeps. What is not known makes it keep the shortest: it may be what spoils first.
 * @param steps all that the recipe says to do
 * @param table null: no food is known
 */
export function keepingOf(contents: readonly Content[], steps: string, table: FoodTable | null): Keeping {
  if (table === null || contents.length === 0) return unknownKeeping;
  const hazards = hazardsIn(contents, steps, table);
  const but = contents.flatMap((content) => (isKnown(content, table) ? [] : [content.item]));
  if (but.length > 0) return { ...strictest, hazards, known: { but } };
  if (hazards.includes("rice")) return { ...strictest, hazards, known: "all" };
  const { fridgeDays, freezerDays } = guidance;
  return {
    fridgeDays: fridgeDays.value,
    freezerDays: freezerDays.value,
    source: fridgeDays.source,
    hazards,
    known: "all",
  };
}
