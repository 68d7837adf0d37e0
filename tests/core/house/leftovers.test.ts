import { describe, expect, it } from "vitest";
import { leftoverId } from "../../../core/house/leftover.ts";
import type { HouseOrder } from "../../../core/house/orders.ts";
import { dishId } from "../../../core/recipe/model.ts";
import { days, hours, plus } from "../../../core/units/quantity.ts";
import { ratio } from "../../../core/units/rational.ts";
import { at } from "../cook/supper.ts";
import { afterSupper, give, leftoverIn, refusal, servings, store, supper } from "./house-at.ts";

const eat = (id: string, of: ReturnType<typeof ratio> | null): HouseOrder => ({
  type: "EatLeftover",
  id: leftoverId(id),
  servings: of,
});
const unnamed: HouseOrder = {
  type: "StoreLeftover",
  id: leftoverId("x"),
  dish: null,
  name: "grandmother's pie",
  rest: { kind: "words", words: "half of it" },
  place: "fridge",
};

describe("what is left", () => {
  it("[G10] it has its dish's name, an amount, the moment, and a use-by counted from when it was ready", () => {
    // Source: USDA FSIS, Leftovers and Food Safety: 3 to 4 days in the fridge; the shorter counts.
    expect(leftoverIn(afterSupper([130, store("soup", servings(2))]), "soup")).toEqual({
      id: "soup",
      name: "Tide soup",
      of: { session: "evening-1", dish: "soup" },
      servingsOf: "bowls",
      rest: { kind: "servings", servings: "2/1" },
      place: "fridge",
      storedAt: at(130),
      useBy: plus(at(60), days(3)),
      source: "leftovers",
      isKnown: true,
      heatedAt: null,
    });
  });

  it("[G10] rice keeps one day in the fridge; the freezer has a figure of its own", () => {
    // Source: UK Food Standards Agency and NHS on rice: one day; USDA FSIS: three to four months in the freezer.
    const log = afterSupper([130, store("pilaf", servings(1))], [131, store("soup", servings(1), "freezer")]);
    expect(leftoverIn(log, "pilaf")).toMatchObject({ useBy: plus(at(60), days(1)), source: "rice" });
    expect(leftoverIn(log, "soup")).toMatchObject({ useBy: plus(at(60), days(90)), place: "freezer" });
  });

  it("[G11] what nobody knows is put away under its own words, with the strictest use-by", () => {
    expect(leftoverIn(afterSupper([130, unnamed]), "x")).toMatchObject({
      name: "grandmother's pie",
      of: null,
      rest: { kind: "words", words: "half of it" },
      useBy: plus(at(130), days(1)),
      isKnown: false,
    });
    const strange = leftoverIn(afterSupper([130, store("mystery", servings(1))]), "mystery");
    expect(strange).toMatchObject({ useBy: plus(at(60), days(1)), isKnown: false });
  });

  it("[G12] no more can be put away than was made", () => {
    const log = afterSupper([130, store("soup", servings(5, 2))]);
    const more = { code: "MoreThanMade", name: "Tide soup", servings: "3/2", of: "bowls" };
    expect(refusal(log, 131, store("soup", servings(2), "fridge", "b"))).toEqual(more);
    expect(refusal(log, 131, store("soup", servings(3, 2), "fridge", "b"))).toBeNull();
    expect(refusal(log, 131, store("soup", servings(0), "fridge", "b"))).toEqual({ code: "NoAmount" });
    expect(refusal(log, 131, store("cake", servings(1)))).toEqual({ code: "NoSuchDish", asked: "cake" });
    expect(refusal(log, 131, store("soup", servings(1)))).toEqual({ code: "StoredAlready", name: "soup" });
  });

  it("[G13] what is eaten lessens it exactly, to nothing", () => {
    const log = afterSupper([130, store("soup", servings(2))], [1500, eat("soup", ratio(2, 3))]);
    expect(leftoverIn(log, "soup")?.rest).toEqual({ kind: "servings", servings: "4/3" });
    expect(leftoverIn(give(log, 1600, eat("soup", ratio(4, 3))), "soup")).toBeNull();
    const more = { code: "MoreThanLeft", name: "Tide soup", servings: "4/3", of: "bowls" };
    expect(refusal(log, 1600, eat("soup", ratio(3, 2)))).toEqual(more);
    expect(refusal(log, 1600, eat("soup", ratio(0)))).toEqual({ code: "NoAmount" });
    expect(refusal(log, 1600, eat("pilaf", null))).toEqual({ code: "NoSuchLeftover" });
  });

  it("[G13] a figure for what has only words is refused; all of it can be eaten", () => {
    const log = afterSupper([130, unnamed]);
    expect(refusal(log, 140, eat("x", ratio(1)))).toMatchObject({
      code: "AmountNotKnown",
      words: "half of it",
    });
    expect(leftoverIn(give(log, 140, eat("x", null)), "x")).toBeNull();
  });

  it("[G14] what was thrown away is gone, and undo has it back", () => {
    const log = afterSupper([130, store("soup", servings(2))]);
    const thrown = give(log, 9000, { type: "ThrowAwayLeftover", id: leftoverId("soup") });
    expect(leftoverIn(thrown, "soup")).toBeNull();
    expect(give(thrown, 9001, { type: "UndoLast" }).house).toEqual(log.house);
  });

  it("[G16] what is cooling counts from when it left the heat, and ends when it is put away, eaten up or cold", () => {
    // Source: FDA Food Code 2022, 3-501.14: six hours in all.
    const cool: HouseOrder = { type: "BeginCooling", dish: dishId("soup"), since: at(60) };
    const log = afterSupper([130, cool]);
    const cooling = { session: "evening-1", dish: "soup", name: "Tide soup", since: at(60) };
    expect(log.house.cooling).toEqual([cooling]);
    expect(give(log, 140, store("soup", servings(1))).house.cooling).toEqual([]);
    expect(give(log, 140, { type: "FinishDish", dish: dishId("soup") }).house.cooling).toEqual([]);
    expect(give(log, 140, { type: "EndCooling", dish: dishId("soup") }).house.cooling).toEqual([]);
    expect(refusal(log, 140, { type: "EndCooling", dish: dishId("pilaf") })).toMatchObject({
      code: "NotCooling",
    });
    const late = 60 + hours(6) / 60;
    expect(refusal(log, late, cool)).toBeNull();
    expect(refusal(log, late + 1, cool)).toMatchObject({ code: "CoolingLongAgo" });
  });

  it("[G17] another meal forgets what was said of the one before, but not what is cooling or in the fridge", () => {
    const log = afterSupper(
      [130, { type: "FinishDish", dish: dishId("pilaf") }],
      [131, { type: "SilenceReminders" }],
      [132, { type: "BeginCooling", dish: dishId("soup"), since: at(60) }],
      [133, store("salad", servings(1))],
    );
    expect([...log.house.finished, log.house.isSilenced]).toEqual(["pilaf", true]);
    const next = give(log, 200, {
      type: "NoteMeal",
      made: { ...supper, session: "evening-2", endedAt: null },
    });
    expect([...next.house.finished, next.house.isSilenced]).toEqual([false]);
    expect(next.house.cooling).toEqual(log.house.cooling);
    expect([...next.house.leftovers.keys()]).toEqual(["salad"]);
  });
});
