import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
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

const key = (name: string | RegExp) => open.page.getByRole("button", { name });
const word = () => open.page.getByLabel("The word");
const like = () => open.page.getByLabel("As you say it");
const kept = () => open.page.evaluate(() => globalThis.bench.settings().respellings);

async function pullDrawer(): Promise<void> {
  await open.show(all.step);
  await key(/^Kitchen$/).click();
  await word().waitFor();
}

async function teach(one: string, sound: string): Promise<void> {
  await word().fill(one);
  await like().fill(sound);
  await key("Teach it").click();
}

describe("words as a cook says them, on the screen", () => {
  beforeEach(async () => pullDrawer());

  it("[W50] a word is taught, heard as the caller would say it, and forgotten", async () => {
    await teach("Lentils", "len till");
    expect(await kept()).toEqual([{ word: "lentils", like: "len till" }]);
    expect(await open.page.locator(".word-sounds li").allInnerTexts()).toEqual([
      expect.stringContaining("lentils sounds like"),
    ]);
    expect([await word().inputValue(), await like().inputValue()]).toEqual(["", ""]);
    await key("Hear it").click();
    expect(await open.page.evaluate(() => globalThis.bench.said())).toEqual(["lentils"]);
    await key("Forget it: lentils").click();
    expect(await kept()).toEqual([]);
  });

  it("[W50] what cannot be listened for is one sentence, and nothing of it is lost", async () => {
    await teach("red lentils", "len till");
    expect(await open.page.locator(".field-trouble").innerText()).toBe(
      '"red lentils" is several words; write one of them.',
    );
    expect([await word().inputValue(), await like().inputValue()]).toEqual(["red lentils", "len till"]);
    expect(await kept()).toEqual([]);
    await word().fill("lentils");
    await key("Teach it").click();
    expect(await kept()).toHaveLength(1);
    expect(await open.page.locator(".field-trouble").count()).toBe(0);
  });

  it("[W50] offers the words of tonight's dishes, and keeps a sound once", async () => {
    const offered = await open.page
      .locator("#drawer-words ~ form datalist option")
      .evaluateAll((options) => options.map((option) => option.getAttribute("value")));
    expect(offered.length).toBeGreaterThan(5);
    expect(offered).toEqual([...offered].sort());
    await teach("lentils", "len till");
    await teach("lentils", "len till");
    await teach("lentils", "lon tills");
    expect((await kept()).map(({ like: sound }) => sound)).toEqual(["len till", "lon tills"]);
  });

  it("[W1] [W4] [W5] axe finds nothing in it and all of it can be touched, in each look and size", async () => {
    await teach("lentils", "len till");
    await teach("several words", "no");
    expect(await open.lookedOver()).toEqual([]);
  });
});
