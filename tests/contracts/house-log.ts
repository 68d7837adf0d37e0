import { beforeEach, expect, it } from "vitest";
import type { HouseEvent, HouseHappening } from "../../core/house/events.ts";
import { leftoverId } from "../../core/house/leftover.ts";
import { ratio } from "../../core/units/rational.ts";
import { ok } from "../../core/units/result.ts";
import type { HouseEntry, HouseStore } from "../../server/store/house-store.ts";
import { five } from "./meal-log.ts";

const soup = leftoverId("soup");
const lessened: HouseHappening = { type: "LeftoverLessened", id: soup, servings: ratio(1, 3) };
const eaten: HouseHappening = { type: "LeftoverEaten", id: soup };

/** A command about the house that was carried out, with the events it produced from `seq` on. */
export function doneInHouse(
  command: string,
  seq: number,
  ...happenings: readonly HouseHappening[]
): HouseEntry {
  const events = happenings.map((happening, index): HouseEvent => {
    return { seq: seq + index, at: five, command, happening };
  });
  return { command, receivedAt: five, outcome: { ok: true, seq: seq + happenings.length - 1 }, events };
}

/** The promises of the port `HouseStore`; every adapter keeps all of them. */
export function houseLogContract(open: () => HouseStore): void {
  let store: HouseStore;
  beforeEach(() => {
    store = open();
  });

  it("[L65] an empty log has no events and no outcomes", () => {
    expect(store.load()).toEqual(ok([]));
    expect(store.outcomeOf("c1")).toEqual(ok(null));
  });

  it("[L65] events come back in order, exactly as they went in, and what a command came to is kept", () => {
    const [first, second] = [
      doneInHouse("c1", 1, lessened, eaten),
      doneInHouse("c2", 3, { type: "Undone", undoes: "c1" }),
    ];
    expect(store.append(first)).toEqual(ok(null));
    expect(store.append(second)).toEqual(ok(null));
    const refused = { ok: false, sentence: "There is nothing to undo." } as const;
    expect(store.append({ command: "c3", receivedAt: five, outcome: refused, events: [] })).toEqual(ok(null));
    expect(store.load()).toEqual(ok([...first.events, ...second.events]));
    expect(store.outcomeOf("c1")).toEqual(ok({ ok: true, seq: 2 }));
    expect(store.outcomeOf("c3")).toEqual(ok(refused));
  });

  it("[L66] a command id is recorded once: a second time is thrown and changes nothing", () => {
    store.append(doneInHouse("c1", 1, lessened));
    expect(() => store.append(doneInHouse("c1", 2, eaten))).toThrow();
    expect(store.load()).toMatchObject({ ok: true, value: { length: 1 } });
  });

  it("[L66] a gap or an overlap in the numbers is thrown, and none of the command is kept", () => {
    store.append(doneInHouse("c1", 1, lessened));
    expect(() => store.append(doneInHouse("c2", 3, eaten))).toThrow(/cannot follow/);
    expect(() => store.append(doneInHouse("c3", 1, eaten))).toThrow(/cannot follow/);
    expect(store.load()).toMatchObject({ ok: true, value: { length: 1 } });
    expect(store.outcomeOf("c2")).toEqual(ok(null));
  });
}
