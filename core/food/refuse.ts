import { div, mul, ratio, sub, ZERO, type Rational } from "../units/rational.ts";
import type { Food } from "./food.ts";

/** What a weight in a recipe is of: the food as it is bought, as it is eaten, or the line does not say. */
export type WeighedAs = "bought" | "eaten" | "not said";

/** Words for taking away what is not eaten. What is only "seeded" or "topped" still has its peel. */
const FREEING =
  /\b(?:peeled|trimmed|cored|pitted|stoned|shelled|hulled|husked|podded|boned|skinned|boneless|skinless)\b/i;
/** "Peeled weight", "after peeling", "when trimmed". */
const NET =
  /\b(?:net|(?:peeled|trimmed|cored|pitted|stoned|shelled|hulled|podded|boned|prepared|cleaned|edible) weight|(?:after|when|once) (?:peel|trimm|core?|pitt|ston|shell|hull|bon)\w*)\b/i;
const GROSS =
  /\b(?:as bought|unprepared weight|gross|before (?:peel|trimm|cor|pitt|ston|shell|hull|bon)\w*)\b/i;

/** Sold and weighed without their shells, unless the line says otherwise: common practice, no source. */
const NUTS =
  /\b(?:almond|brazil nut|cashew|chestnut|hazelnut|macadamia nut|peanut|pecan|pine nut|pistachio|walnut)s?\b/i;
const IN_SHELL = /\bin (?:the|their) shells?\b|\bunshelled\b/i;

/**
 * What the line says of its weight: "2 lb squash, peeled" is bought by the pound and then peeled; "2 lb peeled squash"
 * is weighed peeled. "Unpeeled" and silence say neither.
 * @param item as in the recipe
 * @param preparation what stands behind the comma; null where nothing does
 */
export function weighedAs(item: string, preparation: string | null): WeighedAs {
  const behind = preparation ?? "";
  if (NET.test(behind) || NET.test(item)) return "eaten";
  if (GROSS.test(behind)) return "bought";
  if (FREEING.test(item)) return "eaten";
  if (NUTS.test(item)) return IN_SHELL.test(`${item} ${behind}`) ? "bought" : "eaten";
  return FREEING.test(behind) ? "bought" : "not said";
}

const HUNDRED = ratio(100);

/** The share of a food that is eaten, of one; null: its refuse is not known. */
const edibleShare = ({ refuse }: Food): Rational | null =>
  refuse === null ? null : div(sub(HUNDRED, refuse), HUNDRED);

/**
 * What has to be bought for so much of it to be eaten: edible = bought x (1 - refuse), as the handbooks reckon.
 * @param edible in grams, without refuse
 * @returns grams; null: the food's refuse is not known
 */
export function boughtWeight(food: Food, edible: Rational): Rational | null {
  const share = edibleShare(food);
  return share === null || share === ZERO ? null : div(edible, share);
}

/** What is left to eat of a bought weight, in grams; null: the food's refuse is not known. */
export function edibleWeight(food: Food, bought: Rational): Rational | null {
  const share = edibleShare(food);
  return share === null ? null : mul(bought, share);
}
