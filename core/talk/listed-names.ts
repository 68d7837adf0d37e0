import { goods } from "../shop/goods-table.ts";
import { listAtHand } from "../shop/at-hand.ts";
import type { HandLine } from "../shop/at-hand.ts";
import type { Household } from "./model.ts";
import { foodNames } from "./names.ts";

const linesOf = ({ list, log: { house } }: Household): readonly HandLine[] =>
  listAtHand(list.made, house.wanted)?.lines ?? [];

/**
 * The names of what is on the list. Who cooks takes off at most what was wanted besides: a list that was made for a week
 * would double what the ear has to tell apart.
 */
export function listedNames(household: Household): readonly string[] {
  const { isOpen } = household.list;
  const lines = linesOf(household).filter(({ wanted }) => isOpen || wanted !== null);
  return [...new Set(lines.flatMap(({ name }) => foodNames(name)))].filter((name) => name !== "");
}

/** What most households buy at times: who cooks has the foods of the meal to tell apart, and no need of it. */
export const goodsNames = ({ list }: Household): readonly string[] => (list.isOpen ? goods : []);

/** Whether anything is on the list. */
export const isListed = (household: Household): boolean => linesOf(household).length > 0;
