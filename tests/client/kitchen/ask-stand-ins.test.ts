import { signal } from "@preact/signals";
import { describe, expect, it } from "vitest";
import { askStandIns } from "../../../client/kitchen/ask-stand-ins.ts";
import type { Session } from "../../../core/cook/session.ts";
import { dishId, ingredientId } from "../../../core/recipe/model.ts";
import { silentDialogue, type Dialogue, type FoodsAtHand, type Question } from "../../../core/talk/model.ts";
import { foodsWith } from "../../core/talk/foods-at-hand.ts";
import { at, evening, give } from "../../core/talk/supper.ts";
import { clockAt, storeOf } from "./still-page.ts";

const question = (prompt: string): Question => ({
  kind: "confirm",
  intent: { type: "UseInstead", use: null, food: null },
  prompt,
});

/** A page in whose meal so many things are not allowed; what it asks, and what turns it. */
function page(barred: number, minute = 1) {
  const session = signal<Session | null>(null);
  const foods = signal<FoodsAtHand | null>(null);
  const dialogue = signal<Dialogue>(silentDialogue);
  const now = signal(at(minute));
  const clock = clockAt(now);
  const store = storeOf({ session });
  const said: string[] = [];
  const ask = () => {
    const swaps = session.value?.swaps.length ?? 0;
    const prompt = swaps < barred ? `Thing ${swaps + 1}?` : "";
    return { say: prompt, question: prompt === "" ? null : question(prompt) };
  };
  askStandIns(clock, store, foods, dialogue, ask, (sentence) => said.push(sentence));
  return { session, foods, dialogue, said };
}

const begun = evening();
const swapped = give(begun, 2, {
  type: "UseSwap",
  dish: dishId("lantern-stew"),
  ingredient: ingredientId("lemon"),
  swap: 0,
});
const foodsHere = foodsWith(null);
const answered: Dialogue = silentDialogue;

describe("what may stand in, asked as a meal begins", () => {
  it("[C116] once the foods are known; a yes asks for the next, a no for nothing more", () => {
    const { session, foods, dialogue, said } = page(2);
    session.value = begun.session;
    expect(said).toEqual([]);
    foods.value = foodsHere;
    expect([said, dialogue.value.question?.prompt]).toEqual([["Thing 1?"], "Thing 1?"]);
    session.value = swapped.session;
    dialogue.value = answered;
    expect(said).toEqual(["Thing 1?", "Thing 2?"]);
    dialogue.value = answered;
    expect(said).toHaveLength(2);
  });

  it("[C116] what was answered on another device is put away here", () => {
    const { session, foods, dialogue, said } = page(1);
    foods.value = foodsHere;
    session.value = begun.session;
    expect(dialogue.value.question).not.toBeNull();
    session.value = swapped.session;
    expect([dialogue.value.question, said]).toEqual([null, ["Thing 1?"]]);
  });

  it("[C116] not over another question, not where all is allowed, and not later in the evening", () => {
    const busy = page(1);
    const other = { ...silentDialogue, question: question("Another?") };
    busy.dialogue.value = other;
    busy.foods.value = foodsHere;
    busy.session.value = begun.session;
    expect([busy.said, busy.dialogue.value]).toEqual([[], other]);
    busy.dialogue.value = answered;
    expect(busy.said).toEqual(["Thing 1?"]);
    for (const quiet of [page(0), page(1, 30)]) {
      quiet.foods.value = foodsHere;
      quiet.session.value = begun.session;
      expect([quiet.said, quiet.dialogue.value.question]).toEqual([[], null]);
    }
  });
});
