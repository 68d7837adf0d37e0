import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { TrialHeard } from "../../client/kitchen/ear-trial.ts";
import type { SentenceLevels } from "../../core/speech/sentence-levels.ts";
import { spokenWords } from "../../core/speech/spoken-words.ts";
import { ask, openPage, sizes } from "./screen/open-page.ts";
import type { OpenPage, Size } from "./screen/open-page.ts";
import type { Scene } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;
let step: Scene;
let noisy: Scene;

beforeAll(async () => {
  ({ step, noisy } = await scenes());
  open = await openPage();
});
afterAll(async () => open.close());

const soft: SentenceLevels = { voiceDb: -44, bandDb: -49, peakDb: -30, noiseDb: -80 };
const well: SentenceLevels = { voiceDb: -26, bandDb: -31, peakDb: -10, noiseDb: -80 };

const heard = (text: string, levels: SentenceLevels, addressed = true): TrialHeard => ({
  verdict: { kind: "command", words: spokenWords(text), confidence: 0.9, rivals: [], addressed },
  words: [],
  levels,
  beganAgoMs: 0,
});
const say = (sentence: TrialHeard): Promise<void> =>
  open.page.evaluate((said) => globalThis.bench.sayInTrial(said), sentence);
const key = (words: string) => open.page.locator(".check-keys button", { hasText: words });
const sentence = async (): Promise<string> =>
  ((await open.page.locator(".check-sentence").textContent()) ?? "").replace(/^“[^,]*, |”$/g, "");
const isTrying = (): Promise<boolean> => ask(open.page, (bench) => bench.isTrying());
const settings = () => ask(open.page, (bench) => bench.settings());

async function begin(size: Size = "lying"): Promise<void> {
  await open.show(step, size);
  await open.page.locator("header button", { hasText: "Kitchen" }).click();
  await open.page.locator("text=Check the ear").click();
  await open.page.locator(".check-sentence").waitFor();
}

/** Says all that is left as it stands there, and waits until it goes on. */
async function sayAll(levels: SentenceLevels, withoutAddress: readonly number[] = []): Promise<void> {
  for (let at = 0; at < 5; at += 1) {
    const words = await sentence();
    await say(heard(words, levels, !withoutAddress.includes(at)));
    await open.page.waitForFunction(
      (before) => document.querySelector(".check-sentence")?.textContent.includes(before) !== true,
      words,
    );
  }
  await open.page.locator(".check-verdict").waitFor();
}

/** A right sentence is shown for a second and a third, then the next one follows. */
const goesOn = { timeout: 5_000 };

/** One sentence, and no more. */
async function sayOne(levels: SentenceLevels): Promise<void> {
  await say(heard(await sentence(), levels));
  await key("That is enough").click();
  await open.page.locator(".check-verdict").waitFor();
}

async function expectFine(what: string): Promise<void> {
  expect(await open.lookedOver(cutOff), what).toEqual([]);
  await open.turn("light", "lying");
}

/** What of the sheet is not to be seen without scrolling it: its keys always are. */
const cutOff = (): Promise<readonly string[]> =>
  open.page.evaluate<readonly string[]>(`[...document.querySelectorAll(".check-keys .key")].flatMap((one) => {
    const { top, bottom } = one.getBoundingClientRect();
    return top < 0 || bottom > innerHeight ? [one.textContent + " is cut off"] : [];
  })`);

describe("the check of the ear on the screen", () => {
  it("[W33] begins from the drawer, and beside the sign that it is too loud", async () => {
    await begin();
    expect(await isTrying()).toBe(true);
    await open.show(noisy);
    await open.page.locator(".ear button", { hasText: "Check the ear" }).click();
    await open.page.locator(".check-sentence").waitFor();
  });

  it("[W1] [W5] [W40] for every eye and hand, while a sentence is said and when one was misheard", async () => {
    await begin();
    await ask(open.page, (bench) => bench.levelsInTrial(-44, -68));
    await expectFine("a sentence");
    for (const size of ["lying", "standing"] as const) {
      await open.turn("light", size);
      const type = await open.page.evaluate<string>(
        "getComputedStyle(document.querySelector('.check-sentence')).fontSize",
      );
      expect(Number.parseFloat(type)).toBeGreaterThanOrEqual(72);
    }
    await say(heard("what now", soft));
    await open.page.locator(".is-wrong").waitFor();
    await expectFine("a misheard sentence");
  });

  it("[W40] the bars show the voice against the room, told apart without colour", async () => {
    await begin();
    await ask(open.page, (bench) => bench.levelsInTrial(-20, -60));
    const widths = () =>
      open.page.evaluate<readonly number[]>(`[...document.querySelectorAll(".level-bar")].map((bar) =>
        bar.querySelector(".level-fill").getBoundingClientRect().width / bar.clientWidth)`);
    await expect.poll(async () => (await widths()).map((share) => Math.round(share * 100))).toEqual([75, 25]);
    const image = "getComputedStyle(document.querySelector('.level-room .level-fill')).backgroundImage";
    expect(await open.page.evaluate<string>(image)).toContain("gradient");
  });

  it("[W40] says what was heard, and goes on by itself", async () => {
    await begin();
    const news = open.page.locator(".check-news");
    const first = await sentence();
    await say(heard("what now", well));
    await expect.poll(() => news.textContent()).toBe("Heard “what now” instead. Say it once more, or wait.");
    await say(heard(first, well));
    await expect.poll(() => news.textContent()).toBe("Heard right.");
    await expect.poll(sentence, goesOn).not.toBe(first);
    await expect.poll(() => news.textContent()).toBe("Listening.");
    expect(await open.page.locator(".pip-right").count()).toBe(1);
  });

  it("[W41] a sentence is said again or left out by touch, and a check ends in the middle", async () => {
    await begin();
    const first = await sentence();
    await say(heard("what now", well));
    await key("Say it again").click();
    expect([await sentence(), await open.page.locator(".check-news").textContent()]).toEqual([
      first,
      "Listening.",
    ]);
    await key("Leave it out").click();
    await expect.poll(sentence).not.toBe(first);
    await key("That is enough").click();
    expect(await open.page.locator(".check-verdict").textContent()).toBe(
      "No sentence was said, so nothing was found out.",
    );
    expect(await key("Keep it").count()).toBe(0);
  });

  it("[W41] put away at any time, by its key or with Escape, it has changed nothing and the ear is as before", async () => {
    for (const away of ["key", "Escape"] as const) {
      await begin();
      const before = await settings();
      await say(heard(await sentence(), soft));
      if (away === "Escape") await open.page.keyboard.press("Escape");
      else await open.page.locator(".sheet-head button").click();
      await open.page.waitForSelector("dialog", { state: "detached" });
      await expect.poll(isTrying).toBe(false);
      expect(await settings()).toEqual(before);
    }
  });

  it("[W42] what was found stands there in sentences, and nothing is set before it is kept", async () => {
    await begin();
    await sayAll(soft);
    await expectFine("what was found");
    expect(await open.page.locator(".check-verdict").textContent()).toBe(
      "All five sentences were heard right.",
    );
    expect(await open.page.locator(".check-finding").allTextContents()).toEqual([
      "Your voice comes in softly.",
      "The room is quiet.",
      "Kept, this makes the ear more sensitive to you.",
    ]);
    expect(await open.page.locator(".level-figure").allTextContents()).toEqual(["−49 dBFS", "−80 dBFS"]);
    expect((await settings()).tuning).toBeNull();
    await key("Keep it").click();
    expect((await settings()).tuning).toEqual({ gainDb: 18, quietestDb: -59 });
  });

  it("[W42] “as before” leaves all as it was, by touch and by voice; “keep it” may be said too", async () => {
    for (const [how, tuning] of [
      ["touch", null],
      ["as before", null],
      ["keep it", { gainDb: 18, quietestDb: -59 }],
    ] as const) {
      await begin();
      await sayOne(soft);
      if (how === "touch") await key("As before").click();
      else await say(heard(how, soft));
      await open.page.waitForSelector("dialog", { state: "detached" });
      await expect.poll(async () => (await settings()).tuning, { message: how }).toEqual(tuning);
    }
  });

  it("[W42] where the address was lost twice another is taken with one touch, and kept with the rest", async () => {
    await begin();
    await sayAll(well, [1, 3]);
    await expectFine("another name");
    expect(await open.page.locator(".check-finding").last().textContent()).toContain(
      "“listen kitchen” was missed",
    );
    expect(await key("Keep it").count()).toBe(0);
    await open.page.locator(".choice button", { hasText: "attention kitchen" }).click();
    expect((await settings()).address).toBe("listen kitchen");
    await key("Keep it").click();
    expect((await settings()).address).toBe("attention kitchen");
  });

  it("[W43] nothing that is said in a check is carried out", async () => {
    await begin();
    const before = await ask(open.page, (bench) => bench.store.log.value.events.length);
    const lines = await ask(open.page, (bench) => bench.caller.lines.value.length);
    await sayAll(well);
    expect(await ask(open.page, (bench) => bench.store.log.value.events.length)).toBe(before);
    expect(await ask(open.page, (bench) => bench.caller.lines.value.length)).toBe(lines);
  });

  it("[W43] what a check has set is told in the drawer and forgotten by a touch", async () => {
    await begin();
    await sayOne(soft);
    await key("Keep it").click();
    await open.page.locator("header button", { hasText: "Kitchen" }).click();
    await open.page.locator("text=A check has made the ear 18 dB more sensitive.").waitFor();
    await open.page.locator("text=Forget what the check set").click();
    expect((await settings()).tuning).toBeNull();
    await open.page.locator("text=Not heard well?").waitFor();
  });

  it("[W4] the whole of it fits a tablet lying and standing", async () => {
    await begin();
    for (const size of ["lying", "standing"] as const) {
      await open.turn("light", size);
      const height = await open.page.evaluate<number>("document.querySelector('dialog').scrollHeight");
      expect(height).toBeLessThanOrEqual(sizes[size][1]);
    }
  });
});
