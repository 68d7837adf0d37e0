import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { inProgram } from "../../server/cli/in-program.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "book-"));
  cpSync(inProgram("recipes"), folder, { recursive: true });
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const rewrite = (path: string, change: (text: string) => string): void => {
  writeFileSync(join(folder, path), change(readFileSync(join(folder, path), "utf8")));
};

describe("the meal book", () => {
  it("[N12] every meal that ships can be cooked, and its card says how long it takes", async () => {
    const { meals, mistakes } = (await MealBook.open(folder)).listing();
    expect(mistakes).toEqual([]);
    expect(meals.map(({ id }) => id)).toContain("welcome-supper");
    for (const { takesMinutes, dishes } of meals) {
      expect(dishes.length).toBeGreaterThan(1);
      expect(takesMinutes).toBeGreaterThan(10);
    }
  });

  it("[N13] a recipe that is mended is there at the next listing, and one that is broken is told", async () => {
    const book = await MealBook.open(folder);
    rewrite("meals/welcome-supper.yaml", (text) =>
      text.replace("Welcome Supper", "Farewell Supper of the Crew"),
    );
    expect((await book.list()).meals.map(({ name }) => name)).toContain("Farewell Supper of the Crew");
    rewrite("meals/welcome-supper.yaml", () => "meal: [");
    const { meals, mistakes } = await book.list();
    expect(meals.map(({ id }) => id)).not.toContain("welcome-supper");
    expect(mistakes[0]).toMatchObject({
      file: "meals/welcome-supper.yaml",
      line: expect.any(Number) as number,
    });
  });

  it("[N13] files that have not changed are not read again", async () => {
    const book = await MealBook.open(folder);
    await book.list();
    const started = performance.now();
    await book.list();
    const again = performance.now() - started;
    const fresh = performance.now();
    await MealBook.open(folder);
    expect(again).toBeLessThan(performance.now() - fresh);
  });

  it("[N14] a meal is scaled to the servings that were asked for, and refused by name where it cannot be", async () => {
    const book = await MealBook.open(folder);
    const meal = book.meal("welcome-supper", { "lentil-soup": 6 });
    expect(
      meal.ok ? meal.value.dishes.find(({ id }) => id === "lentil-soup")?.yield.servings : meal.error,
    ).toBe(6);
    expect(book.meal("welcome-supper", { "lentil-soup": 0 })).toMatchObject({ ok: false });
    expect(book.meal("feast", {})).toMatchObject({
      ok: false,
      error: expect.stringMatching(/^There is no meal called feast\. There are: /) as string,
    });
  });
});
