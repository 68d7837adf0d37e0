import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { helpPage } from "../../../core/talk/help.ts";
import { examplesOf, phrasebook } from "../../../core/talk/phrasebook.ts";
import { breathWords, countWords } from "../../../core/talk/speech.ts";
import { suggestions } from "../../../core/talk/suggestions.ts";
import { sumAmounts } from "../../../core/units/sum-amounts.ts";
import { topics } from "../../../core/talk/topics.ts";
import { understand } from "../../../core/talk/understand.ts";
import { spokenAmount } from "../../../core/units/amount-words.ts";
import { amount } from "../cook/supper.ts";
import { evening, kitchenAt } from "./supper.ts";
import type { Line } from "./talk.ts";
import { sayings, talk } from "./talk.ts";

const say = (...lines: readonly Line[]) => sayings(evening(), ...lines);
/** The answer once the squash and the dough are done and the onion is being chopped. */
const later = (said: string) =>
  say(
    [0, "done"],
    [4, "done"],
    [12, "done"],
    [12, "it's on"],
    [13, "chop the red onion first"],
    [13, said],
  ).at(-1);

describe("how much", () => {
  it("[C70] tells the step's amount as it is prepared, and the total where that is another", () => {
    expect(later("how much garlic")).toBe(
      "Two cloves of garlic, minced, in this step. Five cloves of garlic in all.",
    );
    expect(later("how many red onions")).toBe("One red onion, in this step.");
    expect(later("how much garlic in this step")).toBe(later("how much garlic"));
    expect(later("how much flour in this step")).toBe(
      "This step takes no flour. A quarter cup later, for this: fry the flatbreads.",
    );
  });

  it("[C71] tells a dish's amount and the meal's, each dish with its share", () => {
    expect(
      say(
        [1, "how much garlic in the stew"],
        [1, "how much garlic in all"],
        [1, "how much cumin for the flatbreads"],
      ),
    ).toEqual([
      "Four cloves of garlic, minced, in the stew.",
      "Five cloves of garlic in all: four cloves for the stew and one clove for the flatbreads.",
      "No ground cumin in the flatbreads; it goes into the stew.",
    ]);
  });

  it("[C72] adds exactly, over units of one sort, and keeps apart what cannot be added", () => {
    const sums = (...texts: readonly string[]) => sumAmounts(texts.map(amount)).map(spokenAmount);
    expect(sums("2 tbsp", "1 tsp")).toEqual(["two and a third tablespoons"]);
    expect(sums("1/3 cup", "1/3 cup", "1/3 cup")).toEqual(["one cup"]);
    expect(sums("2 cloves", "1 clove", "1 tsp", "to taste", "to taste")).toEqual([
      "three cloves",
      "one teaspoon",
      "to taste",
    ]);
    expect(sums("2-3 carrots".replace(" carrots", ""), "1")).toEqual(["three to four"]);
  });

  it("[C73] counts as still to come only what unfinished steps take, a batch its share", () => {
    expect(say([1, "how much flour do I still need"])).toEqual([
      "Two and a half cups of flour still to come, for this: mix the dough and fry the flatbreads.",
    ]);
    expect(later("how much flour is still to come")).toBe(
      "Half a cup of flour still to come, for this: fry the flatbreads.",
    );
    expect(later("how much squash is left")).toBe("No more winter squash: all of it is in.");
  });

  it("[C74] asks which of two foods is meant, unless the step in hand takes only one of them", () => {
    expect(say([1, "how many onions"], [1, "the green onion"])).toEqual([
      "Which one: red onion or green onion?",
      "Two green onions, sliced, in the flatbreads.",
    ]);
    expect(later("how many onions")).toBe("One red onion, in this step.");
  });

  it("[C75] an unknown food or dish is answered by what there is", () => {
    expect(say([1, "how much saffron"])).toEqual([
      "There is no saffron in this meal. This step takes winter squash.",
    ]);
    expect(say([1, "what is left for the pudding"])).toEqual([
      "There is no pudding in this meal. We have the stew and the flatbreads.",
    ]);
  });

  it("[C76] offers swaps, and notes one after a yes; from then on the meal has it", () => {
    const end = talk(
      evening(),
      [1, "what can I use instead of lemon juice"],
      [1, "cider vinegar"],
      [1, "yes"],
      [1, "how much cider vinegar"],
      [1, "how much water in the stew"],
    );
    expect(end.replies.map((reply) => reply.say)).toEqual([
      "Instead of lemon juice: lime juice or cider vinegar?",
      "One tablespoon of cider vinegar instead, in the stew. Use a quarter cup less water. Shall I note that?",
      "Noted: cider vinegar instead of lemon juice. Use a quarter cup less water.",
      "One tablespoon of cider vinegar, in the stew.",
      "Two and three quarters cups of water, in the stew.",
    ]);
    expect(end.replies[1]?.orders).toEqual([]);
    expect(end.replies[2]?.orders).toEqual([
      { type: "UseSwap", dish: "lantern-stew", ingredient: "lemon", swap: 1 },
    ]);
  });

  it("[C76] 'use it' is a yes to the swap on offer", () => {
    expect(talk(evening(), [1, "use lime juice"], [1, "use it"]).replies[1]?.orders).toMatchObject([
      { type: "UseSwap", swap: 0 },
    ]);
  });

  it("[C77] converts units and heats", () => {
    // 1 US cup = 16 tablespoons, 1 tablespoon = 3 teaspoons: NIST Handbook 44, appendix C, units of liquid volume.
    expect(
      say([1, "how many tablespoons in a quarter cup"], [1, "how many teaspoons in half a tablespoon"]),
    ).toEqual(["A quarter cup is four tablespoons.", "Half a tablespoon is one and a half teaspoons."]);
    // t/F = 1.8 t/C + 32: NIST SP 811, appendix B.8.
    expect(say([1, "what is 180 celsius in fahrenheit"])).toEqual([
      "One hundred eighty degrees Celsius is three hundred fifty-six degrees Fahrenheit.",
    ]);
    expect(say([1, "how many grams in a cup"])[0]).toContain("Weigh it");
  });
});

describe("the evening", () => {
  it("[C80] tells what is left: in all, for a dish, for the cook's hands", () => {
    expect(say([1, "what is left"])[0]).toMatch(
      /^Ten steps: five for the stew and five for the flatbreads\. Ready about six /,
    );
    expect(later("what is left for the flatbreads")).toBe(
      "The flatbreads: rest the dough, going now; slice the green onion; fry the flatbreads.",
    );
    const hands = talk(evening(), [1, "what is left for my hands"], [1, "more"], [1, "more"]).replies.map(
      (reply) => reply.say,
    );
    expect(hands.join(" ")).not.toContain("roast");
    expect(hands[0]).toMatch(/More\?$/);
    expect(hands[2]).toBe("That was all.");
  });

  it("[C81] tells what goes in, and how to know that it is done", () => {
    expect(later("what goes into this")).toBe("One red onion; two cloves of garlic, minced.");
    expect(later("how do I know the squash is done")).toBe(
      "Done when a knife slides in without pushing. Fifty minutes to an hour.",
    );
    expect(
      say(
        [0, "done"],
        [1, "chop the red onion first"],
        [7, "done"],
        [8, "go to simmer the lentils"],
        [8, "it's on"],
        [18, "how do I know the lentils are done"],
      ).at(-1),
    ).toBe("Done when they fall apart. Twenty to twenty-five minutes, ten minutes so far.");
  });

  it("[C82] tells what the oven holds and which heat comes next", () => {
    expect(say([0, "what is in the oven"], [0, "which heat next"])).toEqual([
      "The oven is off and empty.",
      "Three hundred sixty-five degrees, now, for the stew.",
    ]);
    const roasting: readonly Line[] = [
      [0, "done"],
      [4, "done"],
      [5, "the squash is in"],
    ];
    expect(say(...roasting, [15, "what is in the oven"], [15, "which heat next"]).slice(-2)).toEqual([
      "The oven is at three hundred sixty-five degrees: roast the squash, a look in forty minutes.",
      "No change: three hundred sixty-five degrees stays.",
    ]);
  });

  it("[C83] tells when we eat and whether that will do", () => {
    expect(say([2, "when do we eat"], [2, "are we late"])).toEqual([
      "At seven o'clock, in one hour and fifty-eight minutes.",
      "No, we are on time for seven o'clock.",
    ]);
    expect(say([2, "we eat at 5:30"], [2, "are we late"])[1]).toMatch(/^Yes, by .* minutes: ready at /);
  });

  it("[C84] tells where the cook was", () => {
    expect(later("where was I")).toMatch(/^Last done: mix the dough\. Stew: Chop the red onion\./);
  });
});

describe("one breath", () => {
  const asked = phrasebook.flatMap(({ topic, intent, example }) =>
    (topic === "asking" || topic === "timers") && intent !== "WhereWasI" && example !== null ? [example] : [],
  );

  it("[C90] no answer to a question is longer than a breath, whenever it is asked", () => {
    const course: readonly Line[] = [
      [0, "done"],
      [4, "done"],
      [12, "done"],
      [12, "it's on"],
      [13, "chop the red onion first"],
      [14, "set a timer for nine minutes for the flatbreads"],
      [14, "set a timer for two minutes"],
      [19, "done"],
      [20, "done"],
    ];
    fc.assert(
      fc.property(fc.constantFrom(...asked), fc.nat(course.length), fc.nat(60), (question, steps, wait) => {
        const before = course.slice(0, steps);
        const minute = (before.at(-1)?.[0] ?? 0) + wait;
        const answers = say(...before, [minute, question], [minute, "more"], [minute, "more"]).slice(steps);
        for (const answer of answers)
          expect([answer, countWords(answer) <= breathWords]).toEqual([answer, true]);
      }),
      { numRuns: 120, seed: 5 },
    );
  });

  it("[C91] long lists come in parts, and every item once", () => {
    const parts = say(
      [1, "what can I say about timers"],
      ...Array.from({ length: 9 }, (): Line => [1, "more"]),
    );
    const spoken = parts.join(" ");
    for (const example of examplesOf("timers")) expect(spoken.split(`"${example}"`)).toHaveLength(2);
    expect(parts.at(-1)).toBe("That was all.");
  });
});

describe("help", () => {
  it("[C95] every example that is promised is understood as its intent", () => {
    const calm = kitchenAt(evening(), 1);
    const { log, dialogue } = talk(evening(), [1, "how many onions"]);
    const asked = kitchenAt(log, 1, dialogue);
    for (const { intent, example, occasion } of phrasebook) {
      const kitchen = occasion === "question" ? asked : calm;
      if (example !== null)
        expect([example, understand(example, kitchen).intent?.type]).toEqual([example, intent]);
    }
    expect(topics.every(({ topic }) => examplesOf(topic).length > 3)).toBe(true);
  });

  it("[C96] suggests three to five sentences that fit the moment, each of them understood", () => {
    const course: readonly Line[] = [
      [0, "done"],
      [4, "done"],
      [12, "done"],
      [12, "it's on"],
      [13, "cancel all timers"],
      [13, "yes"],
      [14, "hold everything"],
      [15, "go on"],
      [16, "set a timer"],
      [17, "end the meal"],
      [17, "yes"],
    ];
    for (let steps = 0; steps <= course.length; steps += 1) {
      const { log, dialogue } = talk(evening(), ...course.slice(0, steps));
      const kitchen = kitchenAt(log, 17.5, dialogue);
      const some = suggestions(kitchen);
      expect(some.length).toBeGreaterThanOrEqual(3);
      expect(some.length).toBeLessThanOrEqual(5);
      for (const text of some) expect([text, understand(text, kitchen).intent]).not.toEqual([text, null]);
    }
  });

  it("[C97] the page of all that can be said is the phrasebook's own", async () => {
    await expect(helpPage()).toMatchFileSnapshot("../../../docs/what-you-can-say.md");
  });
});
