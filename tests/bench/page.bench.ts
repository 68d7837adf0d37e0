/**
 * How quick the page is: first load, from the touch to the first spoken step, and from the end of speech to the action
 * and to the answer; and what listening costs. Real server, real Chromium, spoken sentences. Figures beside the ones to
 * reach.
 * Run: npm run build, then npx tsx tests/bench/page.bench.ts
 */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import type { Watched } from "../../client/kitchen/watched.ts";
import { toInt16 } from "../../core/speech/samples.ts";
import { root } from "../../tools/run.ts";
import { startChromium } from "../browser/kitchen/chromium.ts";
import { openKitchen, typeSentence, type KitchenPage } from "../browser/kitchen/kitchen-page.ts";
import { startServerProcess } from "../browser/kitchen/server-process.ts";
import { spokenSamples } from "../browser/kitchen/spoken-track.ts";
import { installTalkingMicrophone } from "../browser/kitchen/talking-microphone.ts";
import { type Voice, voices } from "../voice/synthetic-voices.ts";
import { percent, print, printFigure, printMachine, quantile } from "./figures.ts";

const sentences = [
  "what now",
  "what is left",
  "when do we eat",
  "set a timer for two minutes",
  "two more minutes",
  "which timers are on",
  "stop the timer",
  "what goes into this",
  "undo that",
  "what is in the oven",
  "next step",
  "say that again",
  "how many tablespoons in a quarter cup",
  "what can i say",
  "set a timer for half an hour",
  "where was i",
  "louder",
  "stop talking",
  "how do i know that it is done",
];

/** What silences the caller without the address, each said by two voices. */
const silencers = ["stop", "stop talking", "wait", "be quiet", "hush"] as const;

/** Each sentence by this many voices, so that the slowest twentieth can be told. */
const voicesEach = 2;

function firstLoadBytes(): number {
  const html = readFileSync(`${root}dist/client/index.html`, "utf8");
  return readdirSync(`${root}dist/client/assets`)
    .filter((name) => name.endsWith(".js") && html.includes(name))
    .reduce((sum, name) => sum + gzipSync(readFileSync(`${root}dist/client/assets/${name}`)).length, 0);
}

type Telling = { readonly stovecall?: () => Watched; readonly talk?: (base64: string) => Promise<void> };

/** Milliseconds from now until the caller is heard. */
async function untilHeard({ page }: KitchenPage, since: number): Promise<number> {
  const heard = (): boolean => (globalThis as Telling).stovecall?.().speaking ?? false;
  await page.waitForFunction(heard, undefined, { polling: 10, timeout: 60_000 });
  return Date.now() - since;
}

/** Resolves when the ear waits for a sentence and nobody speaks. */
async function untilItListens({ page }: KitchenPage): Promise<void> {
  const listens = (): boolean => {
    const told = (globalThis as Telling).stovecall?.();
    return told !== undefined && !told.speaking && ["waiting", "open"].includes(told.ear);
  };
  await page.waitForFunction(listens, undefined, { timeout: 60_000 });
}

/** Moments of the page's clock; null where it did not come within ten seconds. */
type Answered = {
  readonly endedAt: number;
  readonly actedAt: number | null;
  readonly soundedAt: number | null;
};

/** Runs in the page, whose own clock tells all three moments: speaks, and waits for what comes of it. */
async function sayInPage(base64: string): Promise<Answered> {
  const told = (): Watched | undefined => (globalThis as Telling).stovecall?.();
  const heard = (): Watched["lines"] => (told()?.lines ?? []).filter(({ who }) => who === "cook");
  const before = heard().length;
  await (globalThis as Telling).talk?.(base64);
  const endedAt = Date.now();
  let soundedAt: number | null = null;
  while (Date.now() - endedAt < 10_000 && (heard().length === before || soundedAt === null)) {
    if (told()?.speaking === true) soundedAt ??= Date.now();
    await new Promise((resolve) => setTimeout(resolve, 4));
  }
  return { endedAt, actedAt: heard()[before]?.at ?? null, soundedAt };
}

/** Runs in the page: waits until the caller speaks, says a sound over it, and tells when it fell silent; null where not. */
async function silenceInPage(
  base64: string,
): Promise<{ readonly endedAt: number; readonly silentAt: number | null }> {
  const told = (): Watched | undefined => (globalThis as Telling).stovecall?.();
  const cuts = (): number => (told()?.journal ?? []).filter(({ kind }) => kind === "cut").length;
  const wait = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 4));
  while (told()?.speaking !== true) await wait();
  const before = cuts();
  await (globalThis as Telling).talk?.(base64);
  const endedAt = Date.now();
  while (cuts() === before && told()?.speaking === true) await wait();
  return { endedAt, silentAt: cuts() === before ? null : Date.now() };
}

/** How long after its last sound a word has silenced the caller, in ms; null where the caller spoke on to its end. */
async function silence(kitchen: KitchenPage, voice: Voice, sentence: string): Promise<number | null> {
  const spoken = await spokenSamples(voice, sentence);
  const samples = toInt16(spoken);
  const sound = Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength).toString("base64");
  await untilItListens(kitchen);
  const silenced = kitchen.page.evaluate(silenceInPage, sound);
  await typeSentence(kitchen, "what can i say");
  const { endedAt, silentAt } = await silenced;
  return silentAt === null ? null : silentAt - (endedAt - quietEndMs(spoken));
}

/** How long the quiet at the end of a sound is, in ms: the cook has finished before the recording has. */
function quietEndMs(samples: Float32Array): number {
  const loud = samples.findLastIndex((sample) => Math.abs(sample) > 0.01);
  return ((samples.length - 1 - loud) * 1000) / 48_000;
}

/** What came of a sentence, in ms after its last sound; null where nothing did. */
type Waits = {
  readonly what: string;
  readonly action: number;
  readonly sound: number | null;
};

async function say(kitchen: KitchenPage, voice: Voice, sentence: string): Promise<Waits | null> {
  const spoken = await spokenSamples(voice, `listen kitchen, ${sentence}`);
  const samples = toInt16(spoken);
  const sound = Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength).toString("base64");
  await untilItListens(kitchen);
  const { endedAt, actedAt, soundedAt } = await kitchen.page.evaluate(sayInPage, sound);
  if (actedAt === null) return null;
  const lastSoundAt = endedAt - quietEndMs(spoken);
  const what = `"${sentence}" by ${voice}`;
  return { what, action: actedAt - lastSoundAt, sound: soundedAt === null ? null : soundedAt - lastSoundAt };
}

async function measureSilence(kitchen: KitchenPage): Promise<void> {
  const waits: number[] = [];
  let slowest = { what: "", ms: 0 };
  for (const [at, sentence] of silencers.entries()) {
    for (const voice of [voices[at], voices[at + 2]]) {
      const came = voice === undefined ? null : await silence(kitchen, voice, sentence);
      if (came === null) print(`  "${sentence}" by ${voice ?? "nobody"} did not silence the caller`);
      else waits.push(came);
      if (came !== null && came > slowest.ms)
        slowest = { what: `"${sentence}" by ${voice ?? "nobody"}`, ms: came };
    }
  }
  const p95 = quantile(waits, 0.95);
  printFigure("a word that silences the caller, p95", `${p95.toFixed(0)} ms`, "400 ms", p95 <= 400);
  print(
    `the same, p50: ${quantile(waits, 0.5).toFixed(0)} ms; ${waits.length} of ${2 * silencers.length} did; slowest: ${slowest.what}`,
  );
}

/** Processor time that the browser takes while the ear waits and nobody speaks, as a share of one core. */
async function shareWhileListening(browser: Browser, kitchen: KitchenPage): Promise<number> {
  await untilItListens(kitchen);
  const session = await browser.newBrowserCDPSession();
  const spentS = async (): Promise<number> => {
    const { processInfo } = await session.send("SystemInfo.getProcessInfo");
    return processInfo.reduce((sum, { cpuTime }) => sum + cpuTime, 0);
  };
  const [before, since] = [await spentS(), Date.now()];
  await kitchen.page.waitForTimeout(10_000);
  return (1000 * ((await spentS()) - before)) / (Date.now() - since);
}

async function measure(kitchen: KitchenPage): Promise<void> {
  printMachine();
  await kitchen.page.locator("button.meal-face").click();
  const touched = Date.now();
  await kitchen.page.locator("button.key-light").click();
  const toFirstSound = await untilHeard(kitchen, touched);
  const waits: Waits[] = [];
  let said = 0;
  for (const [at, sentence] of sentences.entries()) {
    for (let each = 0; each < voicesEach; each += 1) {
      said += 1;
      const voice = voices[(at + each * 3) % voices.length] ?? "slt";
      const came = await say(kitchen, voice, sentence);
      if (came === null) print(`  nothing came of "${sentence}" by ${voice}`);
      else waits.push(came);
    }
  }
  const actions = waits.map(({ action }) => action);
  const sounds = waits.flatMap(({ sound }) => sound ?? []);
  const bytes = firstLoadBytes();
  const ms = (value: number): string => `${value.toFixed(0)} ms`;
  const figure = (what: string, value: number, most: number): void =>
    printFigure(what, ms(value), ms(most), value <= most);
  printFigure("first load, script, gzip", `${bytes} bytes`, "120000 bytes", bytes <= 120_000);
  figure("touch to first spoken sound, cold", toFirstSound, 800);
  figure("end of speech to the action, p50", quantile(actions, 0.5), 300);
  figure("end of speech to the action, p95", quantile(actions, 0.95), 500);
  print(`end of speech to first sound, p50: ${ms(quantile(sounds, 0.5))}`);
  figure("end of speech to first sound, p95", quantile(sounds, 0.95), 800);
  const slowest = waits.toSorted((a, b) => b.action - a.action).slice(0, 3);
  print(`slowest: ${slowest.map(({ what, action }) => `${what} ${ms(action)}`).join(", ")}`);
  print(`sentences that something came of: ${waits.length} of ${said}`);
}

if (!existsSync(`${root}dist/client/index.html`))
  throw new Error("The page is not built. Run npm run build first.");
const data = mkdtempSync(join(tmpdir(), "page-bench-"));
const server = await startServerProcess(data);
const browser = await startChromium("device");
try {
  const context = await browser.newContext();
  // The runner of this file wraps named functions, also those that run in the page.
  await context.addInitScript({ content: "globalThis.__name ??= (named) => named;" });
  const kitchen = await openKitchen(context, server.url, installTalkingMicrophone);
  await measure(kitchen);
  await measureSilence(kitchen);
  print(
    `processor while it listens and nobody speaks: ${percent(await shareWhileListening(browser, kitchen), 1)} of a core`,
  );
} finally {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
}
