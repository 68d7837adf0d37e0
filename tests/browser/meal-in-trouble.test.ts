import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Voice } from "../voice/synthetic-voices.ts";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, typeSentence, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { readMealLog, told } from "./kitchen/meal-log.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { installTalkingMicrophone, speakTo, type Taken } from "./kitchen/talking-microphone.ts";
import { firstRings } from "./kitchen/timers-that-rang.ts";

const data = mkdtempSync(join(tmpdir(), "meal-in-trouble-"));
const taken: Taken[] = [];
let server: ServerProcess;
let browser: Browser;
let context: BrowserContext;
let stove: KitchenPage;

const say = async (voice: Voice, sentence: string, means: RegExp): Promise<void> => {
  taken.push(await speakTo(stove, voice, `listen kitchen, ${sentence}`, means));
};

const happened = (): readonly string[] => told(readMealLog(data).events);

beforeAll(async () => {
  server = await startServerProcess(data);
  browser = await startChromium("device");
  context = await browser.newContext();
  stove = await openKitchen(context, server.url, installTalkingMicrophone);
});

afterAll(async () => {
  for (const { line, times } of taken)
    process.stdout.write(`${times}x "${line.text}" ${line.understood ?? "not understood"}\n`);
  const firstTry = taken.filter(({ times }) => times === 1).length;
  const waits = taken.map(({ afterMs }) => Math.round(afterMs)).sort((a, b) => a - b);
  process.stdout.write(
    `${firstTry} of ${taken.length} understood at once; last sound to the page's log, ms: ${waits.join(" ")}\n`,
  );
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

describe("a meal that goes on through trouble", () => {
  it("[E4] a killed server loses nothing: the cook goes on by voice, timers ring, each command counts once", async () => {
    await beginMeal(stove);
    await say("slt", "chill the dough first", /^first/);
    await say("rms", "the dough is in the fridge", /^started: dough/);
    await say("slt", "set a timer for thirty seconds", /^new timer: thirty seconds/);
    await expect.poll(happened).toContain("TimerStarted timer 2");
    await server.kill();
    await stove.page.getByText("The server is away.").waitFor();
    await say("slt", "started the broth", /^started: broth/);
    await stove.page.getByText("One thing waits").waitFor();
    expect(happened()).not.toContain("TaskStarted pea-broth/simmer-the-broth");
    await expect
      .poll(async () => (await stove.watched()).journal.filter(({ kind }) => kind === "rang").length, {
        timeout: 60_000,
      })
      .toBeGreaterThan(0);
    server = await startServerProcess(data, server.port);
    await stove.page.getByText("The server is away.").waitFor({ state: "hidden" });
    await expect.poll(happened, { timeout: 20_000 }).toContain("TimerStarted simmer the broth");
    const { events, commands } = readMealLog(data);
    expect(told(events).filter((line) => line.startsWith("TaskStarted"))).toEqual([
      "TaskStarted oat-cakes/chill-the-dough",
      "TaskStarted pea-broth/simmer-the-broth",
    ]);
    expect(commands.filter(({ refusal }) => refusal !== null)).toEqual([]);
    const [ring] = firstRings(events, (await stove.watched()).journal);
    expect(ring?.name).toBe("timer 2");
    expect(Math.abs(ring?.lateMs ?? Infinity)).toBeLessThan(2_000);
  });

  it("[E5] a page loaded again knows the meal, and listens again after one touch", async () => {
    await stove.page.reload();
    await stove.page.locator(".cooking").waitFor();
    await stove.page.locator(".ear-button").click();
    await say("slt", "what is left", /^what is left/);
    const { lines } = await stove.watched();
    expect(lines.at(-1)?.text).toMatch(/steps/);
    expect(happened().filter((line) => line === "MealBegun")).toEqual(["MealBegun"]);
  });

  it("[E6] two open pages show one meal: what is ordered on one is done on both, once", async () => {
    const shelf = await openKitchen(context, server.url);
    await shelf.page.locator(".cooking").waitFor();
    await say("rms", "the broth is done", /^done: broth/);
    await expect.poll(happened).toContain("TaskFinished pea-broth/simmer-the-broth");
    await typeSentence(shelf, "the dough is done");
    await expect.poll(happened).toContain("TaskFinished oat-cakes/chill-the-dough");
    const plates = () => Promise.all([stove, shelf].map(({ page }) => page.locator("main h1").textContent()));
    await expect.poll(async () => new Set(await plates()).size).toBe(1);
    const finished = happened().filter((line) => line.startsWith("TaskFinished"));
    expect(finished).toEqual([
      "TaskFinished pea-broth/simmer-the-broth",
      "TaskFinished oat-cakes/chill-the-dough",
    ]);
    await typeSentence(shelf, "end the meal");
    await shelf.page.getByRole("button", { name: "Yes, it is over" }).click();
    await Promise.all([stove, shelf].map(({ page }) => page.locator(".closing").waitFor()));
    expect([...stove.troubles, ...shelf.troubles]).toEqual([]);
  });
});
