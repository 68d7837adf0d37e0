import { dietId, type Diet } from "../../../core/diet/diet.ts";
import type { EatenMeal } from "../../../core/diet/eaten.ts";
import { foodTalk } from "../../../core/talk/food-talk.ts";
import type { FoodsAtHand } from "../../../core/talk/model.ts";
import { ok } from "../../../core/units/result.ts";
import { dietOf, larder } from "../diet/diet-kit.ts";
import { supper } from "./supper.ts";

/** A diet of the test's own, by its file's text without the head. */
export const diet = (text: string): Diet => ({ ...dietOf(text, "The Lantern Diet"), id: dietId("lantern") });

/** The shipped foods and groups, with a diet that holds for every meal; null: none does. */
export const foodsWith = (held: Diet | null, eaten: readonly EatenMeal[] = []): FoodsAtHand => {
  const holding = ok(held === null ? [] : [held.id]);
  return {
    book: {
      larder,
      diets: held === null ? [] : [held],
      holding: new Map([[supper.id, holding]]),
      always: holding,
      eaten: ok(eaten),
    },
    talk: foodTalk,
  };
};

/** A diet that has a word on most things. */
export const lantern = diet(`may-eat: all but what is listed
foods:
  added salt: avoided
  rice: twice a week
  tree nuts: 30 g a day
  fruit juice: 1/2 cup a serving
  citrus fruit: avoided
allergies: [sesame]
limits:
  - at most 140 mg sodium in a serving
`);
