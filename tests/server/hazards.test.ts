import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { MealBook } from "../../server/kitchen/meal-book.ts";

const recipes = join(import.meta.dirname, "..", "..", "recipes");
const folder = mkdtempSync(join(tmpdir(), "hazards-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const chili = `dish: Tide Chili
says: [chili]
about: Kidney beans and tomato.
yield: 4 bowls
ingredients:
  beans: { item: kidney beans, amount: 2 cups }
  water: 6 cups
steps:
  boil-the-beans:
    do: Put the beans and the water on, lid on.
    with: [beans, water]
    hands: off
    time: 60-90 min
    needs: { burner: 1 }
`;

it("[G8] the card on the start page tells the hazards of a meal, and the meal that is cooked has them", async () => {
  for (const shelf of ["kitchens", "foods"])
    cpSync(join(recipes, shelf), join(folder, shelf), { recursive: true });
  for (const shelf of ["dishes", "meals"]) mkdirSync(join(folder, shelf));
  writeFileSync(join(folder, "dishes", "tide-chili.yaml"), chili);
  writeFileSync(
    join(folder, "meals", "tide.yaml"),
    "meal: Tide\nabout: One pot.\nkitchen: marigold-galley\ndishes: { tide-chili: 4 }\n",
  );
  const book = await MealBook.open(folder);
  const { meals, mistakes } = book.listing();
  expect(mistakes).toEqual([]);
  expect(meals[0]?.cautions).toEqual([expect.stringMatching(/^Chili: Soak dry beans.*FDA Bad Bug Book/)]);
  const meal = book.meal("tide", {});
  expect(meal.ok && meal.value.dishes[0]?.cautions).toEqual([expect.stringMatching(/never slow-cook/)]);
});

it("[G8] the meals that come with Stovecall have none but their recipes' own cautions", async () => {
  const book = await MealBook.open(recipes);
  expect(book.listing().meals.flatMap(({ cautions }) => cautions)).toEqual([]);
});
