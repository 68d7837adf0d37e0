import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ask, openPage } from "./screen/open-page.ts";
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

const scene = (name: SceneName): Scene => all[name];
const touch = async (label: string): Promise<void> =>
  open.page.getByRole("button", { name: label }).first().click();
const deeds = () =>
  ask(open.page, (bench) => bench.store.log.value.events.map((event) => event.happening.type));

describe("two or three cooks", () => {
  it("[W100] how many cook is chosen beside it, three at most", async () => {
    await open.show(scene("start"));
    await open.page.locator(".meal-face", { hasText: "Welcome Supper" }).click();
    await touch("Who cooks: more");
    await touch("Who cooks: more");
    expect(await open.page.getByRole("button", { name: "Who cooks: more" }).isDisabled()).toBe(true);
    await touch("Light the stove");
    const [begun] = await ask(open.page, (bench) => [...bench.begun]);
    expect(begun?.[1].helpers).toBe(2);
  });

  it("[W101] what a helper has in hand stands on the plate under their name, with a key of its own", async () => {
    await open.show(scene("helped"));
    const line = open.page.locator(".also li", { hasText: "Second helper:" });
    const before = await line.textContent();
    await line.getByRole("button").click();
    expect((await deeds()).at(-1)).toBe("TaskHanded");
    expect(await line.textContent()).not.toBe(before);
  });

  it("[W102] in the drawer somebody comes to help or leaves with a touch", async () => {
    await open.show(scene("step"));
    await open.page.locator("text=Kitchen").first().click();
    await open.page.getByRole("button", { name: "Who cooks: more" }).waitFor();
    await touch("Who cooks: more");
    expect(await deeds()).toContain("HelperCame");
    await touch("Who cooks: less");
    expect(await deeds()).toContain("HelperLeft");
  });
});
