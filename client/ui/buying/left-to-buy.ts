import type { KeptList } from "../../kitchen/buying-model.ts";
import { shownList } from "./shown-list.ts";

/** "5 things to buy", "all in the bag". What the dishes may do without counts only where it is ticked. */
export function leftToBuy(kept: KeptList): string {
  const wanted = shownList(kept)
    .sections.filter(({ kind }) => kind === "buy")
    .flatMap(({ lines }) => lines);
  const left = wanted.filter(({ id }) => !kept.ticked.includes(id)).length;
  if (left === 0) return wanted.length === 0 ? "nothing to buy" : "all in the bag";
  return left === 1 ? "1 thing to buy" : `${left} things to buy`;
}
