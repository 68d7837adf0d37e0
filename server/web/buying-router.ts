import express, { Router, type Request, type Response } from "express";
import type { House } from "../../core/house/house.ts";
import type { CookingMeal } from "../../core/recipe/model.ts";
import { buyingList } from "../../core/shop/buying-list.ts";
import { fromFridge } from "../../core/shop/from-fridge.ts";
import { readHouse } from "../../core/shop/in-house.ts";
import { writtenList } from "../../core/shop/written-list.ts";
import { buyingPath } from "../../core/sync/buying-path.ts";
import { buyingRequest, type BuyingAnswer } from "../../core/sync/buying-request.ts";
import { calendarNow } from "../kitchen/wall.ts";
import { loadFoods } from "../pantry/load-foods.ts";
import { loadPlaces } from "../pantry/load-places.ts";
import { refuse, type FindMeal } from "./find-meal.ts";
import { isOwnPage } from "./own-host.ts";

/** What a list is made from. */
export interface BuyingParts {
  readonly find: FindMeal;
  /** Has the tables in foods/. */
  readonly folder: string;
  /** What is in the fridge now. */
  readonly house: () => House;
}

async function answer(
  { find, folder, house: houseNow }: BuyingParts,
  request: Request,
  response: Response,
): Promise<void> {
  if (!isOwnPage(request)) {
    refuse(response, 403, "The buying list is for Stovecall's own page. Open it there.");
    return;
  }
  const wanted = buyingRequest.safeParse(request.body);
  if (!wanted.success) {
    refuse(response, 400, "The server could not read for which meals to shop. Reload the page.");
    return;
  }
  const meals: CookingMeal[] = [];
  for (const meal of wanted.data.meals) {
    const found = find(meal);
    if (!found.ok) {
      refuse(response, 404, found.error);
      return;
    }
    meals.push(found.value);
  }
  // Read anew each time: who mends the tables sees it in the next list.
  const [foods, places] = [await loadFoods(folder), await loadPlaces(folder)];
  if (!foods.ok || !places.ok) {
    refuse(response, 503, foods.ok ? (places.ok ? "" : places.error) : foods.error);
    return;
  }
  const { house, mistakes } = readHouse(wanted.data.house);
  const fridge = fromFridge(houseNow(), { meals, foods: foods.value, written: house }, calendarNow());
  const list = buyingList({ meals, foods: foods.value, places: places.value, house, fridge });
  const told: BuyingAnswer = { list: writtenList(list, meals), mistakes };
  response.set("Cache-Control", "no-store").json(told);
}

/** POST /api/buying : what to buy for meals, or `{ error }` with one sentence. */
export function buyingRouter(parts: BuyingParts): Router {
  const router = Router();
  router.post(buyingPath, express.json({ limit: "32kb" }), (request, response) =>
    answer(parts, request, response),
  );
  return router;
}
