import { effect, untracked } from "@preact/signals";
import type { ReadonlySignal, Signal } from "@preact/signals";
import type { FoodsAtHand } from "../../core/talk/model.ts";

/** When what is known of foods may have changed. */
interface Occasions {
  readonly state: ReadonlySignal<string>;
  /** When the meal that is on was begun; null: none is. */
  readonly begunAt: ReadonlySignal<number | null>;
}

/**
 * Fetches what is known of foods and diets after the page stands, and again at every join and with every meal: what was
 * eaten is another then. Until it is here answers say so; what was here stays where it cannot be fetched anew.
 */
export function keepFoods(foods: Signal<FoodsAtHand | null>, { state, begunAt }: Occasions): void {
  let last: number | null | undefined;
  effect(() => {
    // Read first, and for its sake: with another meal it is fetched again.
    const begun = begunAt.value;
    if (state.value === "joined") untracked(() => void renew(begun));
  });
  async function renew(begun: number | null): Promise<void> {
    last = begun;
    const fetched = await import("./fetch-foods.ts").then(({ fetchFoods }) => fetchFoods()).catch(() => null);
    // An older answer never takes the place of a newer one.
    if (fetched !== null && begun === last) foods.value = fetched;
  }
}
