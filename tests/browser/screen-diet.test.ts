import { afterAll, beforeAll, expect, it } from "vitest";
import { openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;
beforeAll(async () => {
  open = await openPage();
});
afterAll(async () => open.close());

const shots = process.env["SHOTS"];

it("[W120] each card says what the diet says; picked, it tells what and why, and axe finds nothing", async () => {
  const { start } = await scenes();
  await open.show(start, "lying");
  const lines = await open.page.locator(".meal-diet").allInnerTexts();
  expect(lines.map((line) => line.replace(/\s+/g, " ").trim())).toEqual([
    "? cannot tell whether your diet allows one thing",
    "✓ allowed by your diet",
    expect.stringMatching(/^\? cannot tell whether your diet allows \d+ things$/),
  ]);
  await open.page.getByText("Fog Bell Breakfast").click();
  await open.page.waitForSelector(".diet-finding");
  const finding = (await open.page.locator(".diet-finding").innerText()).replace(/\s+/g, " ");
  expect(finding).toContain("Cannot tell: raisins, Apple Porridge");
  expect(finding).toContain("Take a quarter cup of prunes instead.");
  expect(await open.page.locator(".diet-caution").innerText()).toContain("no medical advice");
  for (const [look, size] of [
    ["light", "lying"],
    ["dark", "phone"],
    ["contrast", "standing"],
  ] as const) {
    await open.turn(look, size);
    if (shots !== undefined)
      await open.page.screenshot({ path: `${shots}/diet-${size}.png`, fullPage: true });
    expect([await open.findings(), await open.overflow()]).toEqual([[], []]);
  }
});
