import { checkMeal, type MealCheck } from "../../core/diet/check.ts";
import { withCommonSwaps } from "../../core/diet/common-swaps.ts";
import type { Diet } from "../../core/diet/diet.ts";
import type { EatenMeal } from "../../core/diet/eaten.ts";
import type { Larder } from "../../core/diet/groups.ts";
import type { FoodTable } from "../../core/food/food.ts";
import type { SwapRule } from "../../core/food/swap-rule.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import type { Mistake } from "../../core/recipe/mistake.ts";
import { err, ok, type Result } from "../../core/units/result.ts";
import { dietsHolding, loadDiets, loadLarder, loadSwaps, type DietsRead } from "../pantry/load-diets.ts";

/** What may be eaten by the diets of a folder, and what may stand in for what. */
export class TableRules {
  readonly #larder: Larder;
  readonly #swaps: readonly SwapRule[];
  readonly #read: DietsRead;

  private constructor(larder: Larder, swaps: readonly SwapRule[], read: DietsRead) {
    this.#larder = larder;
    this.#swaps = swaps;
    this.#read = read;
  }

  /**
   * @param folder has the shelf diets/
   * @param foods the table of foods with the cook's labels; null: there is none
   * Error: one sentence that says what cannot be read.
   */
  static async load(folder: string, foods: FoodTable | null): Promise<Result<TableRules, string>> {
    if (foods === null) return err("The table of foods cannot be read; no diet can be checked.");
    const larder = await loadLarder(foods);
    if (!larder.ok) return larder;
    const swaps = await loadSwaps(larder.value);
    if (!swaps.ok) return swaps;
    return ok(new TableRules(larder.value, swaps.value, await loadDiets(folder, larder.value)));
  }

  /** What is wrong in the diets' files. */
  get mistakes(): readonly Mistake[] {
    return this.#read.mistakes;
  }

  get larder(): Larder {
    return this.#larder;
  }

  /** Every diet that can be read; they hold for no meal as long as there are mistakes. */
  get diets(): readonly Diet[] {
    return this.#read.diets;
  }

  /** The diets that hold for a meal. @param named those that its file names. Error: one sentence */
  dietsFor(named: readonly string[]): Result<readonly Diet[], string> {
    return dietsHolding(this.#read, named);
  }

  /** The meal with what may stand in by common practice, where no diet forbids it; where diets cannot be read, none does. */
  withSwaps(meal: CookingMeal, diets: readonly Diet[]): CookingMeal {
    return withCommonSwaps(meal, { rules: this.#swaps, larder: this.#larder, diets });
  }

  /** Holds a meal against diets. @param eaten the meals of the last days, without this one */
  check(meal: CookingMeal, diets: readonly Diet[], eaten: readonly EatenMeal[]): MealCheck {
    return checkMeal(this.withSwaps(meal, diets), diets, this.#larder, eaten);
  }
}
