import type { Page } from "playwright-core";
import type { Line } from "../../../client/kitchen/caller.ts";
import { toInt16 } from "../../../core/speech/samples.ts";
import type { Voice } from "../../voice/synthetic-voices.ts";
import type { KitchenPage } from "./kitchen-page.ts";
import { spokenSamples } from "./spoken-track.ts";

type Talking = { talk?: (base64: string) => Promise<void>; unplug?: () => void };

/**
 * Gives a page a microphone that speaks when the test says so: a stream of Web Audio in place of the device.
 * Everything behind it is the real thing: worklet, worker, endpointer, recogniser. Call it before the page loads.
 */
export async function installTalkingMicrophone(page: Page): Promise<void> {
  await page.addInitScript(talkingMicrophone);
}

/** Runs in the page. */
function talkingMicrophone(): void {
  navigator.mediaDevices.getUserMedia = () => {
    const audio = new AudioContext({ sampleRate: 48_000 });
    const microphone = audio.createMediaStreamDestination();
    // A source that never ends keeps the stream flowing between sentences.
    const room = new ConstantSourceNode(audio, { offset: 0 });
    room.connect(microphone);
    room.start();
    (globalThis as Talking).talk = async (base64) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const samples = Float32Array.from(new Int16Array(bytes.buffer), (sample) => sample / 0x8000);
      const buffer = audio.createBuffer(1, samples.length, 48_000);
      buffer.copyToChannel(samples, 0);
      const voice = new AudioBufferSourceNode(audio, { buffer });
      voice.connect(microphone);
      await new Promise<void>((resolve) => {
        voice.onended = () => resolve();
        voice.start();
      });
    };
    // A device that goes ends its tracks by itself; a script can only tell the page that it has.
    (globalThis as Talking).unplug = () => {
      for (const track of microphone.stream.getTracks()) track.dispatchEvent(new Event("ended"));
    };
    return Promise.resolve(microphone.stream);
  };
}

/** What came of a sentence: the line that the page made of it, and how long after its last sound (ms). */
export interface Taken {
  readonly line: Line;
  readonly afterMs: number;
  /** 1 where it was understood at once; a cook who is not heard says it again. */
  readonly times: number;
}

const attempts = 3;

/**
 * Speaks as a cook does: waits until the caller has finished and the ear is open, speaks, and says it again where
 * something else or nothing came of it. Throws when it was not understood three times.
 * @param means what the page says that it understood
 */
export async function speakTo(
  kitchen: KitchenPage,
  voice: Voice,
  sentence: string,
  means: RegExp,
): Promise<Taken> {
  const sound = await recorded(voice, sentence);
  const misheard: string[] = [];
  for (let times = 1; times <= attempts; times += 1) {
    await untilItListens(kitchen);
    const before = (await heardBy(kitchen)).length;
    await kitchen.page.evaluate((said) => (globalThis as Talking).talk?.(said), sound);
    const endedAt = Date.now();
    const line = await nextHeard(kitchen, before);
    if (line !== null && means.test(line.understood ?? ""))
      return { line, afterMs: line.at - endedAt, times };
    misheard.push(line === null ? "nothing" : `"${line.text}"`);
  }
  throw new Error(`"${sentence}" was said ${attempts} times and heard as ${misheard.join(", ")}`);
}

/**
 * Speaks as soon as something has happened in the page, without the way through the test.
 * @param happened runs in the page
 */
export async function sayWhen(
  kitchen: KitchenPage,
  voice: Voice,
  sentence: string,
  happened: () => boolean,
): Promise<Line | null> {
  const before = (await heardBy(kitchen)).length;
  await utterWhen(kitchen, voice, sentence, happened);
  return nextHeard(kitchen, before);
}

/** The same, without waiting for what comes of it. */
export async function utterWhen(
  kitchen: KitchenPage,
  voice: Voice,
  sentence: string,
  happened: () => boolean,
): Promise<void> {
  const sound = await recorded(voice, sentence);
  await kitchen.page.waitForFunction(happened, undefined, { polling: 20, timeout: 60_000 });
  await kitchen.page.evaluate((said) => (globalThis as Talking).talk?.(said), sound);
}

/** Takes the microphone away. */
export const unplug = ({ page }: KitchenPage): Promise<void> =>
  page.evaluate(() => (globalThis as Talking).unplug?.());

/** A sentence as the page's microphone takes it: 16 bits at 48 kHz, in letters. */
async function recorded(voice: Voice, sentence: string): Promise<string> {
  const samples = toInt16(await spokenSamples(voice, sentence));
  return Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength).toString("base64");
}

/** Resolves when the ear waits for a sentence and nobody speaks. */
async function untilItListens({ page }: KitchenPage): Promise<void> {
  await page.waitForFunction(
    () => {
      const tell = (globalThis as { stovecall?: () => { readonly ear: string } }).stovecall;
      return ["waiting", "open"].includes(tell?.().ear ?? "");
    },
    undefined,
    { timeout: 60_000 },
  );
}

const heardBy = async (kitchen: KitchenPage): Promise<readonly Line[]> =>
  (await kitchen.watched()).lines.filter(({ who }) => who === "cook");

/** The line that comes next; null when the ear has gone back to waiting without one. */
async function nextHeard(kitchen: KitchenPage, before: number): Promise<Line | null> {
  const until = Date.now() + 12_000;
  while (Date.now() < until) {
    const line = (await heardBy(kitchen))[before];
    if (line !== undefined) return line;
    await kitchen.page.waitForTimeout(100);
  }
  return null;
}
