import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ask, openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import type { Scene } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";
import type { SceneName } from "./screen/scenes.ts";

let open: OpenPage;
let all: Readonly<Record<SceneName, Scene>>;

const scene = (name: SceneName): Scene => all[name];

beforeAll(async () => {
  all = await scenes();
  open = await openPage();
});
afterAll(async () => open.close());

describe("a touch means a sentence", () => {
  const touch = async (label: string): Promise<void> =>
    open.page.getByRole("button", { name: label }).first().click();
  const deeds = () =>
    ask(open.page, (bench) => bench.store.log.value.events.map((event) => event.happening.type));

  it("[W10] two touches begin a meal, with what stands in its file, and wake sound and ear", async () => {
    await open.show(scene("start"));
    await open.page.locator(".meal-face", { hasText: "Welcome Supper" }).click();
    expect(await open.page.getByRole("button", { name: "Light the stove" }).isVisible()).toBe(true);
    const box = await open.page.getByRole("button", { name: "Light the stove" }).boundingBox();
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(800);
    await touch("Light the stove");
    const [begun] = await ask(open.page, (bench) => [...bench.begun]);
    expect(begun?.[0]).toBe("welcome-supper");
    expect(begun?.[1]).toEqual({
      servings: {
        "lentil-soup": 4,
        "cumin-carrots": 4,
        "griddle-flatbreads": 4,
        "cabbage-salad": 4,
        "ginger-pears": 4,
      },
      // The clock stands at 4:40 pm; the file asks for 6:30 pm.
      serveAt: Date.UTC(2031, 5, 14, 18, 30),
      helpers: 0,
      swaps: [],
      notes: {},
    });
    expect(await ask(open.page, (bench) => bench.woken())).toBe(1);
  });

  it("[W11] servings and serving time move by touch, no earlier than can be", async () => {
    await open.show(scene("start"));
    await open.page.locator(".meal-face", { hasText: "Welcome Supper" }).click();
    await touch("For how many: more");
    const time = open.page.locator('[role="group"][aria-label="On the table"] output');
    await touch("On the table: more");
    expect(await time.textContent()).toBe("6:45 pm");
    for (
      let press = 0;
      press < 10 && (await open.page.getByRole("button", { name: "On the table: less" }).isEnabled());
      press += 1
    )
      await touch("On the table: less");
    expect(await time.textContent()).toBe("when it is ready");
    await touch("Light the stove");
    const [begun] = await ask(open.page, (bench) => [...bench.begun]);
    expect(Object.values(begun?.[1].servings ?? {})).toEqual([5, 5, 5, 5, 5]);
    expect(begun?.[1].serveAt).toBeNull();
  });

  it("[W12] the large key finishes the step and the next one takes the plate", async () => {
    await open.show(scene("step"));
    const before = await open.page.locator(".fit-words").textContent();
    await open.page.locator(".key-main").click();
    expect(await deeds()).toContain("TaskFinished");
    expect(await open.page.locator(".fit-words").textContent()).not.toBe(before);
    expect(await open.page.locator(".ear-heard").textContent()).toContain("Touched");
  });

  it("[W12] the large key has the words of its call and does what they say", async () => {
    const expected = [
      ["ring", "I'll look", "RingAnswered"],
      ["heat", "It's set", "OvenSet"],
      ["held", "Go on", "WentOn"],
    ] as const;
    for (const [name, words, deed] of expected) {
      await open.show(scene(name));
      expect(await open.page.locator(".key-main").textContent(), name).toBe(words);
      await open.page.locator(".key-main").click();
      expect((await deeds()).filter((type) => type === deed).length, name).toBeGreaterThan(0);
    }
    await open.show(scene("attend"));
    const given = (await deeds()).filter((type) => type === "AttentionGiven").length;
    await open.page.locator(".key-main").click();
    expect((await deeds()).filter((type) => type === "AttentionGiven").length).toBe(given + 1);
  });

  it("[W12] of two rings each is answered by its own key, and the other goes on", async () => {
    for (const [size, key] of [
      ["standing", ".tile-first .key-ring"],
      ["lying", ".plate-foot .key-main"],
      ["lying", ".also li:first-child .key"],
      ["lying", ".tile-other .key-ring"],
    ] as const) {
      await open.show(scene("rings"), size);
      expect(await open.page.locator(".tile-ringing").count(), key).toBe(2);
      await open.page.locator(key).first().click();
      expect((await deeds()).filter((type) => type === "RingAnswered").length, key).toBe(1);
      expect(await open.page.locator(".tile-ringing").count(), key).toBe(1);
      expect(await open.page.locator(".ear-said").textContent(), key).toMatch(
        /^All right\. Still ringing: \w+\.$/,
      );
    }
  });

  it("[W12] a step that is over is opened again from what is left", async () => {
    await open.show(scene("step"));
    await open.page.getByRole("button", { name: "Kitchen", exact: true }).click();
    await open.page.locator(".left-dish", { hasText: "Carrots" }).locator("summary").click();
    await open.page
      .getByRole("button", { name: /^Open it again/ })
      .first()
      .click();
    expect((await deeds()).filter((type) => type === "TaskReopened").length).toBe(1);
    expect(await open.page.locator(".ear-said").textContent()).toMatch(/^Back to this\. /);
  });

  it("[W31] a room too loud to hear is told with what helps, and nothing moves", async () => {
    for (const size of ["lying", "standing", "phone"] as const) {
      await open.show(scene("step"), size);
      const status = open.page.locator(".ear [role=status]");
      const places = (): Promise<unknown> =>
        open.page.evaluate(`[".ear", ".ear-talk", ".ear-round", ".plate"].map((one) => {
          const { left, top, height } = document.querySelector(one).getBoundingClientRect();
          return [one, left, top, height].join(" ");
        })`);
      const before = await places();
      expect(await status.textContent()).toBe("");
      await ask(open.page, (bench) => bench.makeRoom("loud"));
      expect(await status.textContent()).toBe("");
      await ask(open.page, (bench) => bench.makeRoom("too-loud"));
      await expect
        .poll(() => status.textContent())
        .toBe("Too loud to hear you. Turn the fan or tap down, or come closer; typing and tapping work.");
      expect(await open.page.locator(".ear-button").getAttribute("aria-label")).toMatch(/^Too loud to hear/);
      expect(await open.page.locator(".saying").count()).toBe(0);
      expect(await places(), size).toEqual(before);
      await ask(open.page, (bench) => bench.makeRoom("quiet"));
      await expect.poll(() => open.page.locator(".saying").count()).toBeGreaterThan(0);
      expect(await status.textContent()).toBe("");
    }
  });

  it("[W31] what is typed then is understood, and the sign is read out no second time", async () => {
    await open.show(scene("noisy"));
    const sign = await open.page.locator(".noise-sign").elementHandle();
    await open.page.locator("text=Type").click();
    await open.page.locator(".type-line input").fill("what now");
    await open.page.keyboard.press("Enter");
    await expect.poll(() => open.page.locator(".understood").count()).toBe(1);
    await open.page.locator(".type-line >> text=Close").click();
    // Still the very element: one made anew would be read out again.
    expect(await sign.evaluate((element) => element.isConnected)).toBe(true);
  });

  it("[W20] what the plate calls for does not stand among what comes after it", async () => {
    await open.show(scene("heat"));
    expect(await open.page.locator(".fit-words").textContent()).toBe("Set the oven to 390°F.");
    const after = await open.page.locator(".next-title").allTextContents();
    expect(after.length).toBe(3);
    expect(after.filter((title) => title.startsWith("Oven"))).toEqual([]);
  });

  it("[W13] a timer of its own in two touches; paused, lengthened and cancelled from its tile", async () => {
    await open.show(scene("step"));
    await touch("New timer");
    await touch("1 min");
    expect(await open.page.locator(".tile-first .tile-digits").textContent()).toBe("1:00");
    await open.page.locator(".tile-first .tile-face").click();
    await touch("+2 min");
    expect(await open.page.locator(".tile", { hasText: "3:00" }).count()).toBe(1);
    await open.page.locator(".tile", { hasText: "3:00" }).locator(".tile-face").click();
    await touch("Pause it");
    expect(await open.page.locator(".tile-paused .tile-digits").textContent()).toBe("3:00");
    await open.page.locator(".tile-paused .tile-face").click();
    await touch("Cancel it");
    expect(await deeds()).toEqual(
      expect.arrayContaining(["TimerStarted", "TimerLengthened", "TimerPaused", "TimerCancelled"]),
    );
    expect(await open.page.locator(".tile-paused").count()).toBe(0);
  });

  it("[W14] what destroys is asked back with large answers; no keeps it, yes does it", async () => {
    await open.show(scene("step"));
    await touch("Kitchen");
    await touch("End the meal");
    await open.page.locator(".key-answer").first().waitFor();
    expect(await open.page.locator(".key-answer").allTextContents()).toEqual([
      "Yes, it is over",
      "No, cook on",
    ]);
    await touch("No, cook on");
    expect(await deeds()).not.toContain("MealEnded");
    await touch("Kitchen");
    await touch("End the meal");
    await touch("Yes, it is over");
    expect(await deeds()).toContain("MealEnded");
    expect(await open.page.locator("h1").textContent()).toBe("The meal is over.");
    await touch("Cook something else");
    expect(await open.page.locator("h1").textContent()).toBe("What are we cooking?");
  });

  it("[P60] the evening laid out large offers the calendar file, a knuckle high", async () => {
    await open.show(scene("step"));
    await open.page.locator(".evening-open").click();
    const key = open.page.getByRole("link", { name: "Calendar file" });
    expect([await key.getAttribute("href"), await key.getAttribute("download")]).toEqual([
      "/api/calendar",
      "",
    ]);
    expect((await key.boundingBox())?.height).toBeGreaterThanOrEqual(48);
    expect(await open.smallTargets(48)).toEqual([]);
  });

  it("[W15] typing means the same as speaking; a half sentence is asked back", async () => {
    await open.show(scene("step"));
    await touch("Type");
    await open.page.locator("input:focus").waitFor();
    await open.page.keyboard.type("hold everything");
    await open.page.keyboard.press("Enter");
    await expect.poll(deeds).toContain("EverythingHeld");
    await open.page.keyboard.type("set a timer");
    await open.page.keyboard.press("Enter");
    await touch("Ten minutes");
    expect((await deeds()).at(-1)).toBe("TimerStarted");
  });

  it("[W61] a question about the plan is answered where every answer stands, and does nothing", async () => {
    await open.show(scene("step"));
    const before = await deeds();
    await touch("Type");
    await open.page.locator("input:focus").waitFor();
    await open.page.keyboard.type("what if we eat at eleven");
    await open.page.keyboard.press("Enter");
    await open.page
      .getByText(/I only looked: say "we eat at eleven o'clock" to do so/)
      .first()
      .waitFor();
    expect(await deeds()).toEqual(before);
  });

  it("[W16] a touch beside every control listens once; a touch on one does not", async () => {
    await open.show(scene("step"));
    await open.page.locator(".fit").click();
    expect(await ask(open.page, (bench) => bench.listened())).toBe(1);
    await open.page.locator(".key-main").click();
    expect(await ask(open.page, (bench) => bench.listened())).toBe(1);
  });

  it("[W17] the server's absence and a screen that may go dark are said in a sentence", async () => {
    await open.show(scene("lost"));
    expect(await open.page.locator(".notice").allTextContents()).toEqual([
      "The server is away. Cooking goes on here; two things wait for it.",
      "This browser cannot keep the screen awake; set the screen to stay on in the device's own settings.",
    ]);
    await open.show(scene("trouble"));
    expect(await open.page.locator(".ear-said").textContent()).toContain("Allow it beside the address");
  });

  it("[W18] a mistake in a recipe file is shown with file, line and field", async () => {
    await open.show(scene("empty"));
    await open.page.locator(".mistakes summary").click();
    expect(await open.page.locator(".mistakes code").textContent()).toBe(
      "meals/tide.yaml, line 3, dishes.eel",
    );
    expect(await open.page.locator(".empty").isVisible()).toBe(true);
  });
});
