import { describe, expect, it } from "vitest";
import { taskId } from "../../../core/plan/model.ts";
import { understand } from "../../../core/talk/understand.ts";
import { evening, kitchenAt } from "./supper.ts";
import { sayings, talk } from "./talk.ts";

const inHand = (task: string) => evening([1, { type: "ChooseTask", task: taskId(task) }]);

describe("amounts changed while cooking", () => {
  it.each([
    ["i used three cloves of garlic", "used", "3/1 clove", null],
    ["please make it two tablespoons of lemon juice", "wanted", "2/1 tbsp", null],
    ["make that half an onion", "wanted", "1/2 piece", null],
    ["make it half an onion", "wanted", "1/2 piece", null],
    ["make it half the onion", "wanted", null, "1/2"],
    ["i took two and a half cups of water", "used", "5/2 cup", null],
    ["twice the cumin", "wanted", null, "2/1"],
    ["double the cumin", "wanted", null, "2/1"],
    ["half the garlic", "wanted", null, "1/2"],
    ["three times the garlic", "wanted", null, "3/1"],
  ])("[C123] %s", (said, how, much, times) => {
    const { intent } = understand(said, kitchenAt(evening(), 1));
    const amount = intent?.type === "ChangeAmount" ? intent.amount : null;
    expect(intent).toMatchObject({ type: "ChangeAmount", how, times });
    expect(amount === null ? null : `${amount.high} ${amount.unit}`).toBe(much);
  });

  it("[C124] is told with the new amount and the old one, and later answers follow", () => {
    expect(
      sayings(
        evening(),
        [1, "make it three tablespoons of lemon juice in the stew"],
        [2, "how much lemon juice in the stew"],
        [3, "undo that"],
        [4, "how much lemon juice in the stew"],
      ),
    ).toEqual([
      "Three tablespoons of lemon juice in the stew, instead of two tablespoons.",
      "Three tablespoons of lemon juice, in the stew.",
      expect.stringMatching(/^Undone: the other amount\. /),
      "Two tablespoons of lemon juice, in the stew.",
    ]);
    expect(sayings(evening(), [1, "twice the cumin"], [2, "how much cumin in all"])).toEqual([
      "Three teaspoons of ground cumin in the stew, instead of one and a half teaspoons.",
      "Three teaspoons of ground cumin, in the stew.",
    ]);
  });

  it("[C125] the dish in hand is meant, and what was used is meant of its step; else it is asked which dish", () => {
    const { replies, log } = talk(inHand("lantern-stew/chop"), [2, "i used three cloves of garlic"]);
    expect(replies[0]?.say).toBe(
      "Three cloves of garlic in this step, instead of two cloves. Five cloves in all.",
    );
    const stew = log.session?.meal.dishes[0];
    expect(stew?.ingredients.find(({ id }) => id === "garlic")?.amount).toMatchObject({ high: "5/1" });
    expect(sayings(evening(), [1, "make it three cups of water"], [1, "the stew"])).toEqual([
      "In which dish: stew or flatbreads?",
      "That is the amount already: three cups of water.",
    ]);
  });

  it("[C125] what of it has still to go in is told where some is in already", () => {
    const chopped = evening([4, { type: "FinishTask", task: taskId("lantern-stew/chop") }]);
    expect(sayings(chopped, [5, "make it five cloves of garlic in the stew"])).toEqual([
      "Five cloves of garlic in the stew, instead of four cloves. Three cloves still to go in.",
    ]);
  });

  it.each([
    ["make it zero cups of water in the stew", "That is no amount. Say how much, like two tablespoons."],
    [
      "make it three cloves of lemon juice in the stew",
      "I cannot take that: three cloves of lemon juice. So far it is two tablespoons.",
    ],
    [
      "make it fifty cups of water in the stew",
      "I cannot take that: fifty cups of water. So far it is three cups.",
    ],
    ["make it -2 cups of water in the stew", null],
    ["twice the pepper", "The recipe has black pepper to taste. Say how much, like half a teaspoon."],
    ["make it two cups of saffron", "There is no saffron in this meal. This step takes winter squash."],
    ["make it two cups of flour in the stew", "That does not go in there. It goes into the flatbreads."],
  ])("[C126] %s is refused with a sentence", (said, sentence) => {
    const { replies } = talk(evening(), [1, said]);
    expect(replies[0]?.orders).toEqual([]);
    expect(replies[0]?.say).toMatch(sentence === null ? /^I did not get that\./ : sentence);
  });
});
