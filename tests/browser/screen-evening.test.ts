import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import type { Scene } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";
import type { SceneName } from "./screen/scenes.ts";

let open: OpenPage;
let all: Readonly<Record<SceneName, Scene>>;

beforeAll(async () => {
  all = await scenes();
  open = await openPage();
});
afterAll(async () => open.close());

const layOut = async (name: SceneName, size: "lying" | "phone" = "lying"): Promise<void> => {
  await open.show(all[name], size);
  await open.page.locator(".evening-open").click();
  await open.page.waitForSelector(".evening-scroll .lane-hit");
};
const texts = (selector: string): Promise<readonly string[]> => open.page.locator(selector).allTextContents();

/** Runs in the page: the contrast between how two elements are painted, as WCAG 2.2 defines it. */
const contrast = (one: string, other: string): Promise<number> =>
  open.page.evaluate<number>(`(() => {
    const light = ([selector, property]) => {
      const painted = getComputedStyle(document.querySelector(selector))[property];
      const parts = painted.match(/[\\d.]+/g).slice(0, 3).map((part) => Number(part) / 255);
      const [r, g, b] = parts.map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const [a, b] = [${one}, ${other}].map(light).toSorted((x, y) => y - x);
    return (a + 0.05) / (b + 0.05);
  })()`);

describe("the picture of the evening on the screen", () => {
  it("[W65] a heavy line runs beneath what dinner waits for and on to the next, and a key says what it means", async () => {
    await layOut("step");
    expect(await texts(".picture-key li")).toEqual([
      "Dinner waits for these",
      "may start this much later",
      "wants you for a moment",
      "done",
      "heat of the oven",
    ]);
    const told = await open.page.locator('.evening-scroll [aria-label*="dinner waits for"]').count();
    expect(told).toBeGreaterThan(2);
    expect(await open.page.locator(".evening-scroll .lane-awaited").count()).toBe(told);
    expect(await open.page.locator(".evening-scroll .chain path").count()).toBe(1);
    for (const box of await open.page.locator(".evening-scroll .lane-awaited").all())
      expect((await box.boundingBox())?.height).toBeGreaterThanOrEqual(6);
    // The small picture has it as well, as many pixels high as still can be seen from an arm's length.
    expect(await open.page.locator(".evening-box .lane-awaited").count()).toBe(told);
  });

  it("[W65] [W66] [W68] line, tails and the lines of time stand out from their ground in every look", async () => {
    await layOut("busy");
    const ground = '[".lane-ground rect", "fill"]';
    for (const look of ["light", "dark", "contrast"] as const) {
      await open.turn(look, "lying");
      for (const sign of [
        '[".lane-awaited", "fill"]',
        '[".chain path", "stroke"]',
        '[".lane-slack", "stroke"]',
        '[".flag-now line", "stroke"]',
        '[".flag-ready line", "stroke"]',
      ])
        // WCAG 2.2, 1.4.11 (non-text contrast): 3:1.
        expect(await contrast(sign, ground), `${look} ${sign}`).toBeGreaterThanOrEqual(3);
      // WCAG 2.2, 1.4.6 (contrast, enhanced): 7:1 for what is written.
      expect(
        await contrast('[".flag-now rect", "fill"]', '[".flag-now text", "fill"]'),
      ).toBeGreaterThanOrEqual(7);
      expect(
        await contrast('[".heat-figures text", "fill"]', '[".heat polygon", "fill"]'),
      ).toBeGreaterThanOrEqual(7);
    }
  });

  it("[W67] [W68] degrees, now and ready are written in both pictures", async () => {
    await layOut("step");
    for (const picture of [".evening-box", ".evening-scroll"]) {
      expect(await texts(`${picture} .heat-figures text`)).toContain("390°F");
      expect(await texts(`${picture} .flag text`)).toEqual([
        expect.stringMatching(/^now 5:\d\d$/),
        expect.stringMatching(/^ready 6:\d\d$/),
      ]);
    }
  });

  it("[W69] who cannot see the picture reads the same, small and large", async () => {
    await open.show(all["step"]);
    const words = (await texts(".evening-face .unseen p")).join(" ");
    expect(words).toMatch(
      /^It is 5:\d\d pm\. Dinner is ready at 6:\d\d pm\. Dinner waits for these, one after the other: /,
    );
    expect(words).toMatch(/These can be put off: .*\. Oven: 390°F, set [45]:\d\d pm, hot 5:\d\d pm\.$/);
    await layOut("step");
    expect((await texts(".sheet .unseen p")).length).toBe((await texts(".evening-face > .unseen p")).length);
  });

  it("[W1] [W4] [W5] laid out large axe finds nothing, and nothing is too wide", async () => {
    await layOut("step");
    expect(await open.lookedOver()).toEqual([]);
  });

  it("[W71] on a phone the names of the lanes stay in sight while the evening is pushed along", async () => {
    await layOut("busy", "phone");
    const left = async (): Promise<number | undefined> =>
      (await open.page.locator(".lanes-named").boundingBox())?.x;
    const before = await left();
    await open.page.evaluate("document.querySelector('.evening-scroll').scrollTo({ left: 400 })");
    expect(await open.page.evaluate("document.querySelector('.evening-scroll').scrollLeft")).toBe(400);
    expect(await left()).toBe(before);
  });

  it("[W72] what is picked out of the picture comes into sight", async () => {
    await layOut("busy");
    const inSight = (): Promise<boolean> =>
      open.page.evaluate(
        "document.querySelector('.picked .key').getBoundingClientRect().bottom <= window.innerHeight",
      );
    expect(await inSight()).toBe(false);
    await open.page.locator('.lane-hit[aria-label^="chill the cabbage"]').click();
    await expect.poll(inSight).toBe(true);
  });
});
