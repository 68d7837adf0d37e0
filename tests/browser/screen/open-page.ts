import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { preact } from "@preact/preset-vite";
import { chromium } from "playwright-core";
import type { Page } from "playwright-core";
import { build, preview } from "vite";
import { axeFindings, overflowOf, smallTargetsOf } from "./look-over.ts";
import type { Scene, ScreenBench } from "./page.ts";

const root = new URL("../../..", import.meta.url).pathname;

/** The sizes that the screen is made for: a 10-inch tablet lying and standing, a phone. */
export const sizes = { lying: [1280, 800], standing: [800, 1280], phone: [390, 844] } as const;
export type Size = keyof typeof sizes;

/** A browser with the page under test in it. */
export interface OpenPage {
  readonly page: Page;
  readonly show: (scene: Scene, size?: Size) => Promise<void>;
  /** The same scene in another look or size, without loading it anew. */
  readonly turn: (look: Scene["look"], size: Size) => Promise<void>;
  /** What axe finds, each as one line; empty where all is well. */
  readonly findings: () => Promise<readonly string[]>;
  /** By how much the page is too wide, as one line; empty where it fits. */
  readonly overflow: () => Promise<readonly string[]>;
  /** Visible controls narrower or lower than `least` CSS pixels, one line each. */
  readonly smallTargets: (least: number) => Promise<readonly string[]>;
  /**
   * All of these faults and `more`, in every look on the tablet and every size in one look: what depends on both is
   * rare, and axe takes its time. One line each; empty where all is well. Stands at the last of them afterwards.
   */
  readonly lookedOver: (more?: () => Promise<readonly string[]>) => Promise<readonly string[]>;
  readonly close: () => Promise<void>;
}

/** WCAG 2.2, 2.5.5, target size (enhanced), asks for 44 CSS px; ours is 48. */
const leastTarget = 48;

const views: readonly (readonly [Scene["look"], Size])[] = [
  ["light", "lying"],
  ["dark", "lying"],
  ["contrast", "lying"],
  ["light", "standing"],
  ["dark", "phone"],
];

/** Opens one browser for many scenes. */
export async function openPage(): Promise<OpenPage> {
  const outDir = mkdtempSync(join(tmpdir(), "screen-page-"));
  const quiet = { root, configFile: false, logLevel: "error", plugins: preact() } as const;
  const input = join(root, "tests/browser/screen/page.html");
  await build({
    ...quiet,
    build: { outDir, target: "es2022", assetsInlineLimit: 0, rolldownOptions: { input } },
  });
  const vite = await preview({ ...quiet, build: { outDir }, preview: { host: "127.0.0.1", port: 0 } });
  const url = `${vite.resolvedUrls?.local[0] ?? ""}tests/browser/screen/page.html`;
  const executablePath = process.env["CHROMIUM"] ?? "/usr/bin/chromium";
  const browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });
  const page = await browser.newPage({ reducedMotion: "reduce" });
  const failures: string[] = [];
  page.on("pageerror", (error) => failures.push(error.message));
  const settled = (): Promise<unknown> =>
    page.evaluate("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))");
  const resize = ([width, height]: readonly [number, number]): Promise<void> =>
    page.setViewportSize({ width, height });
  const turn: OpenPage["turn"] = async (look, size) => {
    await resize(sizes[size]);
    await page.evaluate(`document.documentElement.dataset.look = "${look}"`);
    await settled();
  };
  const faults = (): Promise<readonly (readonly string[])[]> =>
    Promise.all([axeFindings(page), overflowOf(page), smallTargetsOf(page, leastTarget)]);
  return {
    page,
    turn,
    lookedOver: async (more = () => Promise.resolve([])) => {
      const found: string[] = [];
      for (const [look, size] of views) {
        await turn(look, size);
        const here = [...(await faults()).flat(), ...(await more())];
        found.push(...here.map((fault) => `${look}, ${size}: ${fault}`));
      }
      return found;
    },
    show: async (scene, size = "lying") => {
      await resize(sizes[size]);
      await page.goto(url);
      await page.waitForFunction("'showScene' in globalThis && document.styleSheets.length > 0");
      await page.evaluate((shown) => globalThis.showScene(shown), scene);
      // The start page comes after the page; until then it shows that it waits.
      const isStart = scene.isLoaded && scene.events.length === 0;
      await page.waitForSelector(isStart ? "main:not(.waiting)" : "h1");
      // The pictures of the evening come after the page.
      if ((await page.locator(".evening").count()) > 0) await page.waitForSelector(".evening-box .lanes");
      await settled();
      if (failures.length > 0) throw new Error(failures.join("\n"));
    },
    findings: () => axeFindings(page),
    overflow: () => overflowOf(page),
    smallTargets: (least) => smallTargetsOf(page, least),
    close: async () => {
      await browser.close();
      await vite.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
}

/** What the page's own bench answers to an expression. */
export async function ask<T>(page: Page, expression: (bench: ScreenBench) => T): Promise<T> {
  return page.evaluate<T>(`(${expression.toString()})(globalThis.bench)`);
}
