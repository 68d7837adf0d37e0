import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { instant } from "../../core/units/quantity.ts";
import { cookUntil, ownPantry } from "./screen/evening.ts";
import { ask, openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import type { Scene } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;
let lunch: Scene;

beforeAll(async () => {
  const { step } = await scenes();
  const { all } = await ownPantry();
  const meal = all.find(({ id }) => id === "slack-water-lunch");
  if (meal === undefined) throw new Error("there is no lunch");
  const start = instant(Date.UTC(2031, 5, 14, 16, 40));
  const stopped = cookUntil(meal, start, ([first]) => first?.kind === "do");
  lunch = { ...step, events: stopped.log.events, now: stopped.now };
  open = await openPage();
});
afterAll(async () => open.close());

const section = () => open.page.locator("section:has(#drawer-prepare)");
const rows = async (): Promise<readonly string[]> =>
  (await section().locator("li").allInnerTexts()).map((text) => text.replaceAll(/\s+/g, " "));
const prepared = () => ask(open.page, ({ store }) => [...(store.session.value?.prepared ?? [])]);

async function pullDrawer(): Promise<void> {
  await open.show(lunch);
  await open.page.getByRole("button", { name: /^Kitchen$/ }).click();
  await section().waitFor();
}

describe("mise en place on the screen", () => {
  it("[W115] the drawer tells first what to prepare, for which dish and step, and when that begins", async () => {
    await pullDrawer();
    const [first, ...others] = await rows();
    expect(first).toMatch(
      /^4 sweet potatoes, of one size .*Potatoes, \d+:\d\d( pm)?: prick the potatoes Done$/,
    );
    expect(others.some((row) => row.startsWith("Drain and rinse 1½ cups of cooked white beans"))).toBe(true);
    const [top] = await open.page.locator(".drawer section").all();
    expect(await top?.getAttribute("aria-labelledby")).toBe("drawer-prepare");
  });

  it("[W116] a touch ticks it off, in the log and so on every device; another opens it again", async () => {
    await pullDrawer();
    await section()
      .getByRole("button", { name: /^Done: Rinse 1 cup of pearl barley/ })
      .click();
    await expect.poll(prepared).toEqual(["mushroom-barley/simmer-the-barley/barley"]);
    expect((await rows()).at(-1)).toBe("Rinse 1 cup of pearl barley Not yet");
    await section()
      .getByRole("button", { name: /^Not yet: Rinse/ })
      .click();
    await expect.poll(prepared).toEqual([]);
    expect((await rows()).every((row) => row.endsWith("Done"))).toBe(true);
  });

  it("[W1] [W4] [W5] axe finds nothing in it, one ticked off; all of it can be touched", async () => {
    await pullDrawer();
    await section()
      .getByRole("button", { name: /^Done: Rinse/ })
      .click();
    expect(await open.lookedOver()).toEqual([]);
  });
});
