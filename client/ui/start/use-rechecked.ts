import { useEffect, useMemo, useState } from "preact/hooks";
import type { CookingMeal } from "../../../core/recipe/model.ts";
import type { DietAnswer } from "../../../core/sync/protocol.ts";
import type { Wanted } from "../../kitchen/meal-store.ts";
import type { Galley } from "../galley.ts";
import { dietSays } from "../values/diet-says.ts";

/** The answer, or a sentence that says why there is none yet. */
type Rechecked = { readonly diet: DietAnswer } | { readonly diet: null; readonly sentence: string };

const asking = "Asking your diet again.";
const away = "What your diet says of it cannot be told while the server is away.";

/** What the diets say of a meal with what is taken for what; as long as nothing is, nobody is asked. */
export function useRechecked(galley: Galley, meal: string, swaps: Wanted["swaps"]): Rechecked {
  const [made, setMade] = useState<CookingMeal | string>(asking);
  const link = galley.store.link.value;
  const book = galley.foods.value?.book ?? null;
  useEffect(() => {
    if (swaps.length === 0) return;
    let isWanted = true;
    const show = (told: CookingMeal | string): void => {
      if (isWanted) setMade(told);
    };
    setMade(asking);
    galley.meal({ meal, servings: {}, swaps }).then(
      (told) => show(told.ok ? told.value : told.error),
      () => show(away),
    );
    return () => {
      isWanted = false;
    };
  }, [galley, meal, swaps, link]);
  const diet = useMemo(() => {
    return book === null || typeof made === "string" ? null : dietSays(made, book);
  }, [made, book]);
  if (diet !== null) return { diet };
  return { diet: null, sentence: typeof made === "string" ? made : away };
}
