import { signal } from "@preact/signals";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { createBuyingDesk } from "../../../client/kitchen/buying-desk.ts";
import type { BuyingDesk } from "../../../client/kitchen/buying-model.ts";
import { createHouseKeeper } from "../../../client/kitchen/house-keeper.ts";
import type { HouseKeeper } from "../../../client/kitchen/house-keeper.ts";
import type { Session } from "../../../core/cook/session.ts";
import { listAtHand, ownLine } from "../../../core/shop/at-hand.ts";
import { at } from "../../core/cook/supper.ts";
import { marketList } from "../../core/shop/market-list.ts";
import { handLine, Shelf } from "./house-line.ts";
import type { HandLine } from "./house-line.ts";

interface Device {
  readonly desk: BuyingDesk;
  readonly keeper: HouseKeeper;
}

const now = signal(at(10));
let hand: HandLine;
let told: string[];
let open: HouseKeeper[];

/** What this browser keeps of a list with things written on it by hand, as it was before the house kept them. */
function keepList(own: readonly string[], ticked: readonly string[]): void {
  const wanted = { meals: [], house: "" };
  const kept = { id: "old", ...marketList.made, wanted, mistakes: [], own, ticked };
  localStorage.setItem("stovecall.buying", JSON.stringify(kept));
}

const deskOf = (): BuyingDesk =>
  createBuyingDesk(
    () => "list",
    () => now.value,
  );

function page(desk = deskOf()): Device {
  const keeper = createHouseKeeper({
    clock: { now, read: () => now.value },
    meal: { session: signal<Session | null>(null) },
    line: hand.line,
    buying: async () => desk,
    tell: (sentence) => told.push(sentence),
    remark: () => undefined,
  });
  open.push(keeper);
  return { desk, keeper };
}

/** Another browser, with a store of its own. */
function otherBrowser(): void {
  Object.defineProperty(globalThis, "localStorage", { value: new Shelf(), configurable: true });
}

const settled = () => new Promise((resolve) => setImmediate(resolve));
const shown = ({ desk, keeper }: Device) =>
  (listAtHand(desk.kept.value, keeper.house.value.wanted)?.lines ?? [])
    .filter(({ place }) => place === "also wanted")
    .map(({ name, isTicked }) => (isTicked ? `${name}, ticked` : name));

beforeEach(() => {
  otherBrowser();
  now.value = at(10);
  hand = handLine(() => now.value);
  [told, open] = [[], []];
});
afterEach(() => {
  for (const keeper of open) keeper.close();
  Reflect.deleteProperty(globalThis, "localStorage");
});

describe("what was written on a list by hand", () => {
  it("[N117] goes over to the house once, ticked as it was", async () => {
    keepList(["kitchen paper", "candles"], [ownLine("candles"), "buy: lemon"]);
    hand.join();
    const tablet = page();
    await settled();
    expect(shown(tablet)).toEqual(["kitchen paper", "candles, ticked"]);
    expect(tablet.desk.kept.value).toMatchObject({ own: [], ticked: ["buy: lemon"] });
    expect([...hand.household.house().wanted.values()].map(({ name }) => name)).toEqual([
      "kitchen paper",
      "candles",
    ]);
    expect(hand.sent()).toBe(3);
    tablet.keeper.close();
    const again = page();
    await settled();
    expect([shown(again), hand.sent(), told]).toEqual([["kitchen paper", "candles, ticked"], 3, []]);
  });

  it("[N117] while the server is away it is on the list all the same, and waits", async () => {
    keepList(["kitchen paper"], []);
    hand.cut();
    const tablet = page();
    await settled();
    expect([shown(tablet), tablet.keeper.waiting.value]).toEqual([["kitchen paper"], 1]);
    hand.join();
    await settled();
    await settled();
    expect([...hand.household.house().wanted.keys()]).toEqual(["kitchen paper"]);
    expect(shown(tablet)).toEqual(["kitchen paper"]);
  });

  it("[N119] before the house is there it stays on the list of the device, and goes over with it", async () => {
    keepList([], []);
    const desk = deskOf();
    desk.write("candles");
    expect(listAtHand(desk.kept.value, new Map())?.lines.at(-3)?.name).toBe("candles");
    expect(JSON.parse(localStorage.getItem("stovecall.buying") ?? "")).toMatchObject({ own: ["candles"] });
    hand.join();
    const tablet = page(desk);
    await settled();
    expect(desk.kept.value?.own).toEqual([]);
    expect(shown(tablet)).toEqual(["candles"]);
  });
});

describe("one list on several devices", () => {
  it("[N118] a wish is on the list of each, and what one has bought is in the bag on all", async () => {
    hand.join();
    const tablet = page();
    otherBrowser();
    const phone = page();
    await settled();
    tablet.keeper.give([{ type: "WantThing", name: "lemons" }]);
    await settled();
    expect([shown(tablet), shown(phone)]).toEqual([["lemons"], ["lemons"]]);
    phone.keeper.give([{ type: "BuyThing", name: "lemons" }]);
    await settled();
    expect([shown(tablet), shown(phone)]).toEqual([["lemons, ticked"], ["lemons, ticked"]]);
  });

  it("[N118] the ticks of a made list are the device's own, and the last of them can be taken back", async () => {
    keepList([], []);
    hand.join();
    const { desk, keeper } = page();
    await settled();
    const lemon = "buy: lemon";
    keeper.give([], [{ type: "Tick", line: lemon }]);
    keeper.give([], [{ type: "Tick", line: "buy: garlic" }]);
    expect(desk.device.value.lastTick).toEqual({ line: "buy: garlic", at: at(10) });
    keeper.give([], [{ type: "UndoTick" }]);
    expect(desk.device.value).toMatchObject({ made: { ticked: [lemon] }, lastTick: null });
    keeper.give([], [{ type: "Untick", line: lemon }]);
    keeper.give([], [{ type: "UndoTick" }]);
    expect(desk.kept.value?.ticked).toEqual([lemon]);
  });
});
