import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import { taskId } from "../../../core/plan/model.ts";
import { respond } from "../../../core/talk/respond.ts";
import { countWords } from "../../../core/talk/speech.ts";
import { evening } from "./supper.ts";
import { bare, cooking, kitchenOf, shopping, talk } from "./list-talk.ts";
import type { Device } from "./list-talk.ts";

const wanted = ({ house: { house } }: Device) =>
  [...house.wanted.values()].map(({ name, boughtAt }) => (boughtAt === null ? name : `${name}, bought`));
const saysAll = (device: Device, ...lines: readonly string[]) => talk(device, lines).said;

describe("putting things on the list", () => {
  it("[C180] it is noted and said back, with a meal and without, with and without a list", () => {
    for (const log of [emptyLog, cooking]) {
      const done = talk(
        bare,
        [
          "add lemons to the list",
          "put kitchen paper on the shopping list",
          "we're out of nutmeg",
          "I need more oil",
        ],
        log,
      );
      expect(done.said).toEqual([
        "Lemons are on the list.",
        "Kitchen paper is on the list.",
        "Nutmeg is on the list.",
        "Oil is on the list.",
      ]);
      expect(wanted(done)).toEqual(["lemons", "kitchen paper", "nutmeg", "oil"]);
    }
  });

  it("[C180] the same thing twice is one line, and that is said", () => {
    const done = talk(bare, ["add lemons to the list", "add a lemon to the list"]);
    expect(done.said[1]).toBe("Lemons are on the list already.");
    expect(wanted(done)).toEqual(["lemons"]);
  });

  it("[C180] what is not for sale is not noted", () => {
    const done = talk(bare, ["we are out of time"], cooking);
    expect(wanted(done)).toEqual([]);
    expect(done.said[0]).toBe("No shop sells that. Say what is missing, like lemons.");
  });

  it("[C181] undo takes back the wish, and so does taking it off the list", () => {
    const lines = [
      "add lemons to the list",
      "undo that",
      "add oil to the list",
      "take oil off the list",
      "undo that",
    ];
    const done = talk(bare, lines, cooking);
    expect(done.said).toEqual([
      "Lemons are on the list.",
      "Undone: lemons are off the list.",
      "Oil is on the list.",
      "Oil is off the list.",
      "Undone: oil is on the list again.",
    ]);
    expect(saysAll(bare, "take lemons off the list")).toEqual(["Lemons are not on the list."]);
  });

  it("[C181] undo means the meal's last deed where that came later", () => {
    const log = evening([102, { type: "FinishTask", task: taskId("lantern-stew/halve") }]);
    const device = talk(bare, ["add lemons to the list"]);
    expect(respond("undo that", kitchenOf(device, 103, log))).toMatchObject({
      house: [],
      list: [],
      orders: [{}],
    });
    expect(respond("undo that", kitchenOf(device, 103, cooking))).toMatchObject({ house: [{}], orders: [] });
  });

  it("[C182] what the made list has to buy for a meal is said, with how much and for which dishes", () => {
    const done = talk(shopping, ["add lemons to the list", "we are out of garlic", "add lemons to the list"]);
    expect(done.said).toEqual([
      "Lemons are on the list already: two, for the soup.",
      "Garlic is on the list already: nine cloves, for the soup and the salad.",
      "Lemons are on the list already: two, for the soup.",
    ]);
    // The list of a meal is this device's alone: the wish is noted for the others.
    expect(wanted(done)).toEqual(["lemons", "garlic"]);
    expect(saysAll(shopping, "take lemons off the list")).toEqual([
      "Lemons are on the list for a meal. Tick it off if you have it.",
    ]);
  });

  it("[C182] what only has to be looked for is not yet on the list", () => {
    expect(saysAll(shopping, "we are out of salt", "we are out of basil")).toEqual([
      "Salt is on the list.",
      "Basil is on the list.",
    ]);
  });
});

describe("what is on the list", () => {
  it("[C183] is read by place in the shop, a breath at a time, with how many are left", () => {
    const said = saysAll(shopping, "what is on the list", "more", "more", "more");
    expect(said).toEqual([
      "Six things to buy. Fruit and vegetables: one cabbage; garlic, nine cloves; four green onions; two lemons; three red onions. More?",
      "Grains, beans and pasta: red lentils, 1 cup. If you like: basil, 1 cup. Look whether there is enough: salt.",
      "That was all.",
      "That was all.",
    ]);
    for (const words of said) expect(countWords(words), words).toBeLessThanOrEqual(25);
  });

  it("[C183] what is wanted besides comes after the places; what is in the bag is not read", () => {
    const done = talk(bare, [
      "add candles to the list",
      "add oil to the list",
      "what do I still have to buy",
    ]);
    expect(done.said[2]).toBe("Two things to buy. Also wanted: candles; oil.");
    expect(saysAll(done, "I have the candles", "what's still on the list")[1]).toBe(
      "One thing to buy. Also wanted: oil.",
    );
    expect(saysAll(done, "I have the candles", "I have the oil", "what is on the list")[2]).toBe(
      "All of it is in the bag.",
    );
    expect(saysAll(bare, "what is on the list")).toEqual([
      'Nothing is on the list. Say "add lemons to the list".',
    ]);
  });
});

describe("ticking by voice", () => {
  it("[C184] puts the line into the bag and says how many are left; the last one is said", () => {
    const done = talk(shopping, ["I have the lemons", "the cabbage is in the bag", "tick off the lentils"]);
    expect(done.said).toEqual([
      "Lemons are in the bag. Five left.",
      "Cabbage is in the bag. Four left.",
      "Red lentils are in the bag. Three left.",
    ]);
    expect(saysAll(done, "I have the garlic", "I have the red onions", "I have the green onions")[2]).toBe(
      "Green onions are in the bag. That was the last one.",
    );
  });

  it("[C184] a thing that the house wants becomes bought, also where a meal takes it too", () => {
    const both = talk(shopping, ["add lemons to the list", "add candles to the list", "I have the lemons"]);
    expect(wanted(both)).toEqual(["lemons, bought", "candles"]);
    expect(both.list.made?.ticked).toEqual(["buy: lemon"]);
    expect(wanted(talk(both, ["candles are in the bag"]))).toEqual(["lemons, bought", "candles, bought"]);
  });

  it("[C185] untick and undo have it back, in the house too", () => {
    const both = talk(shopping, ["add lemons to the list", "I have the lemons"]);
    for (const back of ["untick the lemons", "undo that", "I don't have the lemons yet"]) {
      const done = talk(both, [back]);
      expect([back, done.list.made?.ticked, wanted(done)]).toEqual([back, [], ["lemons"]]);
    }
    expect(saysAll(both, "undo that", "undo that")).toEqual([
      "Undone: lemons are on the list again.",
      "Undone: lemons are off the list.",
    ]);
    expect(saysAll(both, "untick the lemons")).toEqual(["Lemons are on the list again. Six left."]);
  });

  it("[C186] what is not on the list, in the bag already or not in it is answered with one sentence", () => {
    const said = ["I have the candles", "I have the lemons", "I have the lemons", "untick the cabbage"];
    expect(saysAll(shopping, ...said)).toEqual([
      "Candles are not on the list.",
      "Lemons are in the bag. Five left.",
      "Lemons are in the bag already.",
      "Cabbage is not in the bag.",
    ]);
    expect(saysAll(bare, "tick off the lemons")).toEqual(["Lemons are not on the list."]);
  });

  it("[C187] where two lines may be meant it is asked which; the answer ticks that one", () => {
    const done = talk(shopping, ["I have the onions", "the red ones"]);
    expect(done.said[0]).toBe("Which one: green onions or red onions?");
    const chosen = talk(shopping, ["I have the onions", "red onions"]);
    expect(chosen.said[1]).toBe("Red onions are in the bag. Five left.");
    // With one of them in the bag the other is meant.
    expect(saysAll(chosen, "I have the onions")).toEqual(["Green onions are in the bag. Four left."]);
  });
});
