import { describe, expect, it } from "vitest";
import { appendHouse } from "../../../core/house/house.ts";
import type { HouseLog } from "../../../core/house/house.ts";
import { emptyLog } from "../../../core/cook/fold.ts";
import { taskId } from "../../../core/plan/model.ts";
import { noDeviceList } from "../../../core/shop/at-hand.ts";
import { houseTalk } from "../../../core/talk/house-talk.ts";
import { silentDialogue } from "../../../core/talk/model.ts";
import type { Kitchen } from "../../../core/talk/model.ts";
import { respond } from "../../../core/talk/respond.ts";
import { countWords } from "../../../core/talk/speech.ts";
import { grammarFor } from "../../../core/talk/grammar-for.ts";
import { dishId } from "../../../core/recipe/model.ts";
import { days, hours, plus } from "../../../core/units/quantity.ts";
import { afterSupper, servings, store } from "../house/house-at.ts";
import { kitchenOver, talk } from "./left-talk.ts";
import { at, evening, kitchenAt } from "./supper.ts";

const rests = ({ house }: ReturnType<typeof talk>) =>
  [...house.leftovers.values()].map(({ name, place, rest, useBy }) => [
    name,
    place,
    rest.kind === "words" ? rest.words : rest.servings,
    useBy,
  ]);

describe("putting away", () => {
  it("[C110] two servings of a dish go in the fridge, with the day until which they keep", () => {
    // The supper was on a Tuesday, 1 January 2030. Source: USDA FSIS: three days, the shorter of "3 to 4".
    const done = talk(afterSupper(), [130, "put two servings of the soup in the fridge"]);
    expect(done.said).toEqual(["Two bowls in the fridge, of soup. Use it by Friday."]);
    expect(rests(done)).toEqual([["Tide soup", "fridge", "2/1", plus(at(60), days(3))]]);
  });

  it("[C110] what is left is asked after where it goes; the answer alone will do", () => {
    const done = talk(afterSupper(), [125, "there are two bowls of the soup left"], [126, "the freezer"]);
    expect(done.said).toEqual([
      "Two bowls of soup left. Into the fridge or the freezer?",
      "Two bowls in the freezer, of soup. Use it within ninety days.",
    ]);
  });

  it("[C110] of what was eaten the rest is put away, exactly", () => {
    const done = talk(
      afterSupper(),
      [125, "we ate two and a half servings of the soup"],
      [126, "the fridge"],
    );
    expect(done.said[0]).toBe("One and a half bowls of soup left. Into the fridge or the freezer?");
    expect(rests(done)[0]?.slice(0, 3)).toEqual(["Tide soup", "fridge", "3/2"]);
  });

  it("[C110] how much is asked where it was not said, and which dish", () => {
    const much = talk(afterSupper(), [125, "put the rest of the soup in the fridge"], [126, "two"]);
    expect(much.said[0]).toBe("How many bowls are left?");
    expect(rests(much)[0]?.slice(0, 3)).toEqual(["Tide soup", "fridge", "2/1"]);
    const which = talk(afterSupper(), [125, "we ate three"], [126, "tide salad"]);
    expect(which.said).toEqual([
      "Which one: Tide soup, Tide pilaf, Tide salad or Tide mystery?",
      "Nothing is left of the salad.",
    ]);
    expect([...which.house.finished]).toEqual(["salad"]);
  });

  it("[C110] more than there can be is refused with a sentence", () => {
    const done = talk(afterSupper(), [125, "put five servings of the soup in the fridge"]);
    expect(done.said).toEqual([
      "There can be four bowls at most left of this: Tide soup. Say how much there is.",
    ]);
    expect(done.house.leftovers.size).toBe(0);
  });

  it("[C113] what stood out for over two hours is named first", () => {
    // Source: USDA FSIS, Leftovers and Food Safety: two hours at most.
    const done = talk(afterSupper(), [181, "put two servings of the soup in the fridge"]);
    expect(done.said[0]).toMatch(
      /^It was out for over two hours: unless you kept it hot or cold, throw it away\./,
    );
    expect(talk(afterSupper(), [180, "put two servings of the soup in the fridge"]).said[0]).not.toMatch(
      /over two/,
    );
  });

  it("[C113] of what is not known it is said that it is not", () => {
    expect(talk(afterSupper(), [125, "put one serving of the mystery in the fridge"]).said).toEqual([
      "One bowl in the fridge, of mystery. Use it by tomorrow. I do not know all that is in it.",
    ]);
  });
});

describe("what is in the fridge", () => {
  const full = () =>
    afterSupper(
      [121, store("soup", servings(2))],
      [122, store("pilaf", servings(1))],
      [123, store("salad", servings(3, 2), "freezer")],
    );

  it("[C111] the oldest use-by comes first; what is past it is to be thrown away", () => {
    expect(talk(full(), [130, "what is left in the fridge"]).said).toEqual([
      "Tide pilaf, one bowl, by tomorrow; tide soup, two bowls, by Friday.",
    ]);
    const later = talk(full(), [24 * 60 * 2, "what is left in the fridge"]).said;
    expect(later[0]).toBe(
      "Tide pilaf, one bowl, past its day: throw it away; tide soup, two bowls, by tomorrow.",
    );
    expect(talk(full(), [130, "what is left in the freezer"]).said[0]).toMatch(
      /^Tide salad, one and a half plates/,
    );
    // Frozen at 0 F it stays safe, only its taste suffers. Source: USDA FSIS, Freezing and Food Safety (from memory).
    expect(talk(full(), [60 * 24 * 100, "what is left in the freezer"]).said[0]).toMatch(
      /past its best: use it soon/,
    );
    expect(talk(full(), [60 * 24 * 100, "how do i warm up the salad"]).said[0]).toMatch(
      /degrees all through/,
    );
    expect(talk(afterSupper(), [130, "what is left in the fridge"]).said).toEqual([
      "I know of nothing that is left in the fridge.",
    ]);
  });

  it("[C112] it is eaten by and by, thrown away, and had back", () => {
    const done = talk(
      full(),
      [1500, "we ate one serving of the soup"],
      [1501, "we ate the rest of the soup"],
      [1502, "throw away the pilaf"],
      [1503, "undo that"],
    );
    expect(done.said).toEqual([
      "One bowl of tide soup left, use it by Friday.",
      "None of the tide soup is left. Enjoy it.",
      "Tide pilaf thrown away.",
      "Undone: it is back again.",
    ]);
    expect([...done.house.leftovers.keys()]).toEqual(["pilaf", "salad"]);
  });

  it("[C112] undo means the meal's last deed where that came later", () => {
    const log = evening([4, { type: "FinishTask", task: taskId("lantern-stew/halve") }]);
    const at2 = (minute: number, house: HouseLog) => ({
      ...kitchenAt(log, minute),
      household: { log: house, talk: houseTalk, list: noDeviceList },
    });
    const early = appendHouse(afterSupper(), []);
    expect(respond("undo that", at2(6, early)).orders).toEqual([{ type: "UndoLast" }]);
    const stored = afterSupper([125, store("soup", servings(1))]);
    const reply = respond("undo that", at2(130, stored));
    expect([reply.orders, reply.house]).toEqual([[], [{ type: "UndoLast" }]]);
  });

  it("[C114] how long it keeps, and whose figure that is", () => {
    // Sources: USDA FSIS, Leftovers and Food Safety; UK Food Standards Agency on rice.
    const asked = (dish: string) => talk(afterSupper(), [125, `how long does the ${dish} keep`]).said[0];
    expect(asked("soup")).toBe("Three days in the fridge, by the USDA; three months in the freezer.");
    expect(asked("pilaf")).toMatch(/^One day in the fridge, by Britain's food agency/);
    expect(asked("mystery")).toBe(
      "I do not know what is in it, so by the strictest figure: one day in the fridge.",
    );
  });

  it("[C114] it is heated to 165 F all through, once; what is past its day is not", () => {
    // Source: FDA Food Code 2022, 3-403.11: 165 F within two hours.
    const asked = (minute: number) => talk(full(), [minute, "how do i warm up the soup"]).said;
    expect(asked(130)).toEqual([
      "One hundred sixty-five degrees all through, within two hours; measure the middle. Warm only what you eat, once.",
    ]);
    expect(asked(60 * 24 * 5)).toEqual(["Not at all: it is past its day. Throw it away."]);
  });
});

describe("cooling", () => {
  it("[C110] what is cooling down counts from the heat, and is cold when the cook says so", () => {
    const done = talk(afterSupper(), [90, "the soup is cooling down"], [200, "the soup is cold now"]);
    expect(done.said).toEqual([
      "I will ask after the soup: seventy degrees within two hours of the heat, forty-one within six.",
      "Good. Cover it, and put it in the fridge.",
    ]);
    const begun = talk(afterSupper(), [90, "the soup is cooling down"]);
    expect(begun.house.cooling).toMatchObject([{ dish: "soup", since: at(60) }]);
    const late = 60 + hours(6) / 60 + 1;
    expect(talk(afterSupper(), [late, "the soup is cooling down"]).said[0]).toMatch(/thrown away\.$/);
  });
});

describe("when it is heard", () => {
  const heard = (kitchen: Kitchen) => grammarFor(kitchen).rules.has("PutAway");

  it("[C115] it is listened for when a dish is over or something is in the fridge", () => {
    expect(heard(kitchenAt(evening(), 3))).toBe(false);
    const gone = evening([5, { type: "LeaveOutDish", dish: dishId("griddle-breads") }]);
    expect(heard(kitchenAt(gone, 8))).toBe(true);
    expect(heard(kitchenAt(emptyLog, 8))).toBe(false);
    expect(heard(kitchenOver(afterSupper(), 130, silentDialogue))).toBe(true);
  });

  it("[C115] a page that has not fetched what knows of the fridge says so, and nothing is ordered", () => {
    const kitchen = { ...kitchenAt(evening(), 3), household: null };
    const reply = respond("what is left in the fridge", kitchen);
    expect(reply).toMatchObject({ house: [], orders: [] });
    expect(reply.say).toBe("I am not ready for that yet. Say it again in a moment.");
  });

  it("[C110] no answer is longer than one breath", () => {
    const lines = [
      "put two servings of the soup in the fridge",
      "how long does the soup keep",
      "what is left in the fridge",
      "no reminders about leftovers",
    ];
    for (const said of talk(afterSupper(), ...lines.map((line, index) => [125 + index, line] as const)).said)
      expect(countWords(said), said).toBeLessThanOrEqual(25);
  });
});
