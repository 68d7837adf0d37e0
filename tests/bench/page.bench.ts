/**
 * How quick the page is: first load, from the touch to the first spoken step, from the end of speech to the
 * action, and making a grammar. Real server, real Chromium, spoken sentences. Figures beside the ones to reach.
 * Run: npx tsx tests/bench/page.bench.ts (after npm run build)
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { root } from "../../tools/run.ts";
import { startChromium } from "../browser/kitchen/chromium.ts";
import { openKitchen, type KitchenPage } from "../browser/kitchen/kitchen-page.ts";
import { startServerProcess } from "../browser/kitchen/server-process.ts";
import { installTalkingMicrophone, speakTo } from "../browser/kitchen/talking-microphone.ts";
import { voices } from "../voice/synthetic-voices.ts";

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
];

const print = (line: string): void => void process.stdout.write(`${line}\n`);

/** The value below which a share of them lies. */
const quantile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(share * values.length))] ??
  Number.NaN;

function firstLoadBytes(): number {
  const html = readFileSync(`${root}dist/client/index.html`, "utf8");
  return readdirSync(`${root}dist/client/assets`)
    .filter((name) => name.endsWith(".js") && html.includes(name))
    .reduce((sum, name) => sum + gzipSync(readFileSync(`${root}dist/client/assets/${name}`)).length, 0);
}

type Telling = { readonly stovecall?: () => { readonly speaking: boolean } };

/** Milliseconds from now until the caller is heard. */
async function untilHeard({ page }: KitchenPage, since: number): Promise<number> {
  const heard = (): boolean => (globalThis as Telling).stovecall?.().speaking ?? false;
  await page.waitForFunction(heard, undefined, { polling: 10, timeout: 60_000 });
  return Date.now() - since;
}

const data = mkdtempSync(join(tmpdir(), "page-bench-"));
const server = await startServerProcess(data);
const browser = await startChromium("device");
try {
  const kitchen = await openKitchen(await browser.newContext(), server.url, installTalkingMicrophone);
  await kitchen.page.locator("button.meal-face").click();
  const touched = Date.now();
  await kitchen.page.locator("button.key-light").click();
  const toFirstSound = await untilHeard(kitchen, touched);
  const waits: number[] = [];
  const sounds: number[] = [];
  let atOnce = 0;
  for (const [at, sentence] of sentences.entries()) {
    const voice = voices[at % voices.length] ?? "slt";
    const taken = await speakTo(kitchen, voice, `okay kitchen, ${sentence}`, /./);
    const endedAt = taken.line.at - taken.afterMs;
    sounds.push(await untilHeard(kitchen, endedAt));
    waits.push(taken.afterMs);
    if (taken.times === 1) atOnce += 1;
  }
  print(`first load                    ${firstLoadBytes()} bytes of script, gzip  (to reach: 120,000)`);
  print(`touch to first spoken sound   ${toFirstSound} ms cold  (to reach: 800)`);
  print(
    `end of speech to the action   p50 ${quantile(waits, 0.5).toFixed(0)}, p95 ${quantile(waits, 0.95).toFixed(0)} ms  (to reach: 300, 500)`,
  );
  print(
    `end of speech to first sound  p50 ${quantile(sounds, 0.5).toFixed(0)}, p95 ${quantile(sounds, 0.95).toFixed(0)} ms  (to reach: p95 800)`,
  );
  print(`understood at once            ${atOnce} of ${sentences.length}`);
} finally {
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
}
