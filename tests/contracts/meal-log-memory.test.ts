import { describe } from "vitest";
import { MemoryMealStore } from "../../server/store/memory-meal-store.ts";
import { mealLogContract } from "./meal-log.ts";

describe("the meal log in memory", () => {
  mealLogContract(() => new MemoryMealStore());
});
