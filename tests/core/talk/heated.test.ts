import { describe, expect, it } from "vitest";
import type { HouseLog } from "../../../core/house/house.ts";
import { leftoverId } from "../../../core/house/leftover.ts";
import { guidance } from "../../../core/keeping/guidance-table.ts";
import { countWords } from "../../../core/talk/speech.ts";
import { days, plus } from "../../../core/units/quantity.ts";
import { afterSupper, give, servings, store, supper } from "../house/house-at.ts";
import { talk } from "./left-talk.ts";
import { at } from "./supper.ts";

const day = 60 * 24;
/** Three bowls of soup and one of rice in the fridge, one and a half plates of salad in the freezer. */
const full = (): HouseLog =>
  afterSupper(
    [121, store("soup", servings(3))],
    [122, store("pilaf", servings(1))],
    [123, store("salad", servings(3, 2), "freezer")],
  );
const rests = ({ house }: ReturnType<typeof talk>) =>
  [...house.leftovers.values()].map(({ name, rest, heatedAt }) => [
    name,
    rest.kind === "words" ? rest.words : rest.servings,
    heatedAt,
  ]);

describe("warming up", () => {
  it("[C170] that it is being warmed up is noted, with the heat and the time that guidance has", () => {
    // Source: FDA Food Code 2022, 3-403.11: 165 F within two hours.
    expect([guidance.reheatTo.value, guidance.reheatWithin.value]).toEqual([165, 7200]);
    const done = talk(full(), [day, "i am warming up the soup"]);
    expect(done.said).toEqual([
      "Noted as heated: it is not kept again. One hundred sixty-five degrees all through, within two hours.",
    ]);
    expect(rests(done)[0]).toEqual(["Tide soup", "3/1", at(day)]);
  });

  it("[C170] of some servings only those are; the rest stays cold", () => {
    const done = talk(full(), [day, "we are warming up two bowls of the soup"]);
    expect(done.said[0]).toBe(
      "Two bowls noted as heated, one bowl left cold. One hundred sixty-five degrees all through, within two hours.",
    );
    expect(rests(done).filter(([name]) => name === "Tide soup")).toEqual([
      ["Tide soup", "1/1", null],
      ["Tide soup", "2/1", at(day)],
    ]);
    expect(talk(full(), [day, "i am heating up four bowls of the soup"]).said[0]).toMatch(
      /^There is only so much of it to warm up, three bowls/,
    );
  });

  it("[C170] to ask how is a question and notes nothing, and undo takes back what was noted", () => {
    for (const words of ["how do i warm up the soup", "how do i reheat the soup", "how hot must the soup be"])
      expect(rests(talk(full(), [day, words])), words).toEqual(rests(talk(full())));
    const undone = talk(full(), [day, "i am warming up one bowl of the soup"], [day + 1, "undo that"]);
    expect(rests(undone)).toEqual(rests(talk(full())));
  });

  it("[C170] what is past its day is not warmed up, and what was never put away is not noted", () => {
    const old = talk(full(), [day * 5, "i am warming up the soup"]);
    expect(old.said).toEqual(["Not at all: it is past its day. Throw it away."]);
    expect(rests(old)[0]).toEqual(["Tide soup", "3/1", null]);
    expect(talk(full(), [day, "we are heating up the mystery"]).said[0]).toMatch(
      /I note nothing: I know of none that was put away\.$/,
    );
  });

  it("[C171] a second time it is said that it was heated, and when, and the cook is the judge", () => {
    const again = (minute: number) =>
      talk(full(), [day, "i am warming up the soup"], [minute, "i am warming up the soup"]);
    // Five in the afternoon, a day later.
    expect(again(day + 40).said[1]).toBe(
      "It was heated at five o'clock: eat it now, or throw it away. Once is the practice; a second time is yours to judge.",
    );
    expect(again(day + 130).said[1]).toBe(
      "It was heated at five o'clock, over two hours ago: throw it away. How it was kept since, only you can judge.",
    );
    expect(again(day * 2).said[1]).toMatch(/^It was heated yesterday at five o'clock, over two hours ago/);
    expect(again(day * 3).said[1]).toMatch(/^It was heated on Wednesday, over two hours ago/);
    expect(rests(again(day + 130))[0]).toEqual(["Tide soup", "3/1", at(day)]);
  });

  it("[C171] asked about or put back, it was heated: eat it now or throw it away", () => {
    const warm = [day, "i am warming up the soup"] as const;
    const now = "It was heated at five o'clock: eat it now, or throw it away.";
    const ask = (minute: number, words: string) => talk(full(), warm, [minute, words]);
    expect(ask(day + 30, "how long does the soup keep").said[1]).toBe(now);
    expect(ask(day + 30, "how do i warm up the soup").said[1]).toMatch(/^It was heated at five o'clock/);
    expect(ask(day + 30, "put the soup back in the fridge").said[1]).toBe(now);
    expect(ask(day + 30, "put two bowls of the soup in the fridge").said[1]).toBe(now);
    expect(ask(day + 30, "what is left in the fridge").said[1]).toMatch(
      /^Tide pilaf, one bowl, today; tide soup, three bowls, heated at five o'clock: eat it now\.$/,
    );
    expect(ask(day + 200, "what is left in the fridge").said[1]).toMatch(
      /tide soup, three bowls, heated at five o'clock: throw it away/i,
    );
    for (const words of ["put the soup back in the fridge", "put the soup back in the freezer"])
      expect(rests(ask(day + 30, words))[0]).toEqual(["Tide soup", "3/1", at(day)]);
  });

  it("[C171] where some stayed cold, that is meant, and it is said that the other is not", () => {
    const some = [day, "i am warming up one bowl of the soup"] as const;
    const said = (words: string) => talk(full(), some, [day + 30, words]).said[1];
    expect(said("how long does the soup keep")).toMatch(/^Use it by Friday.*Not what was heated before\.$/);
    expect(said("how do i warm up the soup")).toMatch(/once\. Not what was heated before\.$/);
    expect(said("i am warming up the soup")).toMatch(/within two hours\. Not what was heated before\.$/);
    const old = give(full(), day * 5, {
      type: "StoreLeftover",
      id: leftoverId("new"),
      dish: null,
      name: "Tide soup",
      rest: servings(1),
      place: "fridge",
    });
    expect(talk(old, [day * 5 + 1, "how do i warm up the tide soup"]).said[0]).toMatch(
      /Not what is past its day\.$/,
    );
  });

  it("[C172] what was heated is eaten, or thrown away, before the rest of it", () => {
    const some = [day, "i am warming up two bowls of the soup"] as const;
    const eaten = talk(
      full(),
      some,
      [day + 30, "we ate one bowl of the soup"],
      [day + 31, "we ate the rest of the soup"],
    );
    expect(eaten.said.slice(1)).toEqual([
      "One bowl of heated tide soup left, eat it now.",
      "None of the heated tide soup is left. Enjoy it.",
    ]);
    expect(rests(eaten)[0]).toEqual(["Tide soup", "1/1", null]);
    const thrown = talk(full(), some, [day + 30, "throw away the soup"]);
    expect(thrown.said[1]).toBe("Heated tide soup thrown away.");
    expect(rests(thrown)[0]).toEqual(["Tide soup", "1/1", null]);
  });

  it("[C172] what was not heated and is put back is there already; a dish of the meal is put away", () => {
    expect(talk(full(), [day, "put the soup back in the fridge"]).said).toEqual([
      "For me it is still in the fridge: three bowls, by Friday.",
    ]);
    expect(talk(full(), [day * 5, "put the soup back in the fridge"]).said).toEqual([
      "It is past its day. Throw it away.",
    ]);
    expect(talk(full(), [125, "put the mystery back in the fridge"]).said).toEqual([
      "How many bowls are left?",
    ]);
  });

  it("[C172] the same dish of a later meal is another pot, and is put away", () => {
    const heated = give(full(), day, { type: "HeatLeftover", id: leftoverId("soup"), some: null });
    const later = give(heated, day * 2, {
      type: "NoteMeal",
      made: { ...supper, session: "evening-2", begunAt: at(day * 2), endedAt: plus(at(0), days(2)) },
    });
    expect(talk(later, [day * 2 + 5, "put two bowls of the soup in the fridge"]).said[0]).toMatch(
      /^(Two bowls in the fridge|It was out)/,
    );
  });

  it("[C170] no answer is longer than one breath", () => {
    const lines = [
      "i am warming up one and a half bowls of the soup",
      "i am warming up the soup",
      "i am warming up the soup",
      "how long does the soup keep",
      "put the soup back in the fridge",
    ];
    for (const at of [0, 30, 200, day])
      for (const said of talk(full(), ...lines.map((line, index) => [day + at + index, line] as const)).said)
        expect(countWords(said), said).toBeLessThanOrEqual(25);
  });
});
