import type { WrittenList, WrittenSection } from "../../../core/shop/written-list.ts";
import type { KeptList } from "../../kitchen/buying-model.ts";
import { ownLine } from "../../kitchen/own-line.ts";

/** The list with what the cook has written on it, after the places of the shop. */
export function shownList({ list, own }: KeptList): WrittenList {
  if (own.length === 0) return list;
  const more: WrittenSection = {
    kind: "buy",
    name: "written by you",
    lines: own.map((thing) => ({ id: ownLine(thing), name: thing, buy: "", note: "", shares: "" })),
  };
  const places = list.sections.filter(({ kind }) => kind === "buy");
  return { ...list, sections: [...places, more, ...list.sections.slice(places.length)] };
}
