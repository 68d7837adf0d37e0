import { signal } from "@preact/signals";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { createBuyingDesk } from "../../../client/kitchen/buying-desk.ts";
import type { BuyingDesk } from "../../../client/kitchen/buying-model.ts";
import { createHouseKeeper } from "../../../client/kitchen/house-keeper.ts";
import type { HouseKeeper } from "../../../client/kitchen/house-keeper.ts";
import type { Session } from "../../../core/cook/session.ts";
import { at } from "../../core/cook/supper.ts";
import { supper } from "../../core/house/house-at.ts";
import { handLine, Shelf } from "./house-line.ts";
import type { HandLine } from "./house-line.ts";

const now = signal(at(120));
let hand: HandLine;
let remarks: string[];
let told: string[];
let desk: BuyingDesk;
let open: HouseKeeper[];

function page(): HouseKeeper {
  const keeper = createHouseKeeper({
    clock: { now, read: () => now.value },
    meal: { session: signal<Session | null>(null) },
    line: hand.line,
    buying: async () => desk,
    tell: (sentence) => told.push(sentence),
    remark: (sentence) => remarks.push(sentence),
  });
  open.push(keeper);
  return keeper;
}

const settled = () => new Promise((resolve) => setImmediate(resolve));

beforeEach(async () => {
  Object.defineProperty(globalThis, "localStorage", { value: new Shelf(), configurable: true });
  now.value = at(120);
  hand = handLine(() => now.value);
  hand.household.note(supper);
  hand.join();
  [remarks, told, open] = [[], [], []];
  desk = createBuyingDesk(
    () => "list",
    () => now.value,
  );
});
afterEach(() => {
  for (const keeper of open) keeper.close();
  Reflect.deleteProperty(globalThis, "localStorage");
});

describe("reminders on a device", () => {
  it("[T34] each is said once, and stands on the screen as long as it counts", async () => {
    const keeper = page();
    await settled();
    expect(remarks).toEqual([]);
    for (const minute of [140, 141, 142]) now.value = at(minute);
    expect(remarks).toEqual([expect.stringMatching(/^Half an hour left/)]);
    expect(keeper.due.value).toHaveLength(1);
    now.value = at(160);
    expect(remarks).toEqual([expect.anything(), expect.stringMatching(/^Ten minutes left/)]);
    now.value = at(180);
    expect(keeper.due.value).toEqual([]);
    expect(remarks).toHaveLength(2);
  });

  it("[T34] loaded again it says nothing a second time, but what came up while it was closed", async () => {
    const before = page();
    await settled();
    now.value = at(140);
    before.close();
    const after = page();
    await settled();
    expect(remarks).toHaveLength(1);
    after.close();
    now.value = at(165);
    page();
    await settled();
    expect(remarks).toEqual([expect.anything(), expect.stringMatching(/^Ten minutes left/)]);
  });

  it("[T31] silenced on one device it is silent on the other", async () => {
    const [tablet, phone] = [page(), page()];
    await settled();
    tablet.give([{ type: "SilenceReminders" }]);
    await settled();
    expect(phone.house.value.isSilenced).toBe(true);
    now.value = at(145);
    expect(remarks).toEqual([]);
  });
});
