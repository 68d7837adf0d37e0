import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ask, openPage } from "./screen/open-page.ts";
import type { OpenPage } from "./screen/open-page.ts";
import type { Scene } from "./screen/page.ts";
import { scenes } from "./screen/scenes.ts";

let open: OpenPage;
let scene: Scene;

beforeAll(async () => {
  scene = (await scenes()).step;
  open = await openPage();
});
afterAll(async () => open.close());

const section = () => open.page.locator("section:has(#drawer-lull)");
const length = (name: string) =>
  section()
    .getByRole("group", { name: "Hands free before dinner" })
    .getByRole("button", { name, exact: true });
const lull = () => ask(open.page, ({ store }) => store.session.value?.lull ?? null);

async function pullDrawer(): Promise<void> {
  await open.show(scene);
  await open.page.getByRole("button", { name: /^Kitchen$/ }).click();
  await open.page.locator("#drawer-lull").waitFor();
}

describe("a whole dish, on the screen", () => {
  it("[C157] a touch asks back, a yes leaves all of it out", async () => {
    await open.show(scene);
    await open.page.getByRole("button", { name: /^Kitchen$/ }).click();
    const dish = open.page.locator(".left-dish").last();
    await dish.locator("summary").click();
    const leave = dish.getByRole("button", { name: /^Leave out the / });
    await expect.poll(() => leave.isVisible()).toBe(true);
    await leave.click();
    await open.page.getByRole("button", { name: "Yes", exact: true }).click();
    await expect
      .poll(() =>
        ask(
          open.page,
          ({ store }) =>
            [...(store.session.value?.progress.values() ?? [])].filter(({ state }) => state === "skipped")
              .length,
        ),
      )
      .toBeGreaterThan(1);
  });
});

describe("the last minutes before dinner, on the screen", () => {
  it("[C154] a touch keeps them free, what stays is told, and another takes it back", async () => {
    await pullDrawer();
    expect(await length("Not at all").getAttribute("aria-pressed")).toBe("true");
    await length("30 min").click();
    await expect.poll(lull).toBe(1800);
    expect(await length("30 min").getAttribute("aria-pressed")).toBe("true");
    expect(await section().innerText()).toMatch(/Still then, as (?:it keeps|they keep|there is no time)/);
    await length("Not at all").click();
    await expect.poll(lull).toBeNull();
    expect(await section().innerText()).not.toContain("Still then");
  });

  it("[C154] a length that was said stands among the usual ones", async () => {
    await pullDrawer();
    await ask(open.page, ({ store }) => {
      store.give([{ type: "SetLull", length: 720 as never }]);
      return null;
    });
    await expect.poll(() => length("12 min").getAttribute("aria-pressed")).toBe("true");
  });

  it("[W1] [W4] [W5] axe finds nothing in it; all of it can be touched", async () => {
    await pullDrawer();
    await length("30 min").click();
    expect(await open.lookedOver()).toEqual([]);
  });
});
