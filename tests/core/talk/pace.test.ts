import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { knownPaces, pacesFor } from "../../../core/pace/known-paces.ts";
import type { KnownPace } from "../../../core/pace/pace.ts";
import { countWords } from "../../../core/talk/speech.ts";
import { understand } from "../../../core/talk/understand.ts";
import { kindOfWork, workNouns, workVerbs } from "../../../core/talk/work-words.ts";
import { evening, give, kitchenAt, supper } from "./supper.ts";
import { sayings, talk } from "./talk.ts";

/** The supper, begun with what is known of the cook: by default that nothing is. */
function begun(learnt: Partial<KnownPace> = {}): MealLog {
  const paces = pacesFor(supper, knownPaces([], null)).map((pace) =>
    pace.kind === "cutting" ? { ...pace, ...learnt } : pace,
  );
  return give(emptyLog, 0, { type: "BeginMeal", meal: supper, serveAt: null, paces });
}

it("[C120] a pace that was set or forgotten by touch is had back with 'undo', and the answer says so", () => {
  const set = evening([1, { type: "SetPace", kind: "cutting", wish: "slower" }]);
  expect(sayings(set, [2, "undo that"])[0]).toMatch(/^Undone: your pace\. /);
  const forgotten = evening([1, { type: "ForgetPace" }]);
  expect(sayings(forgotten, [2, "undo that"])[0]).toMatch(/^Undone: your pace is known again\. /);
});

describe("the cook's pace by voice", () => {
  it.each([
    ["i chop slowly", "chop", "slower"],
    ["I'm a slow chopper", "chop", "slower"],
    ["chopping takes me longer", "chopping", "slower"],
    ["i stir fast", "stir", "faster"],
    ["i am a quick kneader", "mix", "faster"],
    ["i chop as the recipe says", "chop", "as-written"],
    ["plan kneading as the recipes say", "kneading", "as-written"],
    ["go by what you know of my frying", "frying", null],
  ])("[C155] %s", (said, work, wish) => {
    expect(understand(said, kitchenAt(evening(), 1)).intent).toEqual({ type: "MyPace", work, wish });
  });

  it("[C155] every word for work by hand is of a kind", () => {
    expect([...workVerbs, ...workNouns].filter((word) => kindOfWork(word) === null)).toEqual([]);
  });

  it("[C155] is planned so at once; the answer tells what changed, and when dinner is ready", () => {
    const { replies, log } = talk(begun(), [1, "i knead slowly"]);
    expect(replies[0]?.orders).toEqual([{ type: "SetPace", kind: "mixing", wish: "slower" }]);
    // Dinner waits for the dough, which rests half an hour: eight minutes of mixing become more than ten.
    expect(replies[0]?.say).toMatch(
      /^Mixing and kneading: planned thirty percent longer\. Ready at six [a-z]+, [a-z ]+ later\.$/,
    );
    expect(log.session?.paces.find(({ kind }) => kind === "mixing")?.wish).toBe("slower");
    expect(countWords(replies[0]?.say ?? "")).toBeLessThanOrEqual(25);
  });

  it("[C156] goes back to the recipe, or to what was learnt, by saying so; undo takes each back", () => {
    const said = sayings(
      begun({ times: 1.22, steps: 9, evenings: 3 }),
      [1, "i chop as the recipe says"],
      [2, "forget what i said of my chopping"],
      [3, "undo that"],
      [4, "what are my wishes"],
    );
    expect(said[0]).toMatch(/^Cutting and peeling: planned as the recipes say\. /);
    expect(said[1]).toMatch(/^Cutting and peeling: planned twenty-? ?two percent longer\. /);
    expect(said[2]).toMatch(/^Undone: your pace\. /);
    expect(said[3]).toBe("You wished: cutting and peeling as the recipes say.");
  });

  it("[C156] what is so already, what the stove forbids, and what has no pace is said, and nothing ordered", () => {
    const { replies } = talk(
      begun(),
      [1, "i fry fast"],
      [1, "i chop slowly"],
      [1, "slicing takes me longer"],
      [1, "i juggle slowly"],
    );
    expect(replies.map(({ orders }) => orders.length)).toEqual([0, 1, 0, 0]);
    expect(replies[0]?.say).toMatch(/^At the stove the heat has its say/);
    expect(replies[2]?.say).toBe("Cutting and peeling: planned so already, thirty percent longer.");
    expect(replies[3]?.say).toMatch(/^I keep no pace for juggle\. /);
    expect(sayings(evening(), [1, "i chop slowly"])).toEqual([
      "This meal knows no paces. The next one that you begin will.",
    ]);
  });
});
