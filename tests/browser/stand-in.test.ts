import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { root } from "../../tools/run.ts";
import { startChromium } from "./kitchen/chromium.ts";
import { openKitchen, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { axeFindings, overflowOf, smallTargetsOf } from "./screen/look-over.ts";

const data = mkdtempSync(join(tmpdir(), "stand-in-"));
const shots = process.env["SHOTS"];
let server: ServerProcess;
let browser: Browser;
let kitchen: KitchenPage;

/** The kitchen's own recipes, with salt in the broth, soy sauce on the parsnips, and a diet without added salt. */
function plantedRecipes(): string {
  const folder = join(data, "recipes");
  cpSync(`${root}tests/browser/recipes`, folder, { recursive: true });
  mkdirSync(join(folder, "diets"), { recursive: true });
  const diet =
    "diet: The Signal Box Diet\nabout: Made up.\nevery-meal: true\nmay-eat: all but what is listed\n";
  writeFileSync(join(folder, "diets/signal-box.yaml"), `${diet}foods:\n  added salt: avoided\n`);
  const plant = (dish: string, id: string, item: string, beside: string): void => {
    const file = join(folder, `dishes/${dish}.yaml`);
    const text = readFileSync(file, "utf8");
    const planted = text
      .replace(/^ingredients:\n/m, `ingredients:\n  ${id}: ${item}\n`)
      .replace(`with: ${beside}\n`, `with: [${beside}, ${id}]\n`);
    if (!planted.includes(`, ${id}]`)) throw new Error(`${dish} has no ${beside}`);
    writeFileSync(file, planted);
  };
  plant("pea-broth", "salt", "1 tsp", "peas");
  plant("parsnip-tray", "soy", "{ item: soy sauce, amount: 1 tbsp }", "parsnips");
  return folder;
}

beforeAll(async () => {
  server = await startServerProcess(join(data, "log"), 0, ["--recipes", plantedRecipes()]);
  browser = await startChromium("device");
  kitchen = await openKitchen(await browser.newContext({ reducedMotion: "reduce" }), server.url);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

const swaps = () => kitchen.page.getByRole("region", { name: "What you may take instead" });

describe("salt that a diet does not allow", () => {
  it("[W148] is offered to be swapped on the card, and what was chosen is checked again", async () => {
    const { page } = kitchen;
    await page.locator("button.meal-face").click();
    expect(await page.locator(".meal-face .meal-diet").innerText()).toContain("does not allow 2 things");
    const salt = swaps().getByRole("group", { name: "Instead of salt, Pea Broth" });
    await salt.getByRole("button", { name: "lemon juice" }).click();
    await page.locator(".diet-then .meal-diet").waitFor();
    expect(await page.locator(".diet-then").innerText()).toContain("does not allow one thing");
    expect(await page.locator(".diet-finding b").allInnerTexts()).toEqual([
      "Not allowed: soy sauce, Parsnip Tray",
      "Cannot tell: peas, Pea Broth",
    ]);
    expect(await swaps().innerText()).toContain("Two teaspoons of lemon juice.");
    for (const [width, height] of [
      [1180, 820],
      [390, 844],
    ] as const) {
      await page.setViewportSize({ width, height });
      if (shots !== undefined)
        await page.screenshot({ path: `${shots}/stand-in-${width}.png`, fullPage: true });
      const faults = [await axeFindings(page), await overflowOf(page), await smallTargetsOf(page, 48)];
      expect(faults).toEqual([[], [], []]);
    }
  });

  it("[W148] the buying list and what is in it follow", async () => {
    const { page } = kitchen;
    await page.getByRole("button", { name: "What to buy", exact: true }).click();
    const list = page.getByRole("dialog", { name: "What to buy" });
    await list.getByText("lemon", { exact: false }).first().waitFor();
    expect(await list.getByText(/^salt/i).count()).toBe(0);
    await list.getByRole("button", { name: "Put away" }).click();
    await page.getByRole("button", { name: "What is in it" }).click();
    const sheet = page.getByRole("dialog", { name: "What is in it" });
    await sheet.locator(".meal-diet").first().waitFor();
    expect(await sheet.locator(".meal-diet").first().innerText()).toContain("one thing");
    await sheet.getByRole("button", { name: "Put away" }).click();
  });

  it("[C116] as the meal begins the caller asks for what is left, and a yes takes it", async () => {
    const { page } = kitchen;
    await page.getByRole("button", { name: "Light the stove" }).click();
    const question = page.getByRole("dialog", { name: /^Soy sauce is .* Shall I note that\?$/ });
    if (shots !== undefined) {
      await question.waitFor();
      await page.screenshot({ path: `${shots}/stand-in-asked.png` });
    }
    await question.getByRole("button", { name: "Yes, use that" }).click();
    await expect
      .poll(async () => (await kitchen.watched()).lines.map(({ text }) => text).join(" "))
      .toContain("That is one thing less against your diet.");
    expect(await page.getByRole("dialog").count()).toBe(0);
    expect(kitchen.troubles).toEqual([]);
  });
});
