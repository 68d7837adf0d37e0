import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import type { Note } from "../../../core/next-time/note.ts";
import { dishId, ingredientId } from "../../../core/recipe/model.ts";
import { openNote } from "../../../core/talk/answers/next-time.ts";
import { respond } from "../../../core/talk/respond.ts";
import { evening, give, kitchenAt, supper } from "./supper.ts";
import { sayings, talk } from "./talk.ts";

const stew = dishId("lantern-stew");
const twice: Note = {
  dish: stew,
  change: { kind: "times", ingredient: ingredientId("lemon"), times: "2/1" },
  from: "asked",
};
const longer: Note = {
  dish: stew,
  change: { kind: "words", words: "cook it longer", ingredient: null },
  from: "asked",
};
const begun = give(emptyLog, 0, { type: "BeginMeal", meal: supper, serveAt: null, notes: [twice, longer] });
const askTwice = "You noted for this time: twice the lemon juice in the stew. Do that tonight?";
const askLonger = "You noted for this time: cook it longer, for the stew. Will you?";

describe("next time, by voice", () => {
  it.each([
    ["next time twice the lemon juice in the stew", "twice the lemon juice in the stew"],
    ["next time half the cumin", "half the ground cumin in the stew"],
    ["next time three cloves of garlic in the stew", "three cloves of garlic in the stew"],
    ["next time less cumin", "less ground cumin, for the stew"],
    ["next time leave out the lentils", "the stew without the red lentils"],
    ["next time start the flatbreads first", "the flatbreads first"],
    ["next time roast the squash first", "first roast the squash"],
    ["next time cook it longer", "cook it longer, for the stew"],
    [
      "next time for the flatbreads use the bigger pan",
      "for the flatbreads use the bigger pan, for the flatbreads",
    ],
    ["next time twice the pepper", "twice the black pepper, for the stew"],
    ["next time less salt", "less salt, for the stew"],
  ])("[C127] %s", (said, noted) => {
    const { replies, log } = talk(evening(), [1, said]);
    expect(replies[0]?.say).toBe(`Noted for next time: ${noted}.`);
    expect(log.session?.noted.length).toBe(1);
    expect(log.session?.meal).toEqual(supper);
  });

  it("[C127] where several dishes take the food it is asked which; what is not there is told", () => {
    expect(sayings(evening(), [1, "next time twice the lemon juice"], [1, "the flatbreads"])).toEqual([
      "For which dish: stew or flatbreads?",
      "Noted for next time: twice the lemon juice in the flatbreads.",
    ]);
    expect(sayings(evening(), [1, "next time leave out the saffron"])[0]).toMatch(/^There is no saffron/);
    const long = "next time one two three four five six seven eight nine ten eleven twelve thirteen";
    expect(sayings(evening(), [1, long])).toEqual([
      "That is too long to be asked aloud. Say it in twelve words.",
    ]);
  });

  it("[C128] notes are asked one by one; yes does it tonight, no keeps it, and it can be dropped", () => {
    const question = openNote({
      session:
        begun.session ??
        (() => {
          throw new Error("no meal");
        })(),
    });
    expect(question?.say).toBe(askTwice);
    const asked = { question: question?.question ?? null };
    const reply = (said: string) => respond(said, kitchenAt(begun, 1, asked));
    expect([reply("yes").say, reply("yes").orders]).toEqual([
      `Done for tonight. ${askLonger}`,
      [{ type: "AnswerNote", key: "lantern-stew/lemon", answer: "applied" }],
    ]);
    expect([reply("no").say, reply("no").orders]).toEqual([
      `Kept for another time. ${askLonger}`,
      [{ type: "AnswerNote", key: "lantern-stew/lemon", answer: "kept" }],
    ]);
    expect([reply("drop that note").say, reply("drop that note").orders]).toEqual([
      `Dropped. ${askLonger}`,
      [{ type: "AnswerNote", key: "lantern-stew/lemon", answer: "dropped" }],
    ]);
    // Anything else closes the question, and the note stays open.
    expect(reply("what now").orders).not.toContainEqual(expect.objectContaining({ type: "AnswerNote" }));
  });

  it("[C129] what did I want to change asks for what is open, and tells the rest", () => {
    const { replies, log } = talk(
      begun,
      [1, "what did i want to change"],
      [1, "yes"],
      [1, "no"],
      [2, "what are my notes"],
    );
    expect(replies.map(({ say }) => say)).toEqual([
      askTwice,
      `Done for tonight. ${askLonger}`,
      "Kept for another time: cook it longer, for the stew.",
      "Noted: twice the lemon juice in the stew, done tonight; cook it longer, for the stew, kept.",
    ]);
    const food = log.session?.meal.dishes[0]?.ingredients.find(({ id }) => id === "lemon");
    expect(food?.amount).toMatchObject({ high: "4/1" });
    expect(sayings(evening(), [1, "what did i note"])).toEqual(["Nothing is noted for these dishes."]);
  });
});
