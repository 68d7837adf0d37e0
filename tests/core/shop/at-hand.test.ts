import { describe, expect, it } from "vitest";
import { emptyHouseLog } from "../../../core/house/house.ts";
import type { WantedThings } from "../../../core/house/wanted.ts";
import {
  leftToBuy,
  listAtHand,
  ownLine,
  tickedAfter,
  ticking,
  unticking,
} from "../../../core/shop/at-hand.ts";
import type { HandLine, MadeList } from "../../../core/shop/at-hand.ts";
import { give } from "../house/house-at.ts";
import { marketList } from "./market-list.ts";

const made = (more: Partial<MadeList> = {}): MadeList => {
  if (marketList.made === null) throw new Error("no list");
  return { ...marketList.made, ...more };
};

/** The house wants these; those that end in "!" were bought. */
const wants = (...names: readonly string[]): WantedThings =>
  names.reduce((log, name, index) => {
    const plain = name.replace("!", "");
    const wanted = give(log, index, { type: "WantThing", name: plain });
    return name.endsWith("!") ? give(wanted, index, { type: "BuyThing", name: plain }) : wanted;
  }, emptyHouseLog).house.wanted;

const shown = (lines: readonly HandLine[] | undefined) =>
  (lines ?? []).map(({ place, name, isTicked, wanted }) =>
    [place, `${isTicked ? "x " : ""}${name}${wanted === null ? "" : " *"}`].join(": "),
  );
const lineOf = (list: MadeList | null, things: WantedThings, name: string): HandLine => {
  const line = listAtHand(list, things)?.lines.find((one) => one.name === name);
  if (line === undefined) throw new Error(`no ${name}`);
  return line;
};

describe("the list of a device", () => {
  it("[B42] is what was made, by place, then what is wanted besides, then what need not be bought", () => {
    const list = listAtHand(made(), wants("candles", "lemon", "kitchen paper!"));
    expect(shown(list?.lines)).toEqual([
      "fruit and vegetables: cabbage",
      "fruit and vegetables: garlic",
      "fruit and vegetables: green onions",
      "fruit and vegetables: lemons *",
      "fruit and vegetables: red onions",
      "grains, beans and pasta: red lentils",
      "also wanted: candles *",
      "also wanted: x kitchen paper *",
      "if you like: basil",
      "look whether there is enough: salt",
    ]);
    expect(list?.list.sections.map(({ name }) => name)).toEqual([
      "fruit and vegetables",
      "grains, beans and pasta",
      "also wanted",
      "if you like",
      "look whether there is enough",
    ]);
    expect(list === null ? 0 : leftToBuy(list).length).toBe(7);
  });

  it("[B42] what is wanted once the meal's is in the bag is more, and has a line of its own", () => {
    const ticked = made({ ticked: ["buy: lemon"] });
    expect(shown(listAtHand(ticked, wants("lemons"))?.lines).filter((line) => /lemon/.test(line))).toEqual([
      "fruit and vegetables: x lemons",
      "also wanted: lemons *",
    ]);
    expect(shown(listAtHand(ticked, wants("lemons!"))?.lines).filter((line) => /lemon/.test(line))).toEqual([
      "fruit and vegetables: x lemons *",
    ]);
  });

  it("[B42] what has only to be looked for is no reason not to want it", () => {
    expect(shown(listAtHand(made(), wants("salt"))?.lines)).toEqual(
      expect.arrayContaining(["also wanted: salt *", "look whether there is enough: salt"]),
    );
  });

  it("[B42] there is one without a meal, and none where nothing is wanted", () => {
    expect(listAtHand(null, wants("oil"))?.list).toMatchObject({ title: "the house", dishes: [] });
    expect(listAtHand(null, new Map())).toBeNull();
    expect(
      shown(listAtHand(made({ own: ["candles"], ticked: [ownLine("candles")] }), new Map())?.lines),
    ).toContain("also wanted: x candles");
  });

  it("[B43] ticking a line ticks it here, and buys what the house wants by it", () => {
    const things = wants("lemons", "candles");
    expect(ticking(lineOf(made(), things, "garlic"))).toEqual({
      list: [{ type: "Tick", line: "buy: garlic" }],
      house: [],
    });
    expect(ticking(lineOf(made(), things, "lemons"))).toEqual({
      list: [{ type: "Tick", line: "buy: lemon" }],
      house: [{ type: "BuyThing", name: "lemons" }],
    });
    expect(ticking(lineOf(made(), things, "candles"))).toEqual({
      list: [],
      house: [{ type: "BuyThing", name: "candles" }],
    });
  });

  it("[B43] having it back does so in both; ticked twice is ticked once", () => {
    const both = lineOf(made({ ticked: ["buy: lemon"] }), wants("lemons!"), "lemons");
    expect(unticking(both)).toEqual({
      list: [{ type: "Untick", line: "buy: lemon" }],
      house: [{ type: "UnbuyThing", name: "lemons" }],
    });
    const tick = { type: "Tick", line: "a" } as const;
    expect(tickedAfter(tickedAfter([], tick), tick)).toEqual(["a"]);
    expect(tickedAfter(["a", "b"], { type: "Untick", line: "a" })).toEqual(["b"]);
  });
});
