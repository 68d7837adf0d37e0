import { figureTold, type DishAmounts } from "../../core/amounts/dish-amounts.ts";
import { div, mixed, ONE, ratio } from "../../core/units/rational.ts";
import { columns, wrapped, type Column } from "./columns.ts";

const width = 80;
const shape: readonly Column[] = [
  { most: 28, align: "right" },
  { most: 48, align: "left" },
];

/** What was asked for, beside the dishes. */
export interface AmountsAsked {
  /** "From 300 g of red lentils", one sentence; null: nothing to tell. */
  readonly why: string | null;
}

function head({ dish, factor, servings }: DishAmounts): string {
  const made = `${dish.name}: ${figureTold(servings)} ${dish.yield.of}`;
  if (factor === ONE) return `${made}, as written`;
  return `${made}, ${figureTold(factor)} times the recipe for ${dish.yield.servings}`;
}

/** "Enough for 4 whole ones." where the servings do not come out even. */
function whole({ servings, dish }: DishAmounts): readonly string[] {
  const { whole: count } = mixed(servings);
  if (div(servings, ONE) === ratio(count) || count === 0n) return [];
  return [`Enough for ${String(count)} whole ${dish.yield.of}.`];
}

function dishText(amounts: DishAmounts): readonly string[] {
  const rows = amounts.lines.map(({ ingredient, told }) => {
    const what = [ingredient.item, ...(ingredient.preparation === null ? [] : [ingredient.preparation])].join(
      ", ",
    );
    return [told, ingredient.optional ? `${what} (may be left out)` : what];
  });
  const notes = amounts.cautions.map(({ sentence }) => `- ${sentence}`);
  return [
    ...wrapped(head(amounts), width),
    ...columns(rows, shape),
    ...whole(amounts).flatMap((line) => wrapped(line, width)),
    ...notes.flatMap((line) => wrapped(line, width)),
    "",
  ];
}

/** The scaled lists, for people; at most 80 letters wide. */
export const amountsText = (all: readonly DishAmounts[], { why }: AmountsAsked): string =>
  [
    ...(why === null ? [] : [...wrapped(why, width), ""]),
    ...all.flatMap(dishText),
    ...wrapped(
      "Amounts are kept exactly and told as they can be measured; ≈ marks a rounded one. Times are the recipe's own.",
      width,
    ),
  ].join("\n");
