import { isPlural, pluralOf } from "../food/names.ts";
import type { Ingredient, Swap } from "../recipe/model.ts";
import { measured, type Amount } from "../units/amount.ts";
import { mul, rational, ratio } from "../units/rational.ts";
import type { Diet } from "./diet.ts";
import type { Larder } from "./groups.ts";
import { isAllowed, judgeFood } from "./judge-food.ts";
import { kindOf, type Kind } from "./kind.ts";

/** Cups in a can of beans or vegetables, drained: common practice, no source. */
const CAN = ratio(3, 2);

/** Packages that hold something else than what is cooked at home, and nobody knows how much. */
const PACKAGES: readonly string[] = ["jar", "bag", "bottle", "packet", "box", "carton", "tub"];

const nameOf = ({ foods, item }: Kind): string => (foods.length === 1 ? (foods[0]?.name ?? item) : item);

/** The same food without what is avoided, as the table may name it. */
function plainNames(kind: Kind, larder: Larder): readonly string[] {
  const name = nameOf(kind);
  const bare = name.replace(/\bsalted\b\s*/, "");
  const names = [
    `unsalted ${bare}`,
    `${bare} without salt`,
    bare,
    `fat-free ${bare.replace(/\b(?:whole-milk|low-fat|reduced-fat)\b\s*/, "")}`,
    bare.replace(/^drained canned|^rinsed canned|^canned/, "cooked").replace(/ with liquid$/, ""),
    bare.replace(/^canned /, "").replace(/ with liquid$/, ""),
  ];
  return [...new Set(names)].filter((one) => one !== name && larder.foods.has(one));
}

/** As much of what has no package as was in the package; undefined where nobody knows. */
function unpacked(amount: Amount): Amount | null | undefined {
  if (amount.kind === "to-taste") return null;
  if (PACKAGES.includes(amount.unit)) return undefined;
  if (amount.unit !== "can") return null;
  return measured(mul(rational(amount.low), CAN), "cup", mul(rational(amount.high), CAN));
}

const cookedFirst = (use: string): string =>
  /\bbeans?\b/.test(use)
    ? "Have it cooked before it goes in; dried beans need a hard boil first."
    : "Have it cooked before it goes in.";

/**
 * The same food without what a diet has against it, where every diet allows that: unsalted for salted butter, home-cooked
 * for canned beans. Null where no diet has anything against it, or nothing plainer is known.
 */
export function plainerSwap(ingredient: Ingredient, diets: readonly Diet[], larder: Larder): Swap | null {
  const kind = kindOf(ingredient, larder);
  if (diets.every((diet) => judgeFood(kind, diet, larder).length === 0)) return null;
  const name = plainNames(kind, larder).find((one) => isAllowed(one, diets, larder));
  if (name === undefined) return null;
  const use = isPlural(ingredient.item) ? pluralOf(name) : name;
  const isUnpacked = /\bcanned\b/.test(nameOf(kind)) && !/\bcanned\b/.test(use);
  const amount = isUnpacked ? unpacked(ingredient.amount) : null;
  if (amount === undefined) return null;
  const effect = /^cooked\b/.test(use) ? cookedFirst(use) : null;
  return { use, amount, effect, changes: [], isCommon: true };
}
