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

/** Sizes in CSS pixels of screens that are sold, from memory: a tablet, a phone, a small phone. */
const other = {
  lowLying: [1180, 820],
  lowStanding: [820, 1180],
  phone: [390, 844],
  smallPhone: [360, 640],
  lyingPhone: [844, 390],
} as const;

async function show(scene: Scene, size: keyof typeof other): Promise<void> {
  await open.show(scene);
  const [width, height] = other[size];
  await open.page.setViewportSize({ width, height });
  await open.page.evaluate("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))");
}

/** The same scene with every step that long. */
function withSentence(scene: Scene, sentence: string): Scene {
  const events = scene.events.map((event) => {
    const { happening } = event;
    if (happening.type !== "MealBegun") return event;
    const dishes = happening.meal.dishes.map((dish) => ({
      ...dish,
      steps: dish.steps.map((step) => ({ ...step, do: sentence })),
    }));
    return { ...event, happening: { ...happening, meal: { ...happening.meal, dishes } } };
  });
  return { ...scene, events };
}

/** What of these is cut by its own box, as "class: text". */
const cut = (selector: string): Promise<readonly string[]> =>
  open.page.evaluate<readonly string[]>(`[...document.querySelectorAll("${selector}")]
    .filter((one) => one.scrollHeight > one.clientHeight + 1 || one.scrollWidth > one.clientWidth + 1)
    .map((one) => one.className + ": " + one.textContent)`);

/** Which of these do not stand whole above the ear. */
const belowEar = (selector: string): Promise<readonly string[]> =>
  open.page.evaluate<readonly string[]>(`(() => {
    const ear = document.querySelector(".ear").getBoundingClientRect().top;
    return [...document.querySelectorAll("${selector}")]
      .filter((one) => one.getBoundingClientRect().bottom > ear)
      .map((one) => one.textContent);
  })()`);

const letters = (): Promise<number> =>
  open.page.locator(".fit-words").evaluate((one) => Number.parseFloat(getComputedStyle(one).fontSize));

describe("screens of other sizes", () => {
  it("[W160] on a lower tablet with two helpers the sentence is whole, and so is every timer", async () => {
    for (const name of ["helped", "ring", "rings", "own"] as const)
      for (const size of ["lowLying", "lowStanding"] as const) {
        await show(all[name], size);
        expect(await cut(".cooking, .plate, .fit, .tiles"), `${name} ${size}`).toEqual([]);
      }
  });

  it("[W161] a phone on its side shows the step, its key and the next timer above the ear", async () => {
    for (const name of ["step", "ring", "rings", "attend", "heat", "wait", "helped", "lost"] as const) {
      await show(all[name], "lyingPhone");
      expect(await cut(".fit"), name).toEqual([]);
      expect(await belowEar(".fit-words, .plate .key-main, .tile-first .tile-digits"), name).toEqual([]);
      expect(await open.overflow(), name).toEqual([]);
      expect(await open.smallTargets(48), name).toEqual([]);
    }
  });

  it("[W162] on a phone a short step stands large, a long one whole, its key above the ear", async () => {
    for (const size of ["phone", "smallPhone"] as const) {
      await show(all.attend, size);
      expect(await letters(), size).toBe(48);
      for (const name of ["step", "ring", "helped"] as const) {
        await show(all[name], size);
        expect(await letters(), `${name} ${size}`).toBeGreaterThan(27);
        expect(await cut(".fit"), `${name} ${size}`).toEqual([]);
        expect(await belowEar(".plate .key-main"), `${name} ${size}`).toEqual([]);
      }
      // Far longer than any step of ours.
      await show(
        withSentence(all.step, "Turn each slice in the crumbs and lay it on the tray. ".repeat(6)),
        size,
      );
      expect(await cut(".fit"), size).toEqual([]);
    }
  });

  it("[W162] the keys of the meal stand in one row on a small phone", async () => {
    await show(all.step, "smallPhone");
    const tops = await open.page.evaluate<readonly number[]>(
      `[...document.querySelectorAll(".head-keys .key")].map((one) => one.getBoundingClientRect().top)`,
    );
    expect(tops.length).toBe(4);
    expect(new Set(tops).size).toBe(1);
    expect(await open.smallTargets(48)).toEqual([]);
  });

  it("[W166] on a phone an answer is whole, and a call takes two lines", async () => {
    for (const size of ["smallPhone", "lyingPhone"] as const) {
      await show(all.step, size);
      const said = open.page.locator(".ear-said");
      const low = (await said.boundingBox())?.height ?? 0;
      await open.page.getByRole("button", { name: "Type" }).click();
      await open.page.locator(".type-line input").fill("what is left");
      await open.page.keyboard.press("Enter");
      await expect.poll(() => said.innerText()).toMatch(/^.*steps: .* for the pears\.$/);
      expect(await cut(".ear-said"), size).toEqual([]);
      expect((await said.boundingBox())?.height, size).toBeGreaterThan(low);
    }
  });

  it("[W167] the meals come before how the page looks", async () => {
    await show(all.start, "smallPhone");
    const order = await open.page.evaluate<readonly string[]>(
      `[...document.querySelectorAll(".start h1, .meal-face, .start-look")].map((one) => one.className || one.tagName)`,
    );
    expect(order.at(0)).toBe("H1");
    expect(order.at(1)).toBe("meal-face");
    expect(order.at(-1)).toBe("start-look");
  });

  it("[W168] with letters half as large again they grow on every page, and the kitchen stays whole", async () => {
    const larger = (): Promise<void> =>
      open.page.evaluate("document.documentElement.style.fontSize = '24px'");
    const sizeOf = (selector: string): Promise<number> =>
      open.page
        .locator(selector)
        .first()
        .evaluate((one) => Number.parseFloat(getComputedStyle(one).fontSize));
    for (const size of ["phone", "smallPhone", "lowLying"] as const) {
      await show(all.start, size);
      const before = await sizeOf(".meal-about");
      await larger();
      expect(await sizeOf(".meal-about"), size).toBe(before * 1.5);
      await open.page.locator(".meal-face").first().click();
      expect([...(await open.overflow()), ...(await cut(".meal"))], size).toEqual([]);
    }
    for (const name of ["step", "rings", "helped", "own"] as const)
      for (const size of ["lowLying", "lowStanding", "phone", "smallPhone", "lyingPhone"] as const) {
        await show(all[name], size);
        await larger();
        await expect.poll(() => cut(".fit, .plate"), { message: `${name} ${size}` }).toEqual([]);
        expect(await open.overflow(), `${name} ${size}`).toEqual([]);
      }
  });
});
