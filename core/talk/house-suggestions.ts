import { leftToBuy, listAtHand } from "../shop/at-hand.ts";
import { isThing } from "./answers/list-words.ts";
import { isSomethingLeft } from "./left-names.ts";
import type { Household, Kitchen } from "./model.ts";
import { nameWords } from "./utterance.ts";
import { answersTo } from "./suggestions.ts";

const always = ["what can I say", "set a timer for ten minutes"] as const;

/** What makes sense while no meal is on: of the list where somebody looks at it, of what is left, of anything. */
export function houseSuggestions(kitchen: Kitchen, { list, log: { house } }: Household): readonly string[] {
  const { question } = kitchen.dialogue;
  const answers = question === null ? [] : answersTo(question);
  if (list.isOpen) {
    const hand = listAtHand(list.made, house.wanted);
    const [first] = hand === null ? [] : leftToBuy(hand);
    const tick = first === undefined ? [] : [`I have the ${nameWords(first.name).join(" ")}`];
    const ask = hand === null ? [] : ["what is on the list"];
    const isOn = hand?.lines.some((line) => isThing(line, "lemons")) === true;
    const add = isOn ? [] : ["add lemons to the list"];
    return [...new Set([...answers, ...tick, ...ask, ...add, "undo that"])].slice(0, 5);
  }
  return isSomethingLeft(kitchen, house)
    ? ["what is left in the fridge", ...always]
    : [...always, "how many tablespoons in a quarter cup"];
}
