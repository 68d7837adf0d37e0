import { describe, expect, it } from "vitest";
import { emptyLog } from "../../../core/cook/fold.ts";
import type { MealLog } from "../../../core/cook/session.ts";
import { taskId } from "../../../core/plan/model.ts";
import type { Dish } from "../../../core/recipe/model.ts";
import { respond } from "../../../core/talk/respond.ts";
import { countWords } from "../../../core/talk/speech.ts";
import { burner, dish, handsOff, kitchen, meal, mins } from "../plan/small-meals.ts";
import { at, give, kitchenAt } from "./supper.ts";
import type { Line } from "./talk.ts";
import { sayings, talk } from "./talk.ts";

/** One burner: a pot boils after the other. */
const narrow = { ...kitchen, burners: 1 };
const pot = (id: string, length: number): Dish =>
  dish(id, [handsOff(`boil-the-${id}`, mins(length), { needs: [burner] })]);

/** Forty minutes and twenty, begun at five: dinner is at six, without the rice at 5:20, without the beans at 5:40. */
const [rice, beans] = [pot("rice", 40), pot("beans", 20)];
const begun = (...dishes: readonly Dish[]): MealLog =>
  give(emptyLog, 0, { type: "BeginMeal", meal: meal(dishes, narrow), serveAt: null });
const say = (log: MealLog, ...lines: readonly Line[]): string => sayings(log, ...lines).at(-1) ?? "";
const tight = "it is, but that is tight: we will be";

describe("a time for dinner that cannot be kept", () => {
  it("[C140] is answered with the dish without which it would be, counted out by hand", () => {
    const log = begun(rice, beans);
    expect(say(log, [0, "we eat at 5:25"])).toBe(
      `Five twenty-five ${tight} thirty-five minutes late. Say "leave out the rice" to make it.`,
    );
    expect(say(log, [0, "we eat in forty-five minutes"])).toBe(
      `Five forty-five ${tight} fifteen minutes late. Say "leave out the rice" or "the beans" to make it.`,
    );
    expect(say(log, [0, "we eat at 5:15"])).toBe(
      `Five fifteen ${tight} forty-five minutes late. Say "leave out the rice" to eat at five twenty.`,
    );
    expect(say(log, [0, "we eat at 6:10"])).toBe("Six ten it is. We can make that.");
  });

  it("[C140] what has begun is not offered any more", () => {
    const boiling = give(begun(rice, beans), 0, { type: "StartTask", task: taskId("rice/boil-the-rice") });
    expect(say(boiling, [1, "we eat at 5:25"])).toMatch(
      /^Five twenty-five .* late\. Say "leave out the beans" to eat at five forty\.$/,
    );
  });

  it("[C159] what the answer says is what to say: then dinner is in time without that dish", () => {
    const log = begun(rice, beans);
    const told = /"(leave out [a-z ]+)"/.exec(say(log, [0, "we eat at 5:25"]))?.[1] ?? "";
    const lines: readonly Line[] = [
      [0, "we eat at 5:25"],
      [0, told],
      [0, "yes"],
      [0, "are we late"],
    ];
    expect(sayings(log, ...lines).slice(1)).toEqual([
      "Leave out the rice? One step goes. Say yes.",
      expect.stringMatching(/^Left out: the rice\. /),
      expect.stringMatching(/^No\b/),
    ]);
  });

  it("[C141] is told so when the cook asks whether we are late", () => {
    expect(say(begun(rice, beans), [0, "we eat at 5:25"], [0, "are we late"])).toBe(
      'Yes, by about thirty-five minutes: ready at six o\'clock. Without the rice we would make it: say "leave out the rice".',
    );
  });

  it("[C142] is told so when the cook only asks what if", () => {
    const log = begun(rice, beans);
    const looked = (time: string): string => `I only looked: say "we eat at ${time}" to do so.`;
    expect(say(log, [0, "what if we eat at 5:45"])).toBe(
      `We would be fifteen minutes late, or in time without the rice. ${looked("five forty-five")}`,
    );
    expect(say(log, [0, "what if we eat at 5:15"])).toBe(
      `We would be forty-five minutes late, or five minutes without the rice. ${looked("five fifteen")}`,
    );
  });
});

describe("what is not offered", () => {
  it("[C143] where no dish would help only how late is said", () => {
    const only = begun(rice);
    expect(say(only, [0, "we eat at 5:30"])).toBe(`Five thirty ${tight} ten minutes late.`);
    expect(say(only, [0, "what if we eat at 5:30"])).toBe(
      'We would be ten minutes late, ready at five forty. I only looked: say "we eat at five thirty" to do so.',
    );
  });

  it("[C143] nor is a dish named before the page has fetched the reasons of the plan", () => {
    const reply = respond("we eat at 5:25", { ...kitchenAt(begun(rice, beans), 0), explain: null });
    expect(reply.say).toBe(`Five twenty-five ${tight} thirty-five minutes late.`);
    expect(reply.orders).toEqual([{ type: "SetServing", serveAt: at(25) }]);
  });

  it("[C144] nothing is left out by it, and nothing said of what a dish is worth", () => {
    const { replies, log } = talk(
      begun(rice, beans),
      [0, "we eat at 5:25"],
      [0, "are we late"],
      [0, "what if we eat at 5:15"],
    );
    expect(replies.flatMap(({ orders }) => orders)).toEqual([{ type: "SetServing", serveAt: at(25) }]);
    expect([...(log.session?.progress.values() ?? [])].map(({ state }) => state)).not.toContain("skipped");
    for (const { say: said, dialogue } of replies) {
      expect(said).not.toMatch(/need|important|only the|just|spare/);
      expect(dialogue.question).toBeNull();
    }
  });

  it("[C144] a dish with a long name is told shorter or not at all: one breath", () => {
    const names = ["rice of the long dark winter evenings", "beans from the far side of the old garden wall"];
    const long = names.map((name, index) => ({
      ...pot(`pot-${index}`, index === 0 ? 95 : 30),
      name,
      says: [],
    }));
    for (const asked of ["we eat at 5:25", "we eat at 5:31", "what if we eat at 5:20", "we eat at 6:45"]) {
      const answers = sayings(begun(...long), [0, asked], [0, "are we late"]);
      for (const answer of answers) expect(countWords(answer)).toBeLessThanOrEqual(25);
      expect(answers[0]).toContain("late");
      if (asked.startsWith("what if"))
        expect(answers[0]).toMatch(/I only looked: say "we eat at .*" to do so\./);
    }
  });
});
