import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { err, ok } from "../../core/units/result.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "diet-answer-"));
  write("kitchens/galley.yaml", "kitchen: The galley\nburners: 1\n");
  write(
    "dishes/pot.yaml",
    "dish: Pot\nabout: A pot.\nyield: 4 bowls\ningredients:\n  salt: 1 tsp\n  rice: { item: brown rice, amount: 1 cup }\nsteps:\n  boil:\n    do: Boil it.\n    with: [salt, rice]\n    time: 5 min\n",
  );
  write("meals/supper.yaml", "meal: Supper\nabout: A pot.\nkitchen: galley\ndishes:\n  pot: 4\n");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function write(place: string, text: string): void {
  mkdirSync(dirname(join(folder, place)), { recursive: true });
  writeFileSync(join(folder, place), text);
}

const diet = (foods: string): string =>
  `diet: Plain\nabout: Made up.\nevery-meal: true\nmay-eat: all but what is listed\nfoods: {${foods}}\n`;

it("[D29] where no diet holds, nothing is said; a diet that is written down later is found", async () => {
  const book = await MealBook.open(folder);
  expect((await book.list()).meals.map((card) => card.diet)).toEqual([null]);
  write("diets/plain.yaml", diet("added salt: avoided"));
  const [card] = (await book.list()).meals;
  expect(card?.diet).toMatchObject({ diets: ["Plain"], verdict: "not allowed", problem: null });
  expect(card?.diet?.findings.map(({ ingredient }) => ingredient)).toEqual(["salt"]);
});

it("[D29] a diet with a mistake is told among the mistakes, and the answer is that nobody can tell", async () => {
  write("diets/plain.yaml", diet("added salt: now and then"));
  const { meals, mistakes } = (await MealBook.open(folder)).listing();
  expect(mistakes.map(({ file, line }) => [file, line])).toEqual([["diets/plain.yaml", 5]]);
  expect(meals[0]?.diet).toMatchObject({ verdict: "cannot tell", findings: [] });
  expect(meals[0]?.diet?.problem).toContain("diets/plain.yaml, line 5");
});

it("[D29] what was eaten counts; where the log cannot be read, nobody can tell", async () => {
  write("diets/plain.yaml", diet("rice: once a week"));
  const book = await MealBook.open(folder);
  const meal = book.meal("supper", {});
  const dishes = meal.ok ? meal.value.dishes : [];
  const verdict = async (eaten: Parameters<MealBook["list"]>[1]) => {
    return (await book.list(undefined, eaten)).meals[0]?.diet?.verdict;
  };
  expect(await verdict(ok([]))).toBe("allowed");
  expect(await verdict(ok([{ daysAgo: 2, dishes }]))).toBe("not allowed");
  expect(await verdict(ok([{ daysAgo: 8, dishes }]))).toBe("allowed");
  expect(await verdict(err("The meal log is damaged."))).toBe("cannot tell");
});

it("[D26] a meal that is begun has what may stand in by common practice, where the diets can be read", async () => {
  const uses = async (): Promise<readonly string[]> => {
    const meal = (await MealBook.open(folder)).meal("supper", {});
    return meal.ok ? (meal.value.dishes[0]?.ingredients[0]?.swaps.map(({ use }) => use) ?? []) : [];
  };
  expect(await uses()).toEqual(["lemon juice", "cider vinegar"]);
  write("diets/plain.yaml", diet("citrus fruit: avoided, lemon juice: avoided"));
  expect(await uses()).toEqual(["cider vinegar"]);
  write("diets/plain.yaml", diet("citrus fruit: never"));
  expect(await uses()).toEqual([]);
});
