import type { WantedThings } from "../../core/house/wanted.ts";
import type { WeekCheck } from "../../core/week/check-week.ts";
import type { BuyingList } from "../../core/shop/buying-list.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { checkJson, type MealCheckJson } from "./check-json.ts";
import { checkCaution } from "./check-words.ts";
import { shopJson, type ShopJson } from "./shop-json.ts";

/** A week for another program. */
export interface WeekJson {
  readonly week: string;
  readonly eaters: number;
  readonly verdict: MealCheckJson["verdict"];
  readonly caution: string;
  readonly days: readonly {
    readonly day: string;
    readonly sittings: readonly {
      readonly name: string;
      /** null: there is nothing to check. */
      readonly check: MealCheckJson | null;
      /** What is wrong with eating what is left. */
      readonly troubles: readonly string[];
    }[];
  }[];
  /** What is left at the end and in no meal. */
  readonly unused: readonly string[];
  /** What was in the fridge before and counts for no meal, or must not be eaten. */
  readonly fridge: readonly string[];
  readonly shop: ShopJson;
}

/** The week as `week --json` prints it. */
export const weekJson = (
  { week, days, verdict, unused, fridge }: WeekCheck,
  list: BuyingList,
  meals: readonly CookingMeal[],
  besides: WantedThings,
): WeekJson => ({
  week: week.name,
  eaters: week.eaters,
  verdict: verdict.replace(" ", "-") as WeekJson["verdict"],
  caution: checkCaution,
  days: days.map(({ day, sittings }) => ({
    day,
    sittings: sittings.map(({ name, check, troubles }) => {
      return { name, check: check === null ? null : checkJson(check), troubles };
    }),
  })),
  unused,
  fridge,
  shop: shopJson(list, meals, besides),
});
