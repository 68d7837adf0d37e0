import type { DietAnswer } from "../../../core/sync/protocol.ts";
import type { Wanted } from "../../kitchen/meal-store.ts";
import type { Galley } from "../galley.ts";

/** What the diets say of a picked meal, and what the cook takes for what. */
export interface DietProps {
  readonly galley: Galley;
  readonly meal: string;
  /** Of the meal as it is written. */
  readonly diet: DietAnswer;
  readonly swaps: Wanted["swaps"];
  readonly onSwaps: (swaps: Wanted["swaps"]) => void;
}
