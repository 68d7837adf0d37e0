import { describe, expect, it } from "vitest";
import { taskId } from "../../../core/plan/model.ts";
import { respond } from "../../../core/talk/respond.ts";
import { foodsWith } from "./foods-at-hand.ts";
import { evening, kitchenAt } from "./supper.ts";
import { sayings, talk } from "./talk.ts";

const foods = foodsWith(null);
const say = (said: string, log = evening()): string => respond(said, { ...kitchenAt(log, 3), foods }).say;

describe("for how many", () => {
  it("[C202] a dish is made for more, its amounts follow, and what does not grow with them is told", () => {
    expect(
      sayings(
        evening(),
        [1, "make the flatbreads for six"],
        [1, "more"],
        [2, "how much flour for the flatbreads"],
        [3, "undo that"],
        [3, "how much flour for the flatbreads"],
      ),
    ).toEqual([
      "Six plates of the flatbreads now; amounts follow. More?",
      'Work by hand grows with the amount, and the plan does not know it: "mix the dough". More?',
      "Three and three quarters cups of flour, in the flatbreads.",
      expect.stringMatching(/^Undone: the other servings\./) as string,
      "Two and a half cups of flour, in the flatbreads.",
    ]);
  });

  it("[C202] all dishes that are not begun are meant where none is named", () => {
    const begun = evening([2, { type: "FinishTask", task: taskId("lantern-stew/halve") }]);
    expect(say("cook for six", begun)).toMatch(
      /^Six plates of the flatbreads now; amounts follow\. The stew is begun and stays\./,
    );
    expect(
      talk(evening(), [1, "we are six tonight"]).log.session?.meal.dishes.map((dish) => dish.yield.servings),
    ).toEqual([6, 6]);
    expect(say("there are four of us")).toBe("Everything is for four already.");
    expect(say("make the soup for three")).toBe(
      "There is no soup in this meal. We have the stew and the flatbreads.",
    );
    expect(say("make the stew for two hundred")).toMatch(/^From one to 100 servings can be made\./);
  });
});

describe("how much there is in the house", () => {
  it("[C203] tells what that is enough for, by weight and by measure, and offers to make so much", () => {
    const kitchen = { ...kitchenAt(evening(), 1), foods };
    const offered = respond("I have only a hundred and fifty grams of lentils", kitchen);
    expect(offered.say).toBe(
      "That is enough for three of the four bowls of the stew. Shall I make it for three?",
    );
    const yes = respond("yes", { ...kitchen, dialogue: offered.dialogue });
    expect(yes.orders).toEqual([{ type: "ChangeServings", dish: "lantern-stew", servings: 3 }]);
    expect(say("I have two hundred grams of lentils")).toBe(
      "That is enough. The stew takes one cup of red lentils.",
    );
    expect(say("I have two cups of flour")).toMatch(/three of the four plates of the flatbreads/);
  });

  it("[C203] asks for which dish, and says where nobody can tell or it is not enough for one", () => {
    expect(say("we have three cloves of garlic")).toBe("For which dish: stew or flatbreads?");
    expect(say("we have three cloves of garlic for the stew")).toMatch(
      /^That is enough for three of the four/,
    );
    expect(say("I only have one winter squash")).toMatch(/^The recipe takes two pounds.*weigh it\./);
    expect(say("I have one teaspoon of lentils")).toMatch(/^That is not enough for one bowl of the stew\./);
    const begun = evening([2, { type: "FinishTask", task: taskId("lantern-stew/halve") }]);
    expect(say("I have half a cup of lentils", begun)).toBe(
      "That is enough for two of the four bowls of the stew. It is begun, so its other amounts stay.",
    );
  });
});
