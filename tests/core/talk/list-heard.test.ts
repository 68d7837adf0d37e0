import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import { grammarFor } from "../../../core/talk/grammar-for.ts";
import { silentDialogue } from "../../../core/talk/model.ts";
import { goods } from "../../../core/shop/goods-table.ts";
import { answerKind } from "../../../core/talk/answer-kind.ts";
import { respondUnsure } from "../../../core/talk/respond-unsure.ts";
import { respond } from "../../../core/talk/respond.ts";
import { suggestions } from "../../../core/talk/suggestions.ts";
import { understand } from "../../../core/talk/understand.ts";
import { isInGrammar } from "../../voice/judge-heard.ts";
import { marketList } from "../shop/market-list.ts";
import { houseOf } from "./supper.ts";
import { bare, cooking, kitchenOf, shopping, talk } from "./list-talk.ts";
import type { Device } from "./list-talk.ts";

describe("what is heard unsurely", () => {
  const torn = (...readings: readonly string[]) =>
    respondUnsure(
      readings.map((words) => words.split(" ")),
      kitchenOf(shopping, 100),
    );

  it("[C190] between two ticks it is asked which, and nothing is ticked; a tick taken back counts as misheard", () => {
    const asked = torn("tick off the lemons", "tick off the lentils");
    expect(asked).toMatchObject({ list: [], house: [] });
    expect(asked.say).toBe("Did you say lemons or lentils? Say the first or the second.");
    const sure = torn("tick off the lemons");
    expect([sure.list.length, answerKind(sure, silentDialogue)]).toEqual([1, "deed"]);
    const ticked = talk(shopping, ["I have the lemons"]);
    expect(answerKind(respond("undo that", kitchenOf(ticked, 103)), silentDialogue)).toBe("taken-back");
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

  it("[C117] while the list is looked at, what most households buy at times is listened for as well", () => {
    for (const sentence of ["we need bread", "put kitchen paper on the list", "add oat milk to the list"]) {
      expect(isHeard(sentence, shopping), sentence).toBe(true);
      expect(isHeard(sentence, { ...bare, house: houseOf(cooking) }, cooking), sentence).toBe(false);
    }
    expect(new Set(goods).size).toBe(goods.length);
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
