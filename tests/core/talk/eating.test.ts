import { describe, expect, it } from "vitest";
import type { FoodsAtHand } from "../../../core/talk/model.ts";
import { explainPlan } from "../../../core/talk/explain-plan.ts";
import { silentDialogue } from "../../../core/talk/model.ts";
import { respond } from "../../../core/talk/respond.ts";
import { grammarFor } from "../../../core/talk/grammar-for.ts";
import { err } from "../../../core/units/result.ts";
import { emptyLog } from "../../../core/cook/fold.ts";
import { isInGrammar } from "../../voice/judge-heard.ts";
import { dishWith } from "../diet/diet-kit.ts";
import { diet, foodsWith, lantern } from "./foods-at-hand.ts";
import { evening, kitchenAt } from "./supper.ts";

const riceTwice = [
  { daysAgo: 1, dishes: [dishWith(["1 cup white rice"])] },
  { daysAgo: 0, dishes: [dishWith(["1 cup white rice", "1 oz almonds"])] },
];

/** What the caller answers, and what it keeps for "more". */
function told(said: string, foods: FoodsAtHand | null, log = evening()): readonly string[] {
  const { say, dialogue } = respond(said, { ...kitchenAt(log, 3), foods });
  return [say, ...(dialogue.question?.kind === "more" ? dialogue.question.rest : [])];
}
const answer = (said: string, foods: FoodsAtHand | null, log = evening()): string =>
  told(said, foods, log).join(" | ");

describe("what is in it", () => {
  const foods = foodsWith(lantern, riceTwice);

  it("[C196] tells a value of a helping, as far as it is known, and whether it keeps to the diet", () => {
    expect(told("how much sodium is in a bowl of the stew", foods)).toEqual([
      "A bowl of the stew has 20 to 23 milligrams of sodium. More?",
      "That keeps to The Lantern Diet, sodium at most 140 mg in a serving.",
    ]);
    // The only dish that is eaten by the bowl.
    expect(answer("how much sodium is in a bowl", foods)).toBe(
      answer("how much sodium is in a bowl of the stew", foods),
    );
    expect(answer("how much salt is in a bowl of the stew", foods)).toBe(
      answer("how much sodium is in a bowl of the stew", foods),
    );
  });

  it("[C196] a limit that is broken is told with the figure", () => {
    const strict = foodsWith(
      diet("may-eat: all but what is listed\nlimits:\n  - at most 10 mg sodium in a serving\n"),
    );
    expect(answer("how much sodium is in a bowl of the stew", strict)).toContain("at most 10 mg");
    expect(answer("how much sodium is in a bowl of the stew", strict)).not.toContain("keeps to");
  });

  it("[C197] what is unknown is named, and the figure is told as the least that it can be", () => {
    expect(told("how much sugar is in the stew", foods)).toEqual([
      "All of the stew has at least 20 grams of sugars. A bowl has at least 4.9 grams of sugars. More?",
      "1 of 7 ingredients has no value for it: red lentils.",
    ]);
  });

  it("[C196] tells a value of a dish, of the whole meal and of the day by the log", () => {
    expect(told("how many calories are in the stew", foodsWith(null))).toEqual([
      "All of the stew has 987 to 1076 kilocalories. A bowl has 247 to 269 kilocalories.",
    ]);
    expect(answer("how much potassium is in the whole meal", foodsWith(null))).toMatch(
      /^One serving of everything has at least 983 milligrams of potassium. More. . 958 from a bowl of the stew/,
    );
    expect(told("how much sodium did I have today", foods)).toEqual([
      "By the meal log today had 2 milligrams of sodium before this, a serving of each dish. More?",
      "One serving of what you cook now has at least 23 milligrams of sodium. Together at least 25 milligrams of sodium.",
      "1 of 14 ingredients has no value for it: flour (Griddle flatbreads).",
    ]);
    expect(answer("how much sodium did I have today", foodsWith(lantern))).toMatch(
      /^By the meal log nothing/,
    );
  });

  it("[C196] tells all values of a dish, a breath at a time, and where the figures come from", () => {
    expect(told("tell me the food values of the stew", foods)[0]).toBe(
      "A bowl of the stew has: 247 to 269 kilocalories, 14 grams of protein and 1.5 to 1.6 grams of fat. More?",
    );
    expect(told("what are the food values", foods)[0]).toMatch(
      /^One serving of everything has at least: 250/,
    );
    expect(answer("where do the figures come from", foods)).toMatch(
      /US Department of Agriculture.*clinician/,
    );
  });

  it("[C196] a dish that is left out is not counted", () => {
    const tasks = evening().session?.tasks ?? [];
    const breads = tasks
      .filter(({ dish }) => dish.id === "griddle-breads")
      .map(({ id }) => [1, { type: "SkipTask", task: id }] as const);
    expect(answer("how much potassium is in the whole meal", foods, evening(...breads))).toMatch(
      /^One serving of everything has 958 to 1189 milligrams of potassium\./,
    );
  });
});

describe("may I have it", () => {
  const foods = foodsWith(lantern, riceTwice);

  it("[C198] tells how often and how much there was already, by the log", () => {
    expect(told("may I have rice today", foods)).toEqual([
      "No. Rice: at most twice a week; 2 meals of this week had them, by the meal log. More?",
      "It may be had again in 6 days.",
    ]);
    expect(answer("may I have rice today", foodsWith(lantern, riceTwice.slice(0, 1)))).toMatch(
      /^I cannot tell whether rice holds sesame, added salt.*Rice: at most twice a week; one meal of this week had them/,
    );
    expect(answer("can I eat walnuts", foods)).toBe(
      "Yes, walnuts are allowed. Tree nuts: at most thirty grams a day; 24 percent of that is taken.",
    );
    const nuts = foodsWith(lantern, [{ daysAgo: 0, dishes: [dishWith(["100 g almonds"], 1)] }]);
    expect(answer("can I eat walnuts", nuts)).toMatch(
      /^No\. Tree nuts: at most thirty grams a day; 333 percent/,
    );
  });

  it("[C198] answers for any food by what it is and what it is made with", () => {
    expect(answer("may I have tahini", foods)).toBe(
      "No. Tahini counts as sesame, an allergy that this diet names.",
    );
    expect(answer("am I allowed any orange juice", foods)).toBe(
      "No. Orange juice is made with citrus fruit, which is avoided.",
    );
    expect(answer("is the garlic allowed", foods)).toBe("Yes, garlic is allowed.");
  });

  it("[C198] answers for a dish and for the whole meal, and tells what would mend it", () => {
    expect(told("is the stew allowed", foods)[0]).toBe(
      "No. Lemon juice is made with citrus fruit, which is avoided. Take cider vinegar instead, as the recipe offers.",
    );
    const all = answer("is everything allowed", foods);
    expect(all).toMatch(/^No\. Lemon juice/);
    expect(all).toContain("I cannot tell whether flour holds sesame");
    const mild = foodsWith(diet("may-eat: all but what is listed\nfoods:\n  shellfish: avoided\n"));
    expect(answer("is the stew allowed", mild)).toBe("Yes, the stew is allowed.");
  });

  it("[C199] what nobody knows is no yes", () => {
    expect(answer("may I have frobnicated zorp", foods)).toMatch(/^I cannot tell/);
    const mild = foodsWith(
      diet("may-eat: all but what is listed\nlimits:\n  - at most 9 g fat in a serving\n"),
    );
    expect(answer("may I have frobnicated zorp", mild)).toBe(
      "I do not know frobnicated zorp, so I cannot tell.",
    );
    expect(answer("may I have rice", foodsWith(null))).toMatch(/^No diet is written down, so I cannot say\./);
    const broken = foodsWith(lantern);
    const unread = { ...broken, book: { ...broken.book, eaten: err("The log cannot be read.") } };
    expect(answer("may I have rice", unread)).toBe("The log cannot be read.");
    expect(answer("may I have rice", null)).toBe("I cannot look foods up yet. Ask me again in a moment.");
  });

  it("[C199] a bare name is no yes either where its foods differ, and the answer is that of the check", () => {
    const sesame = foodsWith(
      diet("may-eat: all but what is listed\nfoods:\n  shellfish: avoided\nallergies: [sesame]\n"),
    );
    for (const bare of ["crackers", "noodles", "rice", "flour"])
      expect(answer(`may I have ${bare}`, sesame)).toMatch(
        new RegExp(`^I cannot tell whether ${bare} holds? sesame or shellfish\\.`),
      );
    expect(answer("is everything allowed", sesame)).toContain(
      "I cannot tell whether flour holds sesame or shellfish.",
    );
  });

  it("[C199] a caution for medicines and kidneys comes with the yes, not after it", () => {
    expect(told("can we have cream of tartar", foods)).toEqual([
      "Yes, cream of tartar is allowed. Cream of tartar: full of potassium. With kidney trouble or some medicines that is dangerous; ask your clinician first.",
    ]);
  });

  it("[C200] what a diet forbids is not offered instead, and who names it is told", () => {
    expect(answer("what can I use instead of lemon juice", foods)).toBe(
      "One tablespoon of cider vinegar instead, in the stew. Use a quarter cup less water. Shall I note that?",
    );
    expect(answer("use lime juice instead", foods)).toBe(
      "Lime juice is made with citrus fruit, which is avoided. Shall I note it all the same?",
    );
    expect(answer("what can I use instead of lemon juice", foodsWith(null))).toContain(
      "lime juice or cider vinegar",
    );
  });

  it("[C200] a swap is held against the diet again, and what that changes is said", () => {
    const citrus = foodsWith(diet("may-eat: all but what is listed\nfoods:\n  citrus fruit: avoided\n"));
    const kitchen = { ...kitchenAt(evening(), 3), foods: citrus };
    const offered = respond("use cider vinegar instead", kitchen);
    const noted = respond("yes", { ...kitchen, dialogue: offered.dialogue });
    expect(noted.say).toBe(
      "Noted: cider vinegar instead of lemon juice. Use a quarter cup less water. That is one thing less against your diet.",
    );
    const limes = respond("use lime juice instead", kitchen);
    expect(respond("yes", { ...kitchen, dialogue: limes.dialogue }).say).toMatch(
      /^Noted: lime juice instead of lemon juice\. Lime juice is made with citrus fruit/,
    );
  });

  it("[C116] what is not allowed and may be mended is offered in a breath; what cannot be told or mended is not", () => {
    const citrus = foodsWith(diet("may-eat: all but what is listed\nfoods:\n  citrus fruit: avoided\n"));
    const offer = (foods: FoodsAtHand | null, log = evening()) =>
      explainPlan({ type: "OfferStandIn" }, { ...kitchenAt(log, 0), foods }, "wanted");
    const { say, question } = offer(citrus);
    expect(say).toBe(
      "Lemon juice is made with citrus fruit, which is avoided. One tablespoon of cider vinegar instead. Shall I note that?",
    );
    const kitchen = { ...kitchenAt(evening(), 3), foods: citrus };
    const noted = respond("yes", { ...kitchen, dialogue: { ...silentDialogue, question } });
    expect(noted.say).toMatch(/^Noted: cider vinegar instead of lemon juice/);
    expect(respond("no", { ...kitchen, dialogue: { ...silentDialogue, question } }).say).toBe(
      "All right, I leave it.",
    );
    // No diet, an unknown table, and a diet that forbids what stands in as well.
    const strict = diet(
      "may-eat: all but what is listed\nfoods:\n  citrus fruit: avoided\n  vinegars: avoided\n",
    );
    for (const foods of [foodsWith(null), null, foodsWith(strict)])
      expect(offer(foods)).toMatchObject({ say: "", question: null });
  });

  it("[C201] is listened for once the foods are here, with the meal's names and the diet's, with a meal and without", () => {
    const grammar = (kitchen: Parameters<typeof grammarFor>[0]) => grammarFor(kitchen);
    const cooking = { ...kitchenAt(evening(), 3), foods };
    expect(isInGrammar("may i have tree nuts today", grammar(cooking))).toBe(true);
    expect(isInGrammar("how much sodium is in a bowl of the stew", grammar(cooking))).toBe(true);
    expect(isInGrammar("may i have tree nuts today", grammar({ ...cooking, foods: null }))).toBe(false);
    const calm = { ...kitchenAt(emptyLog, 3), foods };
    expect(isInGrammar("may i have tree nuts today", grammar(calm))).toBe(true);
    expect(respond("may i have tahini", calm).say).toMatch(/^No\./);
    expect(respond("is everything allowed", calm).say).toMatch(/^No meal is on/);
  });
});
