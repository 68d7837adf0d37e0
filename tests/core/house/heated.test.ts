import { describe, expect, it } from "vitest";
import type { HouseLog } from "../../../core/house/house.ts";
import { leftoverId } from "../../../core/house/leftover.ts";
import type { HouseOrder } from "../../../core/house/orders.ts";
import { parseHouseEvent } from "../../../core/house/parse.ts";
import { remindersAt } from "../../../core/house/reminders.ts";
import { isToEat, standingOf } from "../../../core/house/standing.ts";
import { guidance } from "../../../core/keeping/guidance-table.ts";
import { countWords } from "../../../core/talk/speech.ts";
import { hours } from "../../../core/units/quantity.ts";
import { ratio } from "../../../core/units/rational.ts";
import { at } from "../cook/supper.ts";
import { afterSupper, give, leftoverIn, refusal, servings, store, supper } from "./house-at.ts";

const heat = (id: string, count: ReturnType<typeof ratio> | null = null): HouseOrder => ({
  type: "HeatLeftover",
  id: leftoverId(id),
  some: count === null ? null : { servings: count, as: leftoverId("warm") },
});
const day = 60 * 24;
const full = (): HouseLog => afterSupper([130, store("soup", servings(3))]);
const said = (log: HouseLog, minute: number) =>
  remindersAt(log.house, null, at(minute)).map(({ say }) => say);

describe("what is heated", () => {
  it("[G18] all of it: it is the same entry, heated, and to be eaten within two hours", () => {
    // Source: USDA FSIS, Leftovers and Food Safety: two hours at most out of the cold.
    expect(guidance.outAtMost.value).toBe(hours(2));
    const before = leftoverIn(full(), "soup");
    const log = give(full(), day, heat("soup"));
    expect(leftoverIn(log, "soup")).toEqual({ ...before, heatedAt: at(day), useBy: at(day + 120) });
    expect(log.house.leftovers.size).toBe(1);
  });

  it("[G18] some of it: only those servings leave the rest, which stays cold with its own day", () => {
    const before = leftoverIn(full(), "soup");
    const log = give(full(), day, heat("soup", ratio(3, 2)));
    expect(leftoverIn(log, "soup")).toEqual({ ...before, rest: { kind: "servings", servings: "3/2" } });
    expect(leftoverIn(log, "warm")).toEqual({
      ...before,
      id: "warm",
      rest: { kind: "servings", servings: "3/2" },
      heatedAt: at(day),
      useBy: at(day + 120),
    });
    // All of it said as a figure is all of it.
    const all = give(full(), day, heat("soup", ratio(3)));
    expect([leftoverIn(all, "soup")?.heatedAt, leftoverIn(all, "warm")]).toEqual([at(day), null]);
  });

  it("[G18] it never keeps longer for having been heated, nor with rice for longer than its day", () => {
    const log = afterSupper([130, store("pilaf", servings(2))]);
    const useBy = leftoverIn(log, "pilaf")?.useBy ?? at(0);
    const late = give(log, 60 + day - 30, heat("pilaf"));
    expect(leftoverIn(late, "pilaf")).toMatchObject({ useBy, heatedAt: at(60 + day - 30) });
  });

  it("[G18] undo makes it cold again", () => {
    for (const order of [heat("soup"), heat("soup", ratio(1))]) {
      const log = give(full(), day, order);
      expect(give(log, day + 1, { type: "UndoLast" }).house).toEqual(full().house);
    }
  });

  it("[G19] a second time is refused with a sentence; so is more than is cold, and a figure for words", () => {
    const log = give(full(), day, heat("soup", ratio(1)));
    expect(refusal(log, day + 5, heat("warm"))).toEqual({ code: "HeatedAlready", name: "Tide soup" });
    expect(refusal(log, day + 5, heat("soup", ratio(1)))).toMatchObject({ code: "StoredAlready" });
    expect(refusal(full(), day, heat("soup", ratio(4)))).toMatchObject({
      code: "MoreThanCold",
      servings: "3/1",
    });
    expect(refusal(full(), day, heat("soup", ratio(0)))).toEqual({ code: "NoAmount" });
    expect(refusal(full(), day, heat("cake"))).toEqual({ code: "NoSuchLeftover" });
    const words = afterSupper([130, store("soup", { kind: "words", words: "half of it" })]);
    expect(refusal(words, day, heat("soup", ratio(1)))).toMatchObject({ code: "HeatAllOfIt" });
    expect(refusal(words, day, heat("soup"))).toBeNull();
  });

  it("[G19] it is not put away a second time, until it is said what became of it", () => {
    const log = give(full(), day, heat("soup"));
    expect(refusal(log, day + 60, store("soup", servings(1), "fridge", "again"))).toEqual({
      code: "NotKeptAgain",
      name: "Tide soup",
    });
    const named: HouseOrder = {
      type: "StoreLeftover",
      id: leftoverId("x"),
      dish: null,
      name: "tide SOUP",
      rest: servings(1),
      place: "fridge",
    };
    expect(refusal(log, day + 60, named)).toMatchObject({ code: "NotKeptAgain" });
    const gone = give(log, day + 60, { type: "EatLeftover", id: leftoverId("soup"), servings: null });
    expect(refusal(gone, day + 61, store("soup", servings(1), "fridge", "again"))).toBeNull();
    // The same dish of another evening is another pot.
    const next = give(log, day + 70, { type: "NoteMeal", made: { ...supper, session: "evening-2" } });
    expect(refusal(next, day + 71, store("soup", servings(1), "fridge", "new"))).toBeNull();
  });

  it("[G20] two hours after it was heated what is left of it goes: said once, and only where nobody has said", () => {
    const log = give(full(), day, heat("soup"));
    const goes = ["The tide soup was heated two hours ago; what is left of it goes."];
    expect([119, 120, 149, 150].map((minute) => said(log, day + minute))).toEqual([[], goes, goes, []]);
    expect(new Set(remindersAt(log.house, null, at(day + 125)).map(({ key }) => key)).size).toBe(1);
    expect(countWords(goes[0] ?? "")).toBeLessThanOrEqual(25);
    for (const type of ["EatLeftover", "ThrowAwayLeftover"] as const) {
      const id = leftoverId("soup");
      const order: HouseOrder = type === "EatLeftover" ? { type, id, servings: null } : { type, id };
      expect(said(give(log, day + 90, order), day + 125)).toEqual([]);
    }
    expect(said(give(log, day + 1, { type: "UndoLast" }), day + 125)).toEqual([]);
  });

  it("[G20] how it stands with it follows from the clock, and what was heated counts as food for no later day", () => {
    const log = give(full(), day, heat("soup", ratio(1)));
    const standing = (id: string, minute: number) => {
      const leftover = leftoverIn(log, id);
      return leftover === null ? null : standingOf(leftover, at(minute));
    };
    expect([standing("warm", day + 120), standing("warm", day + 121)]).toEqual(["heated", "heated-long"]);
    expect([standing("soup", day + 120), standing("soup", day * 4)]).toEqual(["good", "spent"]);
    const frozen = leftoverIn(afterSupper([130, store("soup", servings(1), "freezer")]), "soup");
    expect(frozen === null ? null : standingOf(frozen, at(day * 100))).toBe("past-best");
    const heated = give(afterSupper([130, store("soup", servings(1), "freezer")]), day * 100, heat("soup"));
    const thawed = leftoverIn(heated, "soup");
    // What was past its best in the freezer is hot now: eat it now, and no reckoning from the freezer's days.
    expect(
      thawed === null ? null : [standingOf(thawed, at(day * 100 + 30)), isToEat(thawed, at(day * 100))],
    ).toEqual(["heated", false]);
  });

  it("[G18] logs from before it could be heated are read as they were written", () => {
    const [, , stored] = full().events;
    const old = JSON.parse(JSON.stringify(stored)) as unknown;
    expect(JSON.stringify(old)).not.toContain("heatedAt");
    expect(parseHouseEvent(old)).toEqual({ ok: true, value: stored });
  });
});
