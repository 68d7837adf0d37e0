import { leftToBuy, listAtHand, ticking, unticking } from "../../../core/shop/at-hand.ts";
import type { HandLine, ListAtHand } from "../../../core/shop/at-hand.ts";
import type { BuyingDesk } from "../../kitchen/buying-model.ts";
import type { HouseKeeper } from "../../kitchen/house-keeper.ts";

/** The list as it stands: this device's own, and what the house wants besides; null where there is neither. */
export const atHand = (desk: BuyingDesk | null, keeper: HouseKeeper | null): ListAtHand | null =>
  listAtHand(desk?.kept.value ?? null, keeper?.house.value.wanted ?? new Map());

/** Ticks a line, or has it back: what saying so does, without the words. */
export function turn(line: HandLine, desk: BuyingDesk, keeper: HouseKeeper | null): void {
  const { list, house } = line.isTicked ? unticking(line) : ticking(line);
  if (keeper === null) desk.obey(list);
  else keeper.give(house, list);
}

/** "5 things to buy", "all in the bag". */
export function leftWords(hand: ListAtHand): string {
  const left = leftToBuy(hand).length;
  if (left === 0) return hand.lines.some(({ kind }) => kind === "buy") ? "all in the bag" : "nothing to buy";
  return left === 1 ? "1 thing to buy" : `${left} things to buy`;
}
