import { loadPantry } from "../../../server/pantry/load-pantry.ts";
import type { PantryContents } from "../../../core/recipe/read-pantry.ts";

/** The recipes that come with Stovecall. */
export const shippedPantry = (): Promise<PantryContents> =>
  loadPantry(new URL("../../../recipes", import.meta.url).pathname);
