import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { packFoodBook } from "../../core/sync/food-book-packed.ts";
import { ok } from "../../core/units/result.ts";
import { MealBook } from "../../server/kitchen/meal-book.ts";
import { ask, openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import type { Scene } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;
let book: MealBook;
let foods: unknown;
let all: Awaited<ReturnType<typeof scenes>>;
beforeAll(async () => {
  open = await openPage();
  all = await scenes();
  book = await MealBook.open("recipes");
  const breakfast = book.meal("fog-bell-breakfast", {});
  const eaten = breakfast.ok ? [{ daysAgo: 0, dishes: breakfast.value.dishes }] : [];
  const known = await book.foodBook(ok(eaten));
  if (!known.ok) throw new Error(known.error);
  foods = JSON.parse(JSON.stringify(packFoodBook(known.value)));
});
afterAll(async () => open.close());

const shots = process.env["SHOTS"];
const picture = async (name: string): Promise<void> => {
  if (shots !== undefined) await open.page.screenshot({ path: `${shots}/values-${name}.png` });
};

async function openDrawer(scene: Scene): Promise<void> {
  await open.show(scene);
  await open.page.getByRole("button", { name: "Kitchen", exact: true }).click();
  await open.page.locator("#drawer-values").waitFor();
}

const part = () => open.page.locator("section[aria-labelledby=drawer-values]");
const table = (name: string) =>
  part().locator(".value-dish", { has: open.page.locator(".value-name", { hasText: name }) });
const words = async (text: Promise<string>): Promise<string> => (await text).replace(/\s+/g, " ").trim();
const valueOf = (dish: string, value: string) =>
  table(dish).locator("tbody", { has: open.page.getByRole("rowheader", { name: value }) });

describe("what is in it, while it is cooked", () => {
  it("[W141] the drawer tells a helping, all of it, the meal and the day, with what is unknown, and axe finds nothing", async () => {
    await openDrawer({ ...all.step, foods });
    await part().locator(".value-dish").first().waitFor();
    expect(await part().locator(".value-name").allInnerTexts()).toEqual([
      "Smoky Lentil Soup",
      "Roasted Carrots with Cumin",
      "Griddle Flatbreads",
      "Crisp Cabbage Salad",
      "Baked Pears with Ginger",
      "The whole meal",
      "Today, with this",
    ]);
    const soup = table("Smoky Lentil Soup");
    expect(await soup.locator("thead th").allInnerTexts()).toEqual(["Value", "A bowl", "All of it"]);
    expect(await words(valueOf("Smoky Lentil Soup", "sodium").innerText())).toContain(
      "30 to 32 mg 119 to 128 mg",
    );
    expect(await words(valueOf("Smoky Lentil Soup", "sugars").innerText())).toMatch(
      /at least .* 1 of 9 ingredients has no value for it: red lentils\./,
    );
    await part().locator("summary").last().click();
    expect(await table("Today, with this").locator("thead th").allInnerTexts()).toEqual([
      "Value",
      "Before",
      "With this",
    ]);
    expect(await open.lookedOver()).toEqual([]);
    for (const [look, size] of [
      ["light", "lying"],
      ["dark", "phone"],
    ] as const) {
      await open.turn(look, size);
      await open.page.locator("#drawer-values").evaluate((head) => head.scrollIntoView());
      await picture(`drawer-${size}`);
    }
  });

  it("[W142] a limit stands beside its value, with a mark and a word", async () => {
    await openDrawer({ ...all.step, foods });
    const sodium = valueOf("Smoky Lentil Soup", "sodium").locator(".value-limit");
    expect(await words(sodium.innerText())).toMatch(/^✓ Kept: .*sodium at most 140 mg in a serving\.$/);
    // Nigella seeds may be left out, and nobody knows what they hold.
    await table("Griddle Flatbreads").locator("summary").click();
    const unsure = valueOf("Griddle Flatbreads", "sodium").locator(".value-limit");
    expect(await words(unsure.innerText())).toMatch(/^\? Cannot tell: .*for nigella seeds I have no figure/);
    await table("Today, with this").locator("summary").click();
    await open.turn("dark", "phone");
    await unsure.evaluate((one) => one.scrollIntoView());
    await picture("unsure-phone");
    await table("Today, with this").evaluate((one) => one.scrollIntoView());
    await picture("today-phone");
  });

  it("[W143] a touch on a value tells each ingredient's part, its food and number or label, and the source", async () => {
    await openDrawer({ ...all.step, foods });
    const key = part().getByRole("button", { name: "sodium, where it comes from" }).first();
    await key.focus();
    await open.page.keyboard.press("Enter");
    expect(await key.getAttribute("aria-expanded")).toBe("true");
    const parts = await valueOf("Smoky Lentil Soup", "sodium").locator(".part").allInnerTexts();
    const told = parts.map((one) => one.replace(/\s+/g, " "));
    // USDA SR28 number 16144: 7 mg of sodium in 100 g.
    expect(told).toContain(
      "red lentils, 1 1/2 cups 20.2 mg in all Taken for 288 g of dry red lentil, SR28 number 16144. In 100 g 7 mg; in a bowl 5 mg.",
    );
    expect(told.find((one) => one.startsWith("crushed tomatoes"))).toContain(
      "your label labels/crushed-tomatoes.yaml",
    );
    expect(told.find((one) => one.startsWith("yellow onion"))).toContain(
      "The recipe names no size, so a medium one was taken.",
    );
    const source = await part().locator(".values-source").innerText();
    expect(source).toContain("USDA National Nutrient Database for Standard Reference, Release 28");
    expect(source).toMatch(/averages for raw materials.*no medical advice.*clinician/s);
    expect(await open.lookedOver()).toEqual([]);
    for (const [look, size] of [
      ["light", "lying"],
      ["dark", "phone"],
    ] as const) {
      await open.turn(look, size);
      await key.evaluate((one) => one.scrollIntoView());
      await picture(`parts-${size}`);
    }
  });

  it("[W143] a value without a figure tells why it has none", async () => {
    await openDrawer({ ...all.step, foods });
    await valueOf("Smoky Lentil Soup", "sugars").locator(".value-touch").click();
    const last = valueOf("Smoky Lentil Soup", "sugars").locator(".part").last();
    expect(await words(last.innerText())).toBe(
      "red lentils, 1 1/2 cups unknown Taken for 288 g of dry red lentil, SR28 number 16144. The table of foods has no figure for it.",
    );
  });

  it("[W144] after a swap it is reckoned and checked anew, and a dish left out is in it no more", async () => {
    await openDrawer({ ...all.step, foods });
    const sugars = valueOf("Smoky Lentil Soup", "sugars");
    await sugars.locator(".value-missing").waitFor();
    await ask(open.page, ({ store }) => {
      const soup = store.session.value?.meal.dishes[0];
      const [lentils] = soup?.ingredients.filter(({ item }) => item === "red lentils") ?? [];
      if (soup === undefined || lentils === undefined) throw new Error("no lentils");
      store.give([{ type: "UseSwap", dish: soup.id, ingredient: lentils.id, swap: 0 }]);
    });
    await sugars.locator(".value-missing").waitFor({ state: "detached" });
    await sugars.locator(".value-touch").click();
    // SR28 number 16050: white beans, mature seeds, cooked, boiled, without salt.
    expect(await words(sugars.locator(".parts").innerText())).toMatch(
      /cooked white beans.*SR28 number 16050/,
    );
    await ask(open.page, ({ store }) => {
      const soup = store.session.value?.meal.dishes[0];
      if (soup !== undefined) store.give([{ type: "LeaveOutDish", dish: soup.id }]);
    });
    await table("Smoky Lentil Soup").waitFor({ state: "detached" });
  });

  it("[W145] without what is known of foods one sentence says so", async () => {
    await openDrawer(all.step);
    expect(await words(part().locator(".values-none").innerText())).toBe(
      "What is known of foods is not here yet; it is told as soon as it comes.",
    );
    await openDrawer({ ...all.lost, foods: null });
    expect(await words(part().locator(".values-none").innerText())).toBe(
      "What is in it cannot be told while the server is away.",
    );
  });
});

describe("what is in it, before it is cooked", () => {
  const look = async (): Promise<void> => {
    await open.show({ ...all.start, foods });
    await open.page.getByText("Welcome Supper").click();
    await open.page.getByRole("button", { name: "What is in it" }).click();
  };
  const sheet = () => open.page.getByRole("dialog", { name: "What is in it" });

  it("[W146] the card's key opens the same for the servings chosen; a helping stays what it is", async () => {
    const asked: unknown[] = [];
    await open.page.route("**/api/meal", async (route) => {
      const wanted = route.request().postDataJSON() as { meal: string; servings: Record<string, number> };
      asked.push(wanted);
      const meal = book.meal(wanted.meal, wanted.servings);
      await route.fulfill({ json: meal.ok ? meal.value : { error: meal.error } });
    });
    await look();
    await sheet().locator(".value-dish").first().waitFor();
    expect(asked[0]).toMatchObject({ meal: "welcome-supper", servings: { "lentil-soup": 4 } });
    expect(await words(sheet().locator(".value-table").first().innerText())).toContain(
      "sodium 30 to 32 mg 119 to 128 mg",
    );
    expect(await open.lookedOver()).toEqual([]);
    for (const [look, size] of [
      ["light", "lying"],
      ["dark", "phone"],
    ] as const) {
      await open.turn(look, size);
      await picture(`card-${size}`);
    }
    await sheet().locator("summary").first().click();
    expect(await words(sheet().locator(".diet-findings").innerText())).toContain("no medical advice");
  });

  it("[W147] with the server away one sentence says so", async () => {
    await open.page.unroute("**/api/meal");
    await open.page.route("**/api/meal", (route) => route.abort());
    await look();
    expect(await words(sheet().getByRole("alert").innerText())).toBe(
      "What is in it cannot be told while the server is away.",
    );
    await open.page.unroute("**/api/meal");
  });
});
