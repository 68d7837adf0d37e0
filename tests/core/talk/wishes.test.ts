import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import { respond } from "../../../core/talk/respond.ts";
import { breathWords, countWords } from "../../../core/talk/speech.ts";
import { understand } from "../../../core/talk/understand.ts";
import { minutes } from "../../../core/units/quantity.ts";
import { evening, give, kitchenAt, supper } from "./supper.ts";
import { sayings, talk } from "./talk.ts";

/** All is wanted as soon as it is ready, so that the last steps have no time before. */
const soonest = evening([0, { type: "SetServing", serveAt: null }]);

const lengthOf = (said: string): number | null => {
  const { intent } = understand(said, kitchenAt(evening(), 1));
  return intent?.type === "KeepFree" ? (intent.span?.high ?? 0) / 60 : null;
};

describe("the last minutes before dinner kept free", () => {
  it.each([
    ["nothing in the last ten minutes", 10],
    ["keep the last ten minutes free", 10],
    ["no work in the last quarter of an hour", 15],
    ["please leave me the last quarter hour", 15],
    ["i want the last half hour free", 30],
    ["i want nothing to do in the last five minutes", 5],
  ])("[C150] %s", (said, length) => {
    expect(lengthOf(said)).toBe(length);
  });

  it("[C150] is ordered, and answered with when dinner is ready and what stays in them, and why", () => {
    const { replies, log } = talk(soonest, [1, "nothing in the last ten minutes"]);
    expect(replies[0]?.orders).toEqual([{ type: "SetLull", length: minutes(10) }]);
    expect(replies[0]?.say).toMatch(
      /^Last ten minutes kept free, ready at \S+ [a-z -]+\. Still then, as (?:it keeps|they keep|there is no time)/,
    );
    expect(log.session?.lull).toBe(minutes(10));
  });

  it("[C150] what does not fit into one breath is told at “more”, never left out", () => {
    const [stew, ...others] = supper.dishes;
    if (stew === undefined) throw new Error("no stew");
    const last = stew.steps.map((step, at) =>
      at < stew.steps.length - 1 ? step : { ...step, endsBeforeServing: minutes(2) },
    );
    const meal = { ...supper, dishes: [{ ...stew, steps: last }, ...others] };
    const freshAtTheEnd = give(emptyLog, 0, { type: "BeginMeal", meal, serveAt: null });
    const lines = ["nothing in the last forty minutes", "more"] as const;
    const said = sayings(freshAtTheEnd, [1, lines[0]], [1, lines[1]]);
    expect(said[0]).toMatch(/ More\?$/);
    for (const one of said) expect(countWords(one)).toBeLessThanOrEqual(breathWords);
    const stay = said.join(" ").match(/as (?:it keeps|they keep) no longer: |as there is no time before: /g);
    expect(stay).toHaveLength(2);
  });

  it("[C150] without a length it is asked for; an impossible one is refused with a sentence", () => {
    const [asked, answered] = sayings(evening(), [1, "nothing in the last minutes"], [1, "twelve minutes"]);
    expect(asked).toBe("How many minutes before dinner?");
    expect(answered).toMatch(/^Last twelve minutes kept free/);
    expect(sayings(evening(), [1, "keep the last two hours free"])).toEqual([
      "From one minute to an hour before dinner can be kept free. Say how long.",
    ]);
  });

  it("[C151] is taken back by saying so, and by undo, which says what", () => {
    const { replies, log } = talk(
      evening(),
      [1, "keep the last ten minutes free"],
      [2, "i can work until dinner"],
      [3, "undo that"],
    );
    expect(replies[1]?.say).toMatch(/^No time is kept free any more\. Ready at /);
    expect(replies[2]?.say).toMatch(/^Undone: what you wished for the last minutes\. /);
    expect(log.session?.lull).toBe(minutes(10));
  });

  it("[C152] what was wished for is told when it is asked for", () => {
    expect(sayings(evening(), [1, "what did i wish for"])).toEqual(["You have wished for nothing so far."]);
    const said = sayings(evening(), [1, "keep the last ten minutes free"], [2, "what are my wishes"]);
    expect(said[1]).toBe("You wished: the last ten minutes before dinner free.");
  });

  it("[C153] a page that has not fetched the wishes yet says so, and orders nothing", () => {
    const kitchen = { ...kitchenAt(evening(), 1), explain: null };
    const { say, orders } = respond("keep the last ten minutes free", kitchen);
    expect([say, orders]).toEqual(["I am not ready for that yet. Say it again in a moment.", []]);
  });
});
