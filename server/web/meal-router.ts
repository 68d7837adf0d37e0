import express, { Router, type Request, type Response } from "express";
import { mealPath } from "../../core/sync/meal-path.ts";
import { mealRequest } from "../../core/sync/meal-request.ts";
import { refuse, type FindMeal } from "./find-meal.ts";
import { isOwnPage } from "./own-host.ts";

function answer(find: FindMeal, request: Request, response: Response): void {
  if (!isOwnPage(request)) {
    refuse(response, 403, "The meals are for Stovecall's own page. Open them there.");
    return;
  }
  const wanted = mealRequest.safeParse(request.body);
  if (!wanted.success) {
    refuse(response, 400, "The server could not read which meal is meant. Reload the page.");
    return;
  }
  const found = find(wanted.data);
  if (found.ok) response.set("Cache-Control", "no-store").json(found.value);
  else refuse(response, 404, found.error);
}

/** POST /api/meal : a meal with its dishes scaled, as it would be begun, or `{ error }` with one sentence. */
export function mealRouter(find: FindMeal): Router {
  const router = Router();
  router.post(mealPath, express.json({ limit: "16kb" }), (request, response) => {
    answer(find, request, response);
  });
  return router;
}
