import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startChromium } from "./kitchen/chromium.ts";
import { openKitchen, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";

const data = mkdtempSync(join(tmpdir(), "values-from-server-"));
let server: ServerProcess;
let browser: Browser;
let kitchen: KitchenPage;

beforeAll(async () => {
  server = await startServerProcess(data);
  browser = await startChromium("device");
  kitchen = await openKitchen(await browser.newContext({ reducedMotion: "reduce" }), server.url);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

const sheet = () => kitchen.page.getByRole("dialog", { name: "What is in it" });

describe("what is in a meal, as the server's page shows it", () => {
  it("[W146] the card's key fetches the meal and tells it, within the page's security policy", async () => {
    const { page } = kitchen;
    await page.locator("button.meal-face").click();
    await page.getByRole("button", { name: "What is in it" }).click();
    await sheet().locator(".value-dish .value-touch").first().click();
    expect(await sheet().locator(".part").count()).toBeGreaterThan(0);
    expect(await sheet().locator(".values-source").innerText()).toContain("Release 28");
    await sheet().getByRole("button", { name: "Put away" }).click();
    await sheet().waitFor({ state: "detached" });
    expect(kitchen.troubles).toEqual([]);
  });

  it("[W147] with the server gone one sentence says so, and it is told as soon as the server is back", async () => {
    const { page } = kitchen;
    await server.kill();
    await page.locator(".notice-away").waitFor();
    await page.getByRole("button", { name: "What is in it" }).click();
    expect(await sheet().getByRole("alert").innerText()).toBe(
      "What is in it cannot be told while the server is away.",
    );
    server = await startServerProcess(data, server.port);
    await sheet().locator(".value-dish .value-touch").first().waitFor();
  });
});
