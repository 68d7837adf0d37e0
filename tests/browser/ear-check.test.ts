import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Watched } from "../../client/kitchen/watched.ts";
import { makeNoise, seeds } from "../voice/noises.ts";
import type { Voice } from "../voice/synthetic-voices.ts";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { fillRoom, installRoomMicrophone, speakAt } from "./kitchen/room-microphone.ts";
import { axeFindings } from "./screen/look-over.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";

const data = mkdtempSync(join(tmpdir(), "ear-check-"));
let server: ServerProcess;
let browser: Browser;
let stove: KitchenPage;

/** Somebody who whispers at the other end of the room: without a check nothing of it is speech. */
const faintDb = -64;
/** An ordinary voice, in dBFS, and a fan and tap that are as loud. */
const usualDb = -30;

/** Runs in the page. */
const earListens = (): boolean => {
  const tell = (globalThis as { stovecall?: () => Watched }).stovecall;
  return ["waiting", "open"].includes(tell?.().ear ?? "");
};
const untilItListens = (): Promise<unknown> =>
  stove.page.waitForFunction(earListens, undefined, { timeout: 90_000 });

const linesOfCook = async (): Promise<readonly string[]> =>
  (await stove.watched()).lines.filter(({ who }) => who === "cook").map(({ text }) => text);

/** What the page took a sentence for; null where nothing came of it within six seconds. */
async function said(voice: Voice, sentence: string, levelDb: number): Promise<string | null> {
  await untilItListens();
  const before = (await linesOfCook()).length;
  await speakAt(stove.page, voice, sentence, levelDb);
  await stove.page
    .waitForFunction(
      (count) =>
        ((globalThis as { stovecall?: () => Watched }).stovecall?.().lines ?? []).filter(
          ({ who }) => who === "cook",
        ).length > count,
      before,
      { timeout: 6_000 },
    )
    .catch(() => undefined);
  return (await linesOfCook())[before] ?? null;
}

/** One of three times, as a cook would. */
async function isHeard(voice: Voice, sentence: string, levelDb: number): Promise<boolean> {
  for (let times = 0; times < 3; times += 1)
    if ((await said(voice, sentence, levelDb))?.includes("now") === true) return true;
  return false;
}

const dialog = () => stove.page.locator("dialog");
const key = (words: string) => stove.page.locator(".check-keys button", { hasText: words });

async function beginCheck(): Promise<void> {
  await stove.page.locator("header button", { hasText: "Kitchen" }).click();
  await dialog().locator("text=Check the ear").click();
  await stove.page.locator(".check-sentence").waitFor({ timeout: 60_000 });
}

/** Says what is on the screen, and again where it still stands there, until all is said or two minutes are over. */
async function sayWhatStandsThere(voice: Voice, levelDb: number): Promise<void> {
  const until = Date.now() + 120_000;
  const sentence = stove.page.locator(".check-sentence");
  const isListening = stove.page.locator(".check-news", { hasText: "Listening." });
  while (Date.now() < until) {
    const isOver = await stove.page.locator(".check-verdict").isVisible();
    if (isOver) return;
    if (await isListening.isVisible()) {
      const text = ((await sentence.textContent()) ?? "").replace(/[“”]/g, "");
      await speakAt(stove.page, voice, text, levelDb);
      // Long enough for the ear to have come to something.
      await stove.page.waitForTimeout(2_500);
    }
    await stove.page.waitForTimeout(200);
  }
}

beforeAll(async () => {
  server = await startServerProcess(data);
  browser = await startChromium("device");
  stove = await openKitchen(await browser.newContext(), server.url, installRoomMicrophone);
  await beginMeal(stove);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
});

describe("a check of the ear, spoken", () => {
  it("[W44] a voice too soft to be heard is heard after a check that was kept", async () => {
    expect(await said("slt", "listen kitchen, what now", faintDb)).toBeNull();
    const before = await linesOfCook();
    await beginCheck();
    const begunAt = Date.now();
    await sayWhatStandsThere("slt", faintDb);
    await stove.page.locator(".check-verdict").waitFor();
    expect(Date.now() - begunAt).toBeLessThan(120_000);
    const findings = await stove.page.locator(".check-finding").allTextContents();
    // A number in doubt is asked about, and a busy machine misses a sentence now and then: how many were right is not the point.
    expect(await stove.page.locator(".check-verdict").textContent(), findings.join(" ")).toMatch(
      /^(All five|Four of five|Three of five) sentences were heard right\.$/,
    );
    expect(findings[0]).toMatch(/^Your voice comes in very softly/);
    expect(findings).toContain("Kept, this makes the ear more sensitive to you.");
    expect(await axeFindings(stove.page)).toEqual([]);
    expect(await linesOfCook()).toEqual(before);
    await key("Keep it").click();
    expect(await isHeard("slt", "listen kitchen, what now", faintDb)).toBe(true);
  });

  it("[W43] what was kept outlives a reload", async () => {
    await stove.page.reload();
    await stove.page.locator(".ear-button").click();
    expect(await isHeard("slt", "listen kitchen, what now", faintDb)).toBe(true);
  });

  it("[W43] and is forgotten by a touch", async () => {
    await stove.page.locator("header button", { hasText: "Kitchen" }).click();
    await dialog().locator("text=Forget what the check set").click();
    await stove.page.keyboard.press("Escape");
    expect(await said("slt", "listen kitchen, what now", faintDb)).toBeNull();
  });

  it("[W43] a kept figure that cannot be right is as if nothing had been set, and the other settings stay", async () => {
    await stove.page.evaluate(() => {
      const kept = JSON.parse(localStorage.getItem("stovecall.settings") ?? "{}") as Record<string, unknown>;
      const tuning = { gainDb: 99, quietestDb: -62 };
      localStorage.setItem("stovecall.settings", JSON.stringify({ ...kept, look: "dark", tuning }));
    });
    await stove.page.reload();
    await stove.page.locator("header button", { hasText: "Kitchen" }).click();
    await dialog().locator("text=Not heard well?").waitFor();
    expect(await dialog().locator("button", { hasText: "Dark" }).getAttribute("aria-pressed")).toBe("true");
    await stove.page.keyboard.press("Escape");
    await stove.page.locator(".ear-button").click();
    await untilItListens();
  });

  it("[W44] a room too loud is told, and nothing is made louder for it", async () => {
    await fillRoom(stove.page, makeNoise("running tap", 8, seeds.check[0]), usualDb);
    await beginCheck();
    await stove.page.waitForTimeout(3_000);
    const text = ((await stove.page.locator(".check-sentence").textContent()) ?? "").replace(/[“”]/g, "");
    await speakAt(stove.page, "rms", text, usualDb);
    const first = stove.page.locator(".pip").first();
    await expect.poll(() => first.getAttribute("class"), { timeout: 30_000 }).toMatch(/pip-(?!now)/);
    await key("That is enough").click();
    expect(await stove.page.locator(".check-finding").allTextContents()).toContain(
      "The room is too loud to hear you: turn the fan or tap down, or come closer, then check again.",
    );
    expect(await key("Keep it").count()).toBe(0);
    expect(stove.troubles).toEqual([]);
  });
});
