import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import express from "express";
import { chromium, type Browser, type Page } from "playwright-core";
import { createServer, type ViteDevServer } from "vite";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createVoice } from "../../../server/voice/create-voice.ts";
import { voiceRouter } from "../../../server/voice/voice-router.ts";
import type { SoundBench } from "./page.ts";

declare const bench: SoundBench;

const root = new URL("../../..", import.meta.url).pathname;
const cacheDir = mkdtempSync(join(tmpdir(), "sound-page-"));
const voice = createVoice();
let vite: ViteDevServer;
let server: Server;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  vite = await createServer({
    root,
    configFile: false,
    cacheDir,
    logLevel: "error",
    appType: "mpa",
    server: { middlewareMode: true, hmr: false, watch: null },
    optimizeDeps: { include: ["howler"], noDiscovery: true },
  });
  const app = express().use(voiceRouter(voice)).use(vite.middlewares);
  await new Promise<void>((resolve) => {
    server = app.listen(0, "127.0.0.1", () => {
      resolve();
    });
  });
  browser = await chromium.launch({
    executablePath: process.env["CHROMIUM_PATH"] ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--autoplay-policy=document-user-activation-required"],
  });
  page = await browser.newPage();
  page.on("pageerror", (error) => {
    throw error;
  });
  await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/tests/browser/sound/page.html`);
  await page.waitForFunction(() => "bench" in globalThis);
});

afterAll(async () => {
  await browser.close();
  await vite.close();
  await voice.close();
  await new Promise((resolve) => {
    server.close(resolve);
    server.closeAllConnections();
  });
  rmSync(cacheDir, { recursive: true, force: true });
});

describe("sound in a real browser", () => {
  it("[S60] before the first tap the page is locked and says so; a tap anywhere unlocks it", async () => {
    const fresh = await browser.newPage();
    const raw = await fresh.context().newCDPSession(fresh);
    // Playwright's own evaluate() counts as a tap; the raw protocol says whether it is one.
    const ask = async (expression: string): Promise<unknown> =>
      (
        await raw.send("Runtime.evaluate", {
          expression,
          userGesture: false,
          awaitPromise: true,
          returnByValue: true,
        })
      ).result.value;
    await raw.send("Page.navigate", { url: page.url() });
    await expect.poll(() => ask("globalThis.bench?.sound.audioState()"), { timeout: 20_000 }).toBe("locked");
    expect(await ask('bench.sound.say("Wash your hands.")')).toBe("shown");
    expect(await ask("bench.captions")).toEqual([
      "Wash your hands.",
      "This screen may not make a sound yet; tap it once.",
    ]);
    expect(await ask("bench.sound.unlock()")).toBe("locked");
    await fresh.mouse.click(200, 200);
    await expect.poll(() => ask("bench.sound.audioState()")).toBe("ready");
    await fresh.close();
    await page.mouse.click(200, 200);
    await page.waitForFunction(() => bench.sound.audioState() === "ready");
  });

  it("[S60] a sentence from the bundled voice is heard, captioned and journaled", async () => {
    const heard = await page.evaluate(async () => {
      bench.edges.length = 0;
      const loudest = bench.loudest(8_000);
      const end = await bench.sound.say("Turn the flatbreads now.", { priority: "answer" });
      const peak = await loudest;
      return {
        end,
        peak,
        edges: bench.edges,
        caption: bench.captions.at(-1),
        journal: bench.sound.journal().at(-1)?.kind,
      };
    });
    expect(heard).toMatchObject({
      end: "said",
      edges: ["start", "end"],
      caption: "Turn the flatbreads now.",
      journal: "said",
    });
    expect(heard.peak).toBeGreaterThan(0.05);
  });

  it("[S60] a sentence fetched ahead is heard within 150 ms", async () => {
    const waits = await page.evaluate(async () => {
      const texts = ["Stir the soup.", "Drain the rice.", "Cover the pan."];
      bench.sound.prefetch(texts);
      await new Promise((resolve) => setTimeout(resolve, 3_000));
      const waited: number[] = [];
      for (const text of texts) {
        const first = bench.firstSound();
        const asked = Date.now();
        const end = bench.sound.say(text);
        waited.push((await first) - asked);
        await end;
        await new Promise((resolve) => setTimeout(resolve, 150));
      }
      return waited;
    });
    process.stdout.write(
      `speech fetched ahead, ms from say() to the first sample: ${waits.map(Math.round).join(" ")}\n`,
    );
    expect(Math.max(...waits)).toBeLessThan(150);
  });

  it("[S61] a ring leaves the loudspeaker within 50 ms of its deadline", async () => {
    const lateness: number[] = [];
    for (let i = 0; i < 10; i += 1)
      lateness.push(await page.evaluate((ms) => bench.ringLateness(ms), 700 + i * 37));
    process.stdout.write(`rings, ms after the deadline: ${lateness.map((ms) => ms.toFixed(1)).join(" ")}\n`);
    for (const ms of lateness) expect(Math.abs(ms)).toBeLessThan(50);
  });

  it("[S61] a ring repeats by itself and is silent soon after it is stopped", async () => {
    const peaks = await page.evaluate(async () => {
      bench.sound.ring("rice", 2, 3);
      const first = await bench.loudest(1_500);
      await bench.loudest(2_000);
      const again = await bench.loudest(3_000);
      bench.sound.stopRing("rice");
      await new Promise((resolve) => setTimeout(resolve, 200));
      return { first, again, after: await bench.loudest(4_000) };
    });
    expect(peaks.first).toBeGreaterThan(0.2);
    expect(peaks.again).toBeGreaterThan(0.2);
    expect(peaks.after).toBe(0);
  });

  it("[S60] a sentence stopped in the moment that the sound wakes is let go without a fault", async () => {
    expect(await page.evaluate(() => bench.stoppedAsItWakes())).toEqual([]);
  });
});
