import type { KeptList } from "../../kitchen/buying-model.ts";

/** "5 things to buy", "all in the bag". What the dishes may do without counts only where it is ticked. */
export function leftToBuy({ list, ticked }: KeptList): string {
  const wanted = list.sections.filter(({ kind }) => kind === "buy").flatMap(({ lines }) => lines);
  const left = wanted.filter(({ id }) => !ticked.includes(id)).length;
  if (left === 0) return wanted.length === 0 ? "nothing to buy" : "all in the bag";
  return left === 1 ? "1 thing to buy" : `${left} things to buy`;
}
