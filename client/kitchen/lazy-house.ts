import { effect } from "@preact/signals";
import type { Signal } from "@preact/signals";
import type { HouseKeeper, HouseNeeds } from "./house-keeper.ts";
import { onceUnlessFailed } from "./once-unless-failed.ts";

/** Fetches what keeps the house after the page stands; where that fails, again at the next join. */
export function keepHouse(house: Signal<HouseKeeper | null>, needs: HouseNeeds): void {
  const load = onceUnlessFailed(async () => {
    const { createHouseKeeper } = await import("./house-keeper.ts");
    house.value = createHouseKeeper(needs);
  });
  effect(() => {
    // Until it is here answers say so, and the fridge is not shown.
    if (needs.line.state.value !== "connecting") void load().catch(() => undefined);
  });
}
