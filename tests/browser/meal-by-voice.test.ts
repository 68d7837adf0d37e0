import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startChromium } from "./kitchen/chromium.ts";
import { beginMeal, openKitchen, type KitchenPage } from "./kitchen/kitchen-page.ts";
import { readMealLog, told } from "./kitchen/meal-log.ts";
import { startServerProcess, type ServerProcess } from "./kitchen/server-process.ts";
import { recordTrack, type Sounding, type Track } from "./kitchen/spoken-track.ts";
import { firstRings } from "./kitchen/timers-that-rang.ts";

// Source: Debian's pocketsphinx-testdata: a person says "go forward ten meters", which commands no kitchen.
const noCommand = "/usr/share/pocketsphinx/test/data/goforward.raw";

/** The whole evening on one recording; times in seconds from the moment the page opens the microphone. */
const evening: readonly Sounding[] = [
  { at: 17, voice: "slt", says: "listen kitchen, chill the dough first" },
  { at: 26, voice: "rms", says: "listen kitchen, the oven is on" },
  { at: 38, voice: "awb", says: "listen kitchen, the dough is in the fridge" },
  { at: 52, voice: "rms", says: "listen kitchen, started the broth" },
  { at: 67, voice: "kal16", says: "listen kitchen, start with the parsnips" },
  { at: 86, voice: "slt", says: "listen kitchen, I have stirred it" },
  { at: 97, voice: "slt", says: "listen kitchen, how much cumin" },
  { at: 107, recording: noCommand },
  { at: 121, voice: "rms", says: "listen kitchen, the broth is done" },
  { at: 147, voice: "slt", says: "listen kitchen, the dough is done" },
  { at: 161, voice: "awb", says: "listen kitchen, I am done with that" },
  { at: 180, voice: "kal16", says: "listen kitchen, the parsnips are in the oven" },
  { at: 195, voice: "festival-kal", says: "listen kitchen, do the cakes next" },
  { at: 206, voice: "slt", says: "listen kitchen, set a timer for ninety seconds" },
  { at: 215, voice: "rms", says: "listen kitchen, pause the timer" },
  { at: 224, voice: "slt", says: "timer four" },
  { at: 239, voice: "awb", says: "listen kitchen, undo that" },
  { at: 250, voice: "rms", says: "listen kitchen, two more minutes" },
  { at: 264, voice: "festival-slt", says: "listen kitchen, the parsnips are done" },
  { at: 277, voice: "rms", says: "listen kitchen, I am done with that" },
  { at: 288, voice: "festival-slt", says: "listen kitchen, skip this step" },
  { at: 296, voice: "rms", says: "yes please" },
  { at: 311, voice: "slt", says: "listen kitchen, stop the timer" },
  { at: 324, voice: "kal16", says: "listen kitchen, end the meal" },
  { at: 332, voice: "slt", says: "yes please" },
];

const commands = evening.filter((sounding) => "says" in sounding).length;

let night: Night | null = null;

/** One evening: its own log, server, browser and page. */
type Night = {
  readonly data: string;
  readonly server: ServerProcess;
  readonly browser: Browser;
  readonly kitchen: KitchenPage;
};

async function openNight(track: Track): Promise<Night> {
  const data = mkdtempSync(join(tmpdir(), "meal-by-voice-"));
  const server = await startServerProcess(data);
  const browser = await startChromium({ wav: track.path });
  return { data, server, browser, kitchen: await openKitchen(await browser.newContext(), server.url) };
}

async function closeNight({ data, server, browser, kitchen }: Night): Promise<void> {
  report(await kitchen.watched());
  await browser.close();
  await server.stop();
  rmSync(data, { recursive: true, force: true });
}

const tonight = (): Night => {
  if (night === null) throw new Error("there was no evening");
  return night;
};

let track: Track;

beforeAll(async () => {
  track = await recordTrack("evening", evening, 20);
});

afterAll(async () => {
  if (night !== null) await closeNight(night);
});

describe("a whole meal cooked by voice in Chromium", () => {
  // A recording cannot wait for a machine that is busy for three seconds: it gets a second evening, not a third.
  it(
    "[E1] two touches begin it, and from then on speaking is enough, to the table",
    { retry: 1, timeout: 430_000 },
    async () => {
      if (night !== null) await closeNight(night);
      night = await openNight(track);
      const { kitchen, data } = night;
      await beginMeal(kitchen);
      await kitchen.page.locator(".closing").waitFor({ timeout: 360_000 });
      expect(told(readMealLog(data).events)).toEqual([
        "MealBegun",
        "PaceKnown",
        "OvenSet",
        "TaskStarted oat-cakes/chill-the-dough",
        "TimerStarted chill the dough",
        "TaskStarted pea-broth/simmer-the-broth",
        "TimerStarted simmer the broth",
        "AttentionGiven pea-broth/simmer-the-broth",
        "TaskFinished pea-broth/simmer-the-broth",
        "TimerStopped simmer the broth",
        "TaskFinished oat-cakes/chill-the-dough",
        "TimerStopped chill the dough",
        "TaskFinished parsnip-tray/season-the-parsnips",
        "TaskStarted parsnip-tray/bake-the-parsnips",
        "TimerStarted bake the parsnips",
        "TimerStarted timer 4",
        "TimerPaused timer 4",
        "Undone",
        "TaskFinished parsnip-tray/bake-the-parsnips",
        "TimerStopped bake the parsnips",
        "TaskFinished oat-cakes/fry-the-cakes#1",
        "TaskSkipped oat-cakes/fry-the-cakes#2",
        "TimerStopped timer 4",
        "MealEnded",
      ]);
      expect(readMealLog(data).commands.filter(({ refusal }) => refusal !== null)).toEqual([]);
    },
  );

  it("[E2] what was said aloud stood on the screen, and what was no command did nothing", async () => {
    const { kitchen } = tonight();
    const { lines } = await kitchen.watched();
    const heard = lines.filter(({ who }) => who === "cook");
    expect(heard.map(({ how }) => how)).toEqual(Array.from({ length: commands }, () => "voice"));
    expect(heard.filter(({ understood }) => understood === null)).toEqual([]);
    const answers = lines.flatMap(({ who, how, text }) =>
      who === "caller" && how === "answer" ? [text] : [],
    );
    const captions = await kitchen.captions();
    // The last answer falls together with the closing page, which has no caption.
    expect(answers.slice(0, -1).filter((text) => !captions.includes(text))).toEqual([]);
    expect(answers).toContainEqual("One and a half teaspoons of ground cumin, in this step.");
    expect(answers).toContainEqual("Which timer: bake the parsnips or timer four?");
    expect(answers).toContainEqual("Leave this out: fry the cakes?");
    expect(
      answers.some((text) => text.startsWith("The recipe allows two minutes and ten seconds in all")),
    ).toBe(true);
    expect(lines.some(({ how, text }) => how === "unasked" && text === "Broth: Stir the broth.")).toBe(true);
    expect(kitchen.troubles).toEqual([]);
  });

  it("[E3] every timer rang by itself at its time, with a chime of its own", async () => {
    const { kitchen, data } = tonight();
    const { journal } = await kitchen.watched();
    const rings = firstRings(readMealLog(data).events, journal);
    process.stdout.write(`rings, ms after their deadlines: ${rings.map(({ lateMs }) => lateMs).join(" ")}\n`);
    expect(rings.map(({ name }) => name)).toEqual([
      "simmer the broth",
      "chill the dough",
      "bake the parsnips",
      "timer 4",
    ]);
    expect(new Set(rings.map(({ chime }) => chime)).size).toBe(rings.length);
    // The worker starts a ring up to 300 ms before its stroke; a machine that does other work too may be late.
    expect(rings.filter(({ lateMs }) => lateMs < -400 || lateMs > 2_000)).toEqual([]);
    expect(journal.filter(({ kind }) => kind === "said").length).toBeGreaterThan(commands / 2);
  });
});

/** Prints the evening, second by second as the recording counts them; nothing here is asserted. */
function report({ lines, journal }: Awaited<ReturnType<KitchenPage["watched"]>>): void {
  const opened = lines[0]?.at ?? 0;
  const heard = lines.map(({ at, who, text, understood }) => ({
    at,
    text: who === "cook" ? `> ${text} (${understood ?? "not understood"})` : text,
  }));
  const rung = journal.flatMap(({ at, kind, text }) =>
    kind === "said" || kind === "shown" ? [] : [{ at, text: `[${kind}] ${text}` }],
  );
  for (const { at, text } of [...heard, ...rung].sort((a, b) => a.at - b.at)) {
    process.stdout.write(`${((at - opened) / 1000).toFixed(1).padStart(6)} ${text}\n`);
  }
  const understood = lines.filter((line) => line.who === "cook" && line.understood !== null).length;
  process.stdout.write(`${understood} sentences understood of ${commands} spoken once each\n`);
}
