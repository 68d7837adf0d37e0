import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import { decideHouse, numberedInHouse } from "../../../core/house/decide.ts";
import { appendHouse, emptyHouseLog } from "../../../core/house/house.ts";
import type { HouseLog } from "../../../core/house/house.ts";
import { noDeviceList, tickedAfter } from "../../../core/shop/at-hand.ts";
import type { DeviceList, ListOrder } from "../../../core/shop/at-hand.ts";
import { taskId } from "../../../core/plan/model.ts";
import { grammarFor } from "../../../core/talk/grammar-for.ts";
import { houseTalk } from "../../../core/talk/house-talk.ts";
import { silentDialogue } from "../../../core/talk/model.ts";
import type { Dialogue, Kitchen } from "../../../core/talk/model.ts";
import { respond } from "../../../core/talk/respond.ts";
import { countWords } from "../../../core/talk/speech.ts";
import { suggestions } from "../../../core/talk/suggestions.ts";
import { understand } from "../../../core/talk/understand.ts";
import { isInGrammar } from "../../voice/judge-heard.ts";
import { marketList } from "../shop/market-list.ts";
import { at, evening, houseOf, kitchenAt } from "./supper.ts";

/** What a device has after some talk: the house, its own list, and the talk itself. */
interface Device {
  readonly house: HouseLog;
  readonly list: DeviceList;
  readonly dialogue: Dialogue;
}

const cooking = evening();
let count = 0;

const kitchenOf = ({ house, list, dialogue }: Device, minute: number, log = emptyLog): Kitchen => ({
  ...kitchenAt(log, minute, dialogue),
  utteranceId: `list-${(count += 1)}`,
  household: { log: house, talk: houseTalk, list },
});

const bare: Device = { house: emptyHouseLog, list: noDeviceList, dialogue: silentDialogue };
const shopping: Device = { ...bare, list: { ...marketList, isOpen: true } };

/** The list once the device has done what was ordered. */
function afterOrders(list: DeviceList, orders: readonly ListOrder[], minute: number): DeviceList {
  return orders.reduce<DeviceList>((before, order) => {
    const { made, lastTick } = before;
    if (made === null) throw new Error("a tick without a list");
    const back = lastTick === null || !made.ticked.includes(lastTick.line) ? "Tick" : "Untick";
    const as =
      order.type === "UndoTick" && lastTick !== null ? ({ type: back, line: lastTick.line } as const) : order;
    const tick = order.type === "UndoTick" ? null : { line: order.line, at: at(minute) };
    return { ...before, made: { ...made, ticked: tickedAfter(made.ticked, as) }, lastTick: tick };
  }, list);
}

/** A conversation a minute a line; a meal is on where its log is given. */
function talk(device: Device, lines: readonly string[], log = emptyLog) {
  const said: string[] = [];
  let [now, minute] = [device, 100];
  for (const line of lines) {
    minute += 1;
    const reply = respond(line, kitchenOf(now, minute, log));
    const house = reply.house.reduce((before, order, index) => {
      const command = { id: `t${count}-${index}`, at: at(minute), order };
      const decided = decideHouse(command, before);
      if (!decided.ok) throw new Error(`"${line}" was answered with a refused order: ${decided.error.code}`);
      return appendHouse(before, numberedInHouse(command, before, decided.value));
    }, now.house);
    now = { house, list: afterOrders(now.list, reply.list, minute), dialogue: reply.dialogue };
    said.push(reply.say);
  }
  return { ...now, said };
}

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

describe("when it is heard", () => {
  const isHeard = (sentence: string, device: Device, log = emptyLog) =>
    isInGrammar(sentence, grammarFor(kitchenOf(device, 100, log)));

  it("[C188] adding is listened for while a meal is on or the list is looked at", () => {
    const meal = { ...bare, house: houseOf(cooking) };
    expect(isHeard("add red lentils to the list", meal, cooking)).toBe(true);
    expect(isHeard("add red lentils to the list", bare)).toBe(false);
    expect(isHeard("add lemons to the list", shopping)).toBe(true);
  });

  it("[C188] ticks are listened for while the list is looked at, questions where something is on it", () => {
    const closed = { ...shopping, list: marketList };
    expect(isHeard("i have the cabbage", shopping)).toBe(true);
    expect(isHeard("i have the cabbage", closed)).toBe(false);
    expect(isHeard("what's on the list", closed)).toBe(true);
    expect(isHeard("what's on the list", bare)).toBe(false);
    const lemons = talk({ ...closed, house: houseOf(cooking) }, ["add lemons to the list"], cooking);
    expect(isHeard("take lemons off the list", lemons, cooking)).toBe(true);
    expect(isHeard("take cabbage off the list", lemons, cooking)).toBe(false);
  });

  it("[C188] all of it is understood at any time when it is typed", () => {
    for (const sentence of [
      "i have the cabbage",
      "add quince paste to the list",
      "the lemons are not in the bag",
    ])
      expect(understand(sentence, kitchenOf(bare, 100)).intent, sentence).not.toBeNull();
  });

  it("[C189] what can be said is shown with the list: the next thing, the answers to a question, and undo", () => {
    expect(suggestions(kitchenOf(shopping, 100))).toEqual([
      "I have the cabbage",
      "what is on the list",
      "undo that",
    ]);
    const asked = talk(shopping, ["I have the onions"]);
    expect(suggestions(kitchenOf(asked, 100)).slice(0, 2)).toEqual(["green onions", "red onions"]);
  });

  it("[C189] a page that has not fetched what knows of the list says so, and nothing is ordered", () => {
    const kitchen = { ...kitchenOf(bare, 100), household: null };
    expect(respond("add lemons to the list", kitchen)).toMatchObject({
      say: "I am not ready for that yet. Say it again in a moment.",
      house: [],
      list: [],
    });
  });
});
