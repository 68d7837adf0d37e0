import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { emptyLog } from "../../core/cook/fold.ts";
import type { Note } from "../../core/next-time/note.ts";
import { askNote } from "../../core/next-time/say-note.ts";
import { noteKey } from "../../core/next-time/note.ts";
import { dishId, ingredientId } from "../../core/recipe/model.ts";
import { instant } from "../../core/units/quantity.ts";
import { give, ownPantry } from "./screen/evening.ts";
import { ask, openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import type { Scene } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;
let start: Scene;
let begun: Scene;

const soup = dishId("lentil-soup");
const twice: Note = {
  dish: soup,
  change: { kind: "times", ingredient: ingredientId("lemon-juice"), times: "2/1" },
  from: "asked",
};
const less: Note = {
  dish: soup,
  change: { kind: "words", words: "less ground cumin", ingredient: ingredientId("cumin") },
  from: "asked",
};
const notes = [twice, less];
const twiceAsked = "You noted for this time: twice the lemon juice in the soup. Do that tonight?";

beforeAll(async () => {
  const { start: plain, step } = await scenes();
  const { meal, pantry } = await ownPantry();
  const cards = pantry.meals.map((card) =>
    card.id === meal.id
      ? { ...card, notes: notes.map((note) => ({ key: noteKey(note), ask: askNote(note, meal) })) }
      : card,
  );
  start = { ...plain, pantry: { ...pantry, meals: cards } };
  const at = instant(Date.UTC(2031, 5, 14, 16, 40));
  const log = give(emptyLog, at, { type: "BeginMeal", meal, serveAt: null, notes });
  begun = { ...step, events: log.events, now: at };
  open = await openPage();
});
afterAll(async () => open.close());

const card = () => open.page.getByRole("region", { name: "From last time" });
const pick = () => open.page.locator(".meal-face", { hasText: "Welcome Supper" }).click();
const lemon = () =>
  ask(open.page, ({ store }) => {
    const dish = store.session.value?.meal.dishes.find(({ id }) => id === "lentil-soup");
    const amount = dish?.ingredients.find(({ id }) => id === "lemon-juice")?.amount;
    return amount?.kind === "measured" ? amount.high : null;
  });

describe("notes of the evenings before, on the screen", () => {
  it("[W117] the card of a meal offers them one by one, and the meal begins with what was said to them", async () => {
    await open.show(start);
    await pick();
    expect(await card().locator("p").allInnerTexts()).toEqual(
      notes.map((_, at) => (at === 0 ? twiceAsked : (expect.any(String) as string))),
    );
    await card()
      .getByRole("group", { name: twiceAsked })
      .getByRole("button", { name: "Yes, tonight" })
      .click();
    await open.page.getByRole("button", { name: "Light the stove" }).click();
    const [wanted] = await ask(open.page, (bench) => [...bench.begun]);
    expect(wanted?.[1].notes).toEqual({ "lentil-soup/lemon-juice": "applied" });
  });

  it("[W117] a meal without notes shows nothing of them", async () => {
    await open.show(start);
    await open.page.locator(".meal-face", { hasText: "Slack Water Lunch" }).click();
    await open.page.getByRole("button", { name: "Light the stove" }).waitFor();
    expect(await card().count()).toBe(0);
  });

  it("[W118] as a meal begins, what is open is asked one after the other; nothing is done without a yes", async () => {
    await open.show(begun);
    const dialog = open.page.getByRole("dialog", { name: twiceAsked });
    await dialog.waitFor();
    expect(await lemon()).toBe("2/1");
    await dialog.getByRole("button", { name: "Yes, tonight" }).click();
    await expect.poll(lemon).toBe("4/1");
    const next = open.page.getByRole("dialog", { name: /less ground cumin, for the soup/ });
    await next.getByRole("button", { name: "Drop the note" }).click();
    const states = () =>
      ask(open.page, ({ store }) => store.session.value?.offered.map(({ state }) => state));
    await expect.poll(states).toEqual(["applied", "dropped"]);
    await expect.poll(() => open.page.getByRole("dialog").count()).toBe(0);
  });

  it("[W1] [W4] [W5] axe finds nothing in either; all of it can be touched", async () => {
    await open.show(start);
    await pick();
    await card().waitFor();
    expect(await open.lookedOver()).toEqual([]);
    await open.show(begun);
    await open.page.getByRole("dialog").waitFor();
    expect(await open.lookedOver()).toEqual([]);
  });
});
