import { boundsOf } from "../food/food.ts";
import type { Nutrient } from "../food/nutrients.ts";
import { compare, ratio, type Rational } from "../units/rational.ts";
import type { Condition } from "./diet.ts";
import type { Larder, Part } from "./groups.ts";
import { partOf, type Kind } from "./kind.ts";

/** Whether something is so. */
export type Met = "yes" | "no" | "unknown";

const NONFAT = /\b(?:non[\s-]?fat|fat[\s-]free|skim(?:med)?)\b/;
const LOW_FAT = /\blow[\s-]fat\b/;
const ORGANIC = /\borganic(?:ally)?\b/;

/** In 100 g, by the annex of Regulation (EC) No 1924/2006; a packet in the US goes by the serving. */
const NONFAT_GRAMS = ratio(1, 2);
const LOW_FAT_GRAMS = ratio(3);

const wordsOf = ({ item, preparation, foods }: Kind): string =>
  `${item.toLowerCase()} ${preparation} ${foods.length === 1 ? (foods[0]?.name ?? "") : ""}`;

function holdsAtMost(kind: Kind, nutrient: Nutrient, most: Rational): Met {
  const all = kind.foods.map((food) => boundsOf(food, nutrient));
  const known = all.flatMap((one) => one ?? []);
  if (known.length === 0 || known.length < all.length) return "unknown";
  if (known.every(({ high }) => compare(high, most) <= 0)) return "yes";
  return known.every(({ low }) => compare(low, most) > 0) ? "no" : "unknown";
}

/** Free of what a group names: unsalted, unsweetened. */
function isFreeOf(kind: Kind, group: string, larder: Larder): Met {
  const found = larder.groups.get(group);
  const part: Part = found === undefined ? "unknown" : partOf(kind, found, larder);
  if (part === "free") return "yes";
  return part === "may" || part === "unknown" ? "unknown" : "no";
}

function isWholeGrain(kind: Kind, larder: Larder): Met {
  const group = larder.groups.get("whole grain");
  const part: Part = group === undefined ? "unknown" : partOf(kind, group, larder);
  if (part === "is") return "yes";
  return part === "may" || part === "unknown" ? "unknown" : "no";
}

/** Whether an ingredient is what a diet wants it to be. */
export function meets(kind: Kind, condition: Condition, larder: Larder): Met {
  switch (condition) {
    case "nonfat":
      return NONFAT.test(wordsOf(kind)) ? "yes" : holdsAtMost(kind, "fat", NONFAT_GRAMS);
    case "low-fat":
      return LOW_FAT.test(wordsOf(kind)) || NONFAT.test(wordsOf(kind))
        ? "yes"
        : holdsAtMost(kind, "fat", LOW_FAT_GRAMS);
    case "unsalted":
      return isFreeOf(kind, "added salt", larder);
    case "unsweetened":
      return isFreeOf(kind, "added sugar", larder);
    case "organic":
      // No table knows how something was grown.
      return ORGANIC.test(wordsOf(kind)) ? "yes" : "unknown";
    case "whole-grain":
      return isWholeGrain(kind, larder);
  }
}
