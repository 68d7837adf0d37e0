import { readFile } from "node:fs/promises";
import { readFoods, type FoodsRead } from "../../../core/food/read-foods.ts";

/** The table of foods that comes with Stovecall. */
export async function shippedFoods(): Promise<FoodsRead> {
  const place = new URL("../../../recipes/foods/foods.txt", import.meta.url);
  return readFoods("foods.txt", await readFile(place, "utf8"));
}
